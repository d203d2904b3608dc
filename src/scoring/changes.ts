import { labelOf, type JudgedItem } from "./items.ts";
import { hundredths } from "./rounding.ts";
import { stands } from "./standing.ts";
import type { AsideResult, Change, IncorrectResult, MarkSheet, OrderResult, QuestionResult, RepeatResult, StatementResult, TeachBackResult, TimePlan, TimeResult } from "./types.ts";

/** A sheet with ten wishes changes nothing. */
const MOST_CHANGES = 3;

/**
 * What each is worth, for ranking only: what can hurt the patient and what decides the result first, the surer the
 * sooner; then order and wrong statements, then marks, then time.
 */
const WORTH = {
  unsafe: { major: 1000, moderate: 800, minor: 500 },
  critical: { sure: 900, part: 700, unsure: 450, shown: 400 },
  brokenOrder: { major: 60, moderate: 20, minor: 8 },
  incorrect: 45,
  overLimit: 35,
  overTarget: 12,
  justOverTarget: 3,
  nothingToCut: 8,
  question: 10,
  perShare: 3,
  /** Behind all that is sure. */
  unsure: -1000,
} as const;
/** Less than this share over the target is no fault of the plan. */
const JUST_OVER = 0.05;

interface Candidate extends Change {
  rank: number;
}

export function changesOf(parts: {
  items: readonly JudgedItem[];
  unsafe: readonly StatementResult[];
  incorrect: readonly IncorrectResult[];
  order: OrderResult;
  repeats: readonly RepeatResult[];
  asides: readonly AsideResult[];
  questions: readonly QuestionResult[];
  time: TimeResult;
  plan: TimePlan;
  total: MarkSheet["total"];
  teachBack: TeachBackResult;
}): Change[] {
  const candidates = [...ofUnsafe(parts.unsafe), ...ofItems(parts.items, parts.incorrect, parts.total, parts.teachBack), ...ofOrder(parts.order, parts.items), ...ofQuestions(parts.questions), ...ofTime(parts)];
  const ranked = candidates.sort((a, b) => b.rank - a.rank);
  const seen = new Set<string>();
  return ranked
    .filter(({ item }) => item === undefined || !seen.has(item) && seen.add(item))
    .slice(0, MOST_CHANGES)
    .map(({ advice, worth, item }) => ({ advice, worth, ...(item !== undefined && { item }) }));
}

function ofUnsafe(unsafe: readonly StatementResult[]): Candidate[] {
  return unsafe.filter(stands).map(({ label, severity, id }) => ({ advice: `Never say this, and put it right at once if it slips out: ${label}.`, worth: `a ${severity} unsafe statement`, item: `unsafe/${id}`, rank: WORTH.unsafe[severity] }));
}

/** A mark that a person should listen to first advises last, and says so; a critical item cannot wait. */
function ofItems(items: readonly JudgedItem[], incorrect: readonly IncorrectResult[], total: MarkSheet["total"], teachBack: TeachBackResult): Candidate[] {
  return items.flatMap(({ item, result, elements }): Candidate[] => {
    const critical = item.critical && !result.met;
    if (critical && result.content === "cannot-tell" && elements.some(({ doubt }) => doubt?.verdict === "shown")) {
      return [{ advice: `Say it aloud as well as showing it: ${item.label}.`, worth: "critical item, shown and not said", item: item.id, rank: WORTH.critical.shown }];
    }
    if (!["partial", "incorrect", "absent"].includes(result.content)) return [];
    const lost = item.weight - result.earned;
    if (lost <= 0) return [];
    const share = total.available > 0 ? Math.round((1000 * lost) / total.available) / 10 : 0;
    const wrong = incorrect.find((statement) => statement.item === item.id && !statement.corrected);
    const missing = elements.filter(({ content }) => content === "absent");
    const late = missing.filter((element) => element.late.length > 0);
    // The sheet itself says that nobody was asked to tell it back: no need to listen for that first.
    const unsure = result.listen && !(item.kind === "teach-back" && teachBack.asked === null);
    const advice =
      wrong !== undefined
        ? `Put right what was said wrongly on '${item.label}'${wrong.label === item.label ? "" : `: ${wrong.label}`} (${wrong.reason}).`
        : late.length > 0 && late.length === missing.length
          ? `Say this before the time is up: ${result.content === "partial" ? late.map(({ label }) => label).join("; ") : item.label}.`
          : result.content === "partial" && missing.length > 0
            ? `Complete '${item.label}': ${missing.map(({ label }) => label).join("; ")}.`
            : (item.advice ?? `Say this: ${item.label}.`);
    const worth = [critical ? "a critical item" : "", unsure ? "listen first, the mark is unsure" : "", marksWorth(lost, share)].filter(Boolean).join(", ");
    const grave = !critical ? (unsure ? WORTH.unsure : 0) : unsure ? WORTH.critical.unsure : result.content === "partial" ? WORTH.critical.part : WORTH.critical.sure;
    return [{ advice, worth, item: item.id, rank: grave + (wrong !== undefined ? WORTH.incorrect : 0) + share * result.confidence * WORTH.perShare }];
  });
}

