import type { Context } from "./context.ts";
import type { Match } from "../matching/types.ts";
import type { WordSpan } from "../station/types.ts";
import type { JudgedItem } from "./items.ts";
import { sentenceAt } from "./sentence-at.ts";
import type { OrderResult, TeachBackResult } from "./types.ts";

/** Only a passage that says the thing beyond doubt dates it: fit of the words, calibrated confidence, and who spoke. */
const TAUGHT = { score: 0.75, confidence: 0.75, role: 0.7 } as const;

/** In this first share of a station the patient is asked what is known already. */
const OPENING_SHARE = 0.3;

/**
 * Pairs taught the wrong way round, and how much of the whole was taught in the rubric's order. Each thing stands where
 * the candidate first taught it, before a teach-back was asked for; what is never plainly taught has no place.
 */
export function orderOf(context: Context, items: readonly JudgedItem[], teachBack: TeachBackResult): OrderResult {
  const until = teachBackFrom(context, teachBack);
  const taught = new Map(items.flatMap((item) => {
    const stretch = stretchOf(context, item, until);
    return stretch === null ? [] : [[item.item.id, stretch] as const];
  }));
  const broken = context.rubric.order.flatMap((pair) => {
    const [first, then] = [taught.get(pair.first), taught.get(pair.then)];
    // Only where all of the later thing came before any of the earlier one: words overlap in real talk.
    return first !== undefined && then !== undefined && then.last < first.first ? [{ ...pair, firstSaid: context.evidence(first.clause), thenSaid: context.evidence(then.clause) }] : [];
  });
  const places = items.flatMap(({ item }) => (taught.has(item.id) ? [taught.get(item.id)!.first] : []));
  return { broken, inOrder: places.length < 2 ? null : { longest: longestIncreasing(places), said: places.length } };
}

/** From here on the patient tells, or the candidate puts right what the patient told; "tell me what you know" comes early. */
function teachBackFrom({ station, matches }: Context, { asked }: TeachBackResult): number {
  const opening = station.start.word + (station.end.word - station.start.word) * OPENING_SHARE;
  return Math.min(asked !== null && asked.first > opening ? asked.first : Infinity, ...matches.tellings.map(({ request }) => request.first));
}

/** From where to where the elements of an item are first taught; null when none plainly is. */
function stretchOf(context: Context, { elements }: JudgedItem, until: number): { first: number; last: number; clause: WordSpan } | null {
  const first = elements
    .flatMap((element) => element.inTime.filter((match) => match.span.first < until && isTaught(context, match)).slice(0, 1))
    .sort((a, b) => a.span.first - b.span.first);
  return first.length === 0 ? null : { first: first[0]!.span.first, last: first[first.length - 1]!.span.first, clause: first[0]!.clause };
}

function isTaught({ station }: Context, { verdict, elicitation, score, confidence, span }: Match): boolean {
  if ((verdict !== "right" && verdict !== "wrong") || elicitation === "confirmed" || score < TAUGHT.score || confidence < TAUGHT.confidence) return false;
  const sentence = sentenceAt(station, span.first);
  return sentence?.role === "candidate" && sentence.confidence >= TAUGHT.role;
}

/** Length of the longest increasing subsequence (Schensted 1961, Canadian Journal of Mathematics 13), by patience sorting. */
export function longestIncreasing(values: readonly number[]): number {
  const tails: number[] = [];
  for (const value of values) {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (tails[middle]! < value) low = middle + 1;
      else high = middle;
    }
    tails[low] = value;
  }
  return tails.length;
}
