import { labelOf, type JudgedItem } from "./items.ts";
import type { Change, IncorrectResult, MarkSheet, OrderResult, QuestionResult, RepeatResult, StatementResult, TimePlan, TimeResult } from "./types.ts";

/** A sheet with ten wishes changes nothing. */
const MOST_CHANGES = 3;

/**
 * What each is worth, for ranking only: what can hurt the patient first, then what decides the result, then marks,
 * then time.
 */
const WORTH = { majorUnsafe: 100, unsafe: 80, criticalMissed: 70, incorrect: 45, brokenOrder: { major: 40, moderate: 20, minor: 8 }, overLimit: 35, overTarget: 12, question: 10, perMark: 6 } as const;

interface Candidate extends Change {
  rank: number;
}

export function changesOf(parts: {
  items: readonly JudgedItem[];
  unsafe: readonly StatementResult[];
  incorrect: readonly IncorrectResult[];
  order: OrderResult;
  repeats: readonly RepeatResult[];
  questions: readonly QuestionResult[];
  time: TimeResult;
  plan: TimePlan;
  total: MarkSheet["total"];
}): Change[] {
  const candidates = [...ofUnsafe(parts.unsafe), ...ofItems(parts.items, parts.incorrect, parts.total), ...ofOrder(parts.order, parts.items), ...ofQuestions(parts.questions), ...ofTime(parts)];
  const ranked = candidates.sort((a, b) => b.rank - a.rank);
  const seen = new Set<string>();
  return ranked
    .filter(({ item }) => item === undefined || !seen.has(item) && seen.add(item))
    .slice(0, MOST_CHANGES)
    .map(({ advice, worth, item }) => ({ advice, worth, ...(item !== undefined && { item }) }));
}

function ofUnsafe(unsafe: readonly StatementResult[]): Candidate[] {
  return unsafe.filter(({ corrected, listen }) => !corrected && !listen).map(({ label, severity, id }) => ({ advice: `Never say this, and put it right at once if it slips out: ${label}.`, worth: `${severity} unsafe statement`, item: `unsafe/${id}`, rank: severity === "major" ? WORTH.majorUnsafe : WORTH.unsafe }));
}

function ofItems(items: readonly JudgedItem[], incorrect: readonly IncorrectResult[], total: MarkSheet["total"]): Candidate[] {
  return items.flatMap(({ item, result, elements }): Candidate[] => {
    if (!["partial", "incorrect", "absent"].includes(result.content)) return [];
    const lost = item.weight - result.earned;
    if (lost <= 0) return [];
    const share = total.available > 0 ? Math.round((1000 * lost) / total.available) / 10 : 0;
    const critical = item.critical && !result.met;
    const wrong = incorrect.find((statement) => statement.item === item.id && !statement.corrected);
    const missing = elements.filter(({ content }) => content === "absent");
    const advice =
      wrong !== undefined
        ? `Put right what was said wrongly on '${item.label}': ${wrong.label} (${wrong.reason}).`
        : result.content === "partial" && missing.length > 0
          ? `Complete '${item.label}': ${missing.map(({ label }) => label).join("; ")}.`
          : (item.advice ?? `Say this: ${item.label}.`);
    return [{ advice, worth: [critical ? "critical item" : "", `${share} points of the per cent total`].filter(Boolean).join(", "), item: item.id, rank: (critical ? WORTH.criticalMissed : 0) + (wrong !== undefined ? WORTH.incorrect : 0) + share * WORTH.perMark / 2 }];
  });
}

function ofOrder(order: OrderResult, items: readonly JudgedItem[]): Candidate[] {
  const label = (id: string) => labelOf(items, id);
  return order.broken.map((pair) => ({ advice: `Say this first: '${label(pair.first)}'; then '${label(pair.then)}'. ${pair.reason}`, worth: `${pair.severity} fault of order`, item: `order/${pair.first}/${pair.then}`, rank: WORTH.brokenOrder[pair.severity] }));
}

function ofQuestions(questions: readonly QuestionResult[]): Candidate[] {
  return questions.filter(({ scripted, answer }) => scripted && (answer === "ignored" || answer === "incorrect")).map(({ label, answer, id }) => ({ advice: `${answer === "ignored" ? "Answer" : "Answer rightly"} the patient's question '${label}'.`, worth: "a question left open", item: `question/${id}`, rank: WORTH.question }));
}

const ROUND_SECONDS = (seconds: number) => `${Math.round(seconds)} s`;

function ofTime({ repeats, time, plan }: { repeats: readonly RepeatResult[]; time: TimeResult; plan: TimePlan }): Candidate[] {
  const over = time.overTarget.value;
  if (over === null || over <= 0) return [];
  const beyondLimit = (time.overLimit.value ?? 0) > 0;
  const rank = beyondLimit ? WORTH.overLimit : WORTH.overTarget;
  const saved = plan.costs.find(({ what }) => what === "repeats")?.seconds ?? 0;
  if (repeats.length > 0 && saved > 0) {
    const worst = [...repeats].sort((a, b) => (b.seconds ?? 0) - (a.seconds ?? 0))[0]!;
    return [{ advice: `Say each thing once: ${repeats.length} ${repeats.length === 1 ? "needless repeat" : "needless repeats"}, the longest on '${worst.label}'.`, worth: saved >= over ? `${ROUND_SECONDS(saved)}: enough to meet the target` : `${ROUND_SECONDS(saved)} of the ${ROUND_SECONDS(over)} over the target`, rank }];
  }
  const cut = plan.wordsToCut.value;
  return cut === null || cut <= 0 ? [] : [{ advice: `Leave out about ${Math.round(cut)} words, asides and pauses first.`, worth: `${ROUND_SECONDS(over)} over the target`, rank }];
}