/** "2 marks, 5.6% of the total". */
function marksWorth(lost: number, share: number): string {
  const marks = hundredths(lost);
  return `${marks} ${marks === 1 ? "mark" : "marks"}, ${share}% of the total`;
}

function ofOrder(order: OrderResult, items: readonly JudgedItem[]): Candidate[] {
  const label = (id: string) => labelOf(items, id);
  return order.broken.map((pair) => ({ advice: `Say this first: '${label(pair.first)}'; then '${label(pair.then)}'. ${pair.reason}`, worth: `a ${pair.severity} fault of order`, item: `order/${pair.first}/${pair.then}`, rank: WORTH.brokenOrder[pair.severity] }));
}

function ofQuestions(questions: readonly QuestionResult[]): Candidate[] {
  return questions.filter(({ scripted, answer }) => scripted && (answer === "ignored" || answer === "incorrect")).map(({ label, answer, id }) => ({ advice: `${answer === "ignored" ? "Answer" : "Answer rightly"} the patient's question '${label}'.`, worth: "a question left open", item: `question/${id}`, rank: WORTH.question }));
}

const inSeconds = (seconds: number) => `${Math.round(seconds)} s`;
const counted = (count: number, one: string) => `${count} ${one}${count === 1 ? "" : "s"}`;

/** What could be left out was found and is listed; else only how much is too much. */
function ofTime({ repeats, asides, time, plan }: { repeats: readonly RepeatResult[]; asides: readonly AsideResult[]; time: TimeResult; plan: TimePlan }): Candidate[] {
  const over = time.overTarget.value;
  if (over === null || over <= 0) return [];
  const beyondLimit = (time.overLimit.value ?? 0) > 0;
  const rank = beyondLimit ? WORTH.overLimit : over < JUST_OVER * time.target ? WORTH.justOverTarget : WORTH.overTarget;
  const secondsOf = (what: TimePlan["costs"][number]["what"]) => plan.costs.find((cost) => cost.what === what)?.seconds ?? 0;
  const parts = [
    repeats.length > 0 && secondsOf("repeats") > 0 ? { seconds: secondsOf("repeats"), advice: `say each thing once (${counted(repeats.length, "needless repeat")}, ${inSeconds(secondsOf("repeats"))})` } : null,
    asides.length > 0 && secondsOf("asides") > 0 ? { seconds: secondsOf("asides"), advice: `keep to the station (${counted(asides.length, "aside")}, ${inSeconds(secondsOf("asides"))})` } : null,
  ].filter((part) => part !== null);
  if (parts.length > 0) {
    const saved = parts.reduce((sum, { seconds }) => sum + seconds, 0);
    const advice = parts.map((part) => part.advice).join(" and ");
    return [{ advice: `${advice.charAt(0).toUpperCase()}${advice.slice(1)}.`, worth: saved >= over ? `${inSeconds(saved)}: enough to meet the target` : `${inSeconds(saved)} of the ${inSeconds(over)} over the target`, rank }];
  }
  const cut = plan.wordsToCut.value;
  // Nothing to point at: behind what somebody can act on.
  return cut === null || cut <= 0 ? [] : [{ advice: `Say it in about ${Math.round(cut)} words fewer; no repeat or aside was found to cut.`, worth: `${inSeconds(over)} over the target`, rank: beyondLimit ? WORTH.nothingToCut : WORTH.justOverTarget }];
}
