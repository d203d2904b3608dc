import type { Rubric, Severity } from "../rubric/schema.ts";
import { notAskedFor } from "./content.ts";
import { labelOf, LISTEN_BELOW, type JudgedItem } from "./items.ts";
import { stands } from "./standing.ts";
import type { MarkSheet, StatementResult, TimeResult } from "./types.ts";

const SEVERITIES: readonly Severity[] = ["major", "moderate", "minor"];

export function criticalOf(items: readonly JudgedItem[]): MarkSheet["critical"] {
  const critical = items.map(({ result }) => result).filter(({ critical: isCritical, content }) => isCritical && !notAskedFor(content));
  const unsure = critical.filter((item) => item.content === "cannot-tell");
  const missed = critical.filter((item) => !item.met && item.content !== "cannot-tell");
  const unsurely = doubtful(items);
  const doubted = missed.filter(({ id }) => unsurely.has(id));
  return { total: critical.length, met: critical.length - missed.length - unsure.length, missed: missed.map(({ id }) => id), doubted: doubted.map(({ id }) => id), unsure: unsure.map(({ id }) => id) };
}

/** What a person may well find otherwise neither fails nor passes anybody on its own. */
function doubtful(items: readonly JudgedItem[]): ReadonlySet<string> {
  return new Set(items.filter(({ metConfidence }) => metConfidence < LISTEN_BELOW).map(({ item }) => item.id));
}

/** The pass rule in words, as the rubric sets it. */
export function ruleOf(rubric: Rubric): string {
  const { minimum, critical, unsafe, within_limit: within } = rubric.pass;
  const allowed = SEVERITIES.filter((severity) => unsafe[severity] < 10).map((severity) => `${unsafe[severity] === 0 ? "no" : `at most ${unsafe[severity]}`} ${severity}`);
  return [
    `at least ${minimum}% of the weighted total`,
    critical === "all" ? "every critical item met" : `${critical} critical item${critical === 1 ? "" : "s"} met`,
    ...(allowed.length > 0 ? [`${allowed.join(" and ")} unsafe statement`] : []),
    ...(within ? ["within the time limit"] : []),
  ].join("; ");
}

/**
 * The result by the rubric's pass rule alone. What cannot be told makes it provisional wherever it could turn the
 * result; pace, fillers and reading level have no say.
 */
export function decide(rubric: Rubric, items: readonly JudgedItem[], total: MarkSheet["total"], critical: MarkSheet["critical"], unsafe: readonly StatementResult[], time: TimeResult, candidateWords: number): MarkSheet["result"] {
  const rule = ruleOf(rubric);
  if (candidateWords === 0) return { outcome: "not-decided", reasons: ["no words of the candidate were found in the station"], rule };
  const against: string[] = [];
  const open: string[] = [];
  const label = (id: string) => labelOf(items, id);

  const needed = rubric.pass.critical === "all" ? critical.total : Math.min(rubric.pass.critical, critical.total);
  const resultOf = (id: string) => items.find(({ item }) => item.id === id)!.result;
  const { doubted } = critical;
  const missed = critical.missed.filter((id) => !doubted.includes(id));
  const unsurely = doubtful(items);
  const toConfirm = items.filter(({ item, result }) => result.critical && result.met && unsurely.has(item.id)).map(({ item }) => item.id);
  if (critical.total - missed.length < needed) against.push(...missed.map((id) => `critical item ${resultOf(id).content === "incorrect" ? "stated wrongly" : "missed"}: ${label(id)}`));
  const unconfirmed = critical.total - missed.length >= needed && critical.met - toConfirm.length < needed ? [...critical.unsure, ...doubted, ...toConfirm].map((id) => `critical item to be confirmed by listening: ${label(id)}`) : [];
  open.push(...unconfirmed);

  for (const severity of SEVERITIES) {
    const standing = eachOnce(unsafe.filter((statement) => statement.severity === severity && stands(statement)));
    const possible = eachOnce(unsafe.filter((statement) => statement.severity === severity && statement.listen && !statement.corrected)).filter(({ id }) => !standing.some((other) => other.id === id));
    if (standing.length > rubric.pass.unsafe[severity]) against.push(...standing.map((statement) => `${severity} unsafe statement: ${statement.label}`));
    else if (standing.length + possible.length > rubric.pass.unsafe[severity]) open.push(...possible.map((statement) => `possible ${severity} unsafe statement, to be listened to: ${statement.label}`));
  }

  const { lowest, highest } = range(items);
  if (highest !== null && highest < rubric.pass.minimum) against.push(`${total.percent}% of the weighted total, below ${rubric.pass.minimum}%`);
  else if (lowest !== null && lowest < rubric.pass.minimum) open.push(`${total.percent}% of what could be told; items that cannot be told could take it below or above ${rubric.pass.minimum}%`);
  if (total.percent === null) open.push("no item could be marked");

  if (rubric.pass.within_limit) {
    if (time.overLimit.value === null) open.push(`time against the limit is not measurable: ${time.overLimit.why}`);
    else if (time.overLimit.value > 0) against.push(`over the time limit by ${Math.round(time.overLimit.value)} s`);
  }
  // What else may turn out against it is worth knowing though the result stands without.
  if (against.length > 0) return { outcome: "fail", reasons: [...against, ...unconfirmed], rule };
  if (open.length > 0) return { outcome: "provisional", reasons: open, rule };
  return { outcome: "pass", reasons: [`${total.percent}% of the weighted total; all the pass rule asks for is met`], rule };
}

/** The rule counts statements, not the places where one was said. */
function eachOnce(found: readonly StatementResult[]): StatementResult[] {
  return found.filter(({ id }, place) => found.findIndex((other) => other.id === id) === place);
}

/** The weighted total if everything that cannot be told were absent, and if it were complete. */
function range(items: readonly JudgedItem[]): { lowest: number | null; highest: number | null } {
  const own = items.map(({ result }) => result).filter(({ content }) => !notAskedFor(content));
  const available = own.reduce((sum, item) => sum + item.weight, 0);
  if (available === 0) return { lowest: null, highest: null };
  const earned = own.reduce((sum, item) => sum + item.earned, 0);
  const open = own.filter((item) => item.content === "cannot-tell").reduce((sum, item) => sum + item.weight, 0);
  return { lowest: (100 * earned) / available, highest: (100 * (earned + open)) / available };
}
