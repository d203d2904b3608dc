import type { Match } from "../matching/types.ts";
import type { WordSpan } from "../station/types.ts";
import type { Context } from "./context.ts";
import type { JudgedItem } from "./items.ts";
import type { RepeatResult } from "./types.ts";

/** Said again this soon, it is one and the same saying. */
const SAME_BREATH = 35;
/** A thing said again fits its response this well, in so many words at least: less only touches on it. */
const REPEATED = { score: 0.8, words: 3 } as const;
/** A closing summary: in this last share of the station, so many things in so few words. */
const SUMMARY = { lastShare: 0.3, fewestItems: 3, mostWords: 130, gap: 40 } as const;

/**
 * What the candidate told again without need. Not counted: an answer or a repeat that the patient asked for, a
 * misunderstanding put right, a teach-back, and a short closing summary.
 */
export function repeatsOf(context: Context, items: readonly JudgedItem[]): RepeatResult[] {
  const summary = summarySpan(context, items);
  const repeats: (RepeatResult & { span: WordSpan })[] = [];
  for (const { item, elements } of items) {
    if (item.kind !== "tell") continue;
    for (const element of elements) {
      const right = element.inTime.filter((match) => match.verdict === "right" && match.elicitation !== "confirmed" && plainlySaid(match));
      const first = right[0];
      let last = first;
      for (const match of right.slice(1)) {
        const soon = match.span.first - last!.span.end < SAME_BREATH;
        last = match;
        if (soon || match.elicitation !== "offered" || inside(match.span, summary) || putsRight(context, match)) continue;
        repeats.push({ ...costOf(context, match.clause), label: element.label, firstSaid: context.evidence(first!.span), span: match.clause });
      }
    }
  }
  return merged(repeats.sort((a, b) => a.span.first - b.span.first));
}

/** What is charged as a repeat must be the thing itself, not a passage that merely comes near it. */
function plainlySaid({ score, span }: Match): boolean {
  return score >= REPEATED.score && span.end - span.first >= REPEATED.words;
}

function inside(span: WordSpan, outer: WordSpan | null): boolean {
  return outer !== null && span.first >= outer.first && span.first < outer.end;
}

/** After a wrong word, the patient's or one's own, saying it again is no waste. */
function putsRight(context: Context, match: Match): boolean {
  const wrong = [...context.matches.patient, ...context.matches.elements].filter((other) => other.verdict === "wrong" && other.item === match.item && other.element === match.element);
  return wrong.some((other) => other.span.first < match.span.first && match.span.first - other.span.end < SAME_BREATH * 2);
}

function costOf(context: Context, span: WordSpan): Omit<RepeatResult, "label" | "firstSaid"> {
  const again = context.evidence(span);
  const words = context.station.transcript.words.slice(span.first, span.end).filter(({ kind }) => kind === "word").length;
  return { again, words, seconds: again.start === null || again.endTime === null ? null : Math.max(0, again.endTime - again.start) };
}

/** Two elements told again in one clause cost it once. */
function merged(repeats: (RepeatResult & { span: WordSpan })[]): RepeatResult[] {
  const result: (RepeatResult & { span: WordSpan })[] = [];
  for (const repeat of repeats) {
    const before = result[result.length - 1];
    if (before !== undefined && repeat.span.first < before.span.end) {
      if (!before.label.includes(repeat.label)) before.label = `${before.label}; ${repeat.label}`;
    } else result.push({ ...repeat });
  }
  return result.map(({ label, firstSaid, again, seconds, words }) => ({ label, firstSaid, again, seconds, words }));
}

function summarySpan(context: Context, items: readonly JudgedItem[]): WordSpan | null {
  const { start, end } = context.station;
  const from = end.word - (end.word - start.word) * SUMMARY.lastShare;
  const again = items
    .filter(({ item }) => item.kind === "tell")
    .flatMap(({ item, elements }) => elements.flatMap((element) => element.inTime.filter((match, place) => match.verdict === "right" && place > 0 && match.span.first >= from).map((match) => ({ item: item.id, span: match.clause }))))
    .sort((a, b) => a.span.first - b.span.first);
  let best: WordSpan | null = null;
  for (let k = 0; k < again.length; k += 1) {
    const run = [again[k]!];
    for (let next = k + 1; next < again.length && again[next]!.span.first - run[run.length - 1]!.span.end <= SUMMARY.gap; next += 1) run.push(again[next]!);
    const span = { first: run[0]!.span.first, end: run[run.length - 1]!.span.end };
    if (new Set(run.map(({ item }) => item)).size >= SUMMARY.fewestItems && span.end - span.first <= SUMMARY.mostWords && best === null) best = span;
  }
  return best;
}
