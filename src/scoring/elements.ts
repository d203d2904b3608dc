import { absenceConfidence } from "../matching/confidence.ts";
import type { WordSpan } from "../station/types.ts";
import type { Match } from "../matching/types.ts";
import { quantityWords } from "../rubric/quantity-words.ts";
import type { Element } from "../rubric/schema.ts";
import type { Context } from "./context.ts";
import type { ElementResult } from "./types.ts";

/** An element's result with what the item needs to know about how it came about. */
export interface JudgedElement extends ElementResult {
  /** Matches in time order, those after the limit left out. */
  inTime: Match[];
  /** Said rightly, but only after the limit. */
  late: Match[];
  /** Wrong statements that were put right. */
  slips: Match[];
  /** The wrong statement that stands. */
  standing: Match | null;
  /** The passage that makes it impossible to tell: half heard, shown, or a sound-alike. */
  doubt: Match | null;
  /** Where it is said best: what order is judged by. */
  best: Match | null;
  /** Right in another country. */
  elsewhere: Match[];
}

/** More passages than these prove nothing more; nor do passages much less sure than the best. */
const MOST_EVIDENCE = 3;
const GOOD_EVIDENCE = 0.85;

/** The passages that carry an element best, in the order they were said. */
function strongest(matches: readonly Match[]): Match[] {
  const best = Math.max(...matches.map(({ confidence }) => confidence));
  return matches
    .filter(({ confidence }) => confidence >= GOOD_EVIDENCE * best)
    .sort((a, b) => b.confidence - a.confidence || a.span.first - b.span.first)
    .slice(0, MOST_EVIDENCE)
    .sort((a, b) => a.span.first - b.span.first);
}

/** "Don't do four": a quote without the word that turns it would say the opposite. */
const DENIES = /^(not|no|never|nor|cannot|without|avoid|stop|stopped|(do|does|did|is|are|was|will|wo|would|can|ca|could|should|must|need)n['\u2019]?t)$/i;
/** The word stands so near before what it denies. */
const DENIAL_REACH = 5;

/** The span of a match with the denial that it stands under, or that its clause opens with. */
export function withDenial(context: Context, { span, clause, deniedFrom }: Match): WordSpan {
  if (deniedFrom !== undefined) return { first: Math.min(deniedFrom, span.first), end: span.end };
  const { words } = context.station.transcript;
  for (let place = span.first - 1; place >= Math.max(clause.first, span.first - DENIAL_REACH); place -= 1) {
    if (DENIES.test(words[place]!.text.replace(/[^\w'\u2019]/g, ""))) return { first: place, end: span.end };
  }
  return span;
}

/**
 * The design's precedence table for one element. Wrong then right: complete, the slip is listed. Right then wrong and
 * left so, or put right by what was hardly said: incorrect. Only after the limit: absent, listed apart. Shown, garbled or hanging on a sound-alike: cannot tell.
 */
export function judgeElement(context: Context, item: string, element: Element): JudgedElement {
  const all = context.matches.elements.filter((match) => match.item === item && match.element === element.id);
  const inTime = all.filter((match) => match.span.first < context.lateWord);
  const late = all.filter((match) => match.span.first >= context.lateWord && match.verdict === "right");
  const right = inTime.filter(({ verdict }) => verdict === "right");
  const wrong = inTime.filter(({ verdict }) => verdict === "wrong");
  const elsewhere = inTime.filter(({ verdict }) => verdict === "elsewhere");
  const doubt = inTime.find(({ verdict }) => verdict === "unclear" || verdict === "shown");
  const takenBack = wrong.filter((match) => match.takenBack === true);
  const lastWrong = wrong.filter((match) => match.takenBack !== true).at(-1);
  const lastRight = right.filter((match) => lastWrong === undefined || !putsRightLess(match, lastWrong)).at(-1);
  const base = { id: element.id, label: element.label, inTime, late, elsewhere, slips: takenBack, standing: null, doubt: null, best: null as Match | null };
  const evidence = (matches: Match[]) => strongest(matches).map((match) => context.evidence(withDenial(context, match)));

  if (lastWrong !== undefined && (lastRight === undefined || lastWrong.span.first > lastRight.span.first)) {
    return { ...base, content: "incorrect", elicitation: lastWrong.elicitation, evidence: evidence([lastWrong]), confidence: lastWrong.confidence, standing: lastWrong, best: lastWrong, ...reasonOf(context, lastWrong, element) };
  }
  if (lastRight !== undefined) {
    const first = right.find(({ elicitation }) => elicitation !== "confirmed") ?? right[0]!;
    return { ...base, content: "complete", elicitation: first.elicitation, evidence: evidence(right), confidence: Math.max(...right.map(({ confidence }) => confidence)), slips: wrong, best: right.reduce((best, match) => (match.confidence > best.confidence ? match : best)) };
  }
  if (doubt !== undefined) {
    return { ...base, content: "cannot-tell", elicitation: null, evidence: evidence([doubt]), confidence: 0.5, doubt, ...reasonOf(context, doubt, element) };
  }
  const nearest = context.matches.nearest.find((attempt) => attempt.item === item && attempt.element === element.id);
  return { ...base, content: "absent", elicitation: null, evidence: [], confidence: absenceConfidence(nearest) };
}

/** Who is as sure as this to have said it puts it right, however plainly the wrong thing was said before. Set on the tuning side's stations. */
const SURELY_RIGHT = 0.75;

/** Said behind a wrong statement and less surely than that: of fifty elements some fit a few loose words later on ("it settles at the bottom"). */
function putsRightLess(right: Match, wrong: Match): boolean {
  return right.span.first > wrong.span.first && right.confidence < Math.min(wrong.confidence, SURELY_RIGHT);
}

function reasonOf(context: Context, match: Match, element: Element): { reason?: string } {
  if (match.reason === undefined) return {};
  const expected = element.quantity !== undefined && match.quantity !== undefined ? `; right is ${quantityWords(element.quantity, context.rubric.scenario.label)}` : "";
  return { reason: `${match.reason}${expected}` };
}
