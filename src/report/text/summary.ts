import { notAskedFor } from "../../scoring/content.ts";
import { stands } from "../../scoring/standing.ts";
import type { Measured, MarkSheet, Outcome, StatementResult } from "../../scoring/types.ts";
import type { Seconds } from "../../transcript/types.ts";
import { clock, measured, number, plural } from "../figures.ts";
import { faint, strong, styled, type Page, type Text } from "../page.ts";
import type { Style } from "../style.ts";
import { overruledInShort } from "./corrections.ts";
import { listenPlaces, place } from "./evidence.ts";
import { NAME_COLUMNS, row } from "./row.ts";

const OUTCOME: Record<Outcome, { word: string; style: Style }> = {
  pass: { word: "PASS", style: "good" },
  fail: { word: "FAIL", style: "bad" },
  provisional: { word: "PROVISIONAL: somebody must listen before it stands", style: "doubt" },
  "not-decided": { word: "NOT DECIDED", style: "doubt" },
};

/** Who, what, the result in words with its reasons, time, coverage: what somebody reads who reads no further. */
export function summary(page: Page, sheet: MarkSheet): void {
  page.entry({ body: [styled("Mark sheet:", "title"), " ", strong(sheet.rubric.title)] });
  const facts = [
    sheet.candidate === null ? null : `candidate ${sheet.candidate}`,
    sheet.transcript.file,
    `counselling a ${sheet.scenario.counselled}`,
  ].filter((fact) => fact !== null);
  page.entry({ body: facts.join(` ${page.symbols.dot} `) });
  page.entry({ body: faint(`Task: ${sheet.scenario.task}`) });
  page.blank();
  const { word, style } = OUTCOME[sheet.result.outcome];
  row(page, "Result", styled(word, style));
  for (const reason of sheet.result.reasons) page.entry({ indent: NAME_COLUMNS, lead: page.symbols.bullet, hang: 2, body: reason });
  row(page, "Time", timeUsed(sheet));
  row(page, "Coverage", coverage(sheet));
  row(page, "Critical items", criticalItems(sheet));
  row(page, "Unsafe", unsafeStatements(sheet));
  overruledInShort(page, sheet);
  listenTo(page, sheet);
}

export function timeUsed({ time }: MarkSheet): Text {
  if (time.used.value === null) {
    return `${measured(time.used, clock)} (limit ${clock(time.limit)}, target ${clock(time.target)})`;
  }
  return [
    `${clock(time.used.value)} used${time.used.estimated ? " (estimated)" : ""}: `,
    against(time.overLimit, "limit", time.limit),
    ", ",
    against(time.overTarget, "target", time.target),
  ];
}

function against(over: Measured<Seconds>, name: string, allowed: Seconds): Text {
  if (over.value === null) return `${name} of ${clock(allowed)} ${measured(over, clock)}`;
  if (over.value === 0) return `just the ${name} of ${clock(allowed)}`;
  if (over.value > 0) return styled(`${briefly(over.value)} over the ${name} of ${clock(allowed)}`, name === "limit" ? "bad" : "fair");
  return `${briefly(-over.value)} left of the ${name} of ${clock(allowed)}`;
}

/** Whole seconds are as fine as a mark needs; under one the clock could say 0:00. */
function briefly(seconds: Seconds): string {
  return seconds < 1 ? "less than 1 s" : clock(seconds);
}

function coverage({ total, items }: MarkSheet): Text {
  const unsure = items.filter(({ content }) => content === "cannot-tell").length;
  const outside = items.filter(({ content }) => notAskedFor(content)).length;
  const parts: Text[] =
    total.percent === null
      ? ["not measurable: no item counts"]
      : [strong(`${number(total.percent)}%`), ` of the marks that count (${number(total.earned, 2)} of ${number(total.available, 2)})`];
  if (total.provisional) parts.push(styled(unsure > 0 ? `, provisional: ${plural(unsure, "item")} cannot be told` : ", provisional", "doubt"));
  if (outside > 0) parts.push(`; ${plural(outside, "item")} not counted`);
  return parts;
}

function criticalItems({ critical }: MarkSheet): Text {
  if (critical.total === 0) return "the rubric has none";
  const parts: Text[] = [`${critical.met} of ${critical.total} met`];
  if (critical.missed.length > 0) parts.push(", ", styled(`${critical.missed.length} missed`, "bad"));
  if (critical.unsure.length > 0) parts.push(", ", styled(`${critical.unsure.length} cannot be told`, "doubt"));
  return parts;
}

/** Never "safe": only what was looked for and what of it was found. */
export function unsafeStatements({ unsafe }: MarkSheet): Text {
  if (unsafe.listed === 0) return "the rubric lists no unsafe statements";
  const { standing, corrected, listen } = statementsBy(unsafe.found);
  const parts: Text[] = [
    standing === 0
      ? `none of the ${unsafe.listed} listed statements found${corrected > 0 ? " standing at the end" : ""}`
      : styled(`${standing} of the ${unsafe.listed} listed statements found`, "bad"),
  ];
  if (corrected > 0) parts.push(`; ${corrected} put right by the candidate`);
  if (listen > 0) parts.push("; ", styled(`${listen} to listen to`, "doubt"));
  return parts;
}

/** How many statements of the list stand, were put right everywhere, or are to be listened to: each once, by the worst place where it was said. */
function statementsBy(found: readonly StatementResult[]): { standing: number; corrected: number; listen: number } {
  const ids = (holds: (statement: StatementResult) => boolean) => new Set(found.filter(holds).map(({ id }) => id));
  const standing = ids(stands);
  const listen = ids((statement) => statement.listen && !standing.has(statement.id));
  const corrected = ids(({ id, listen: unsure }) => !unsure && !standing.has(id) && !listen.has(id));
  return { standing: standing.size, corrected: corrected.size, listen: listen.size };
}

/** A longer list is no summary; every unsure item is marked LISTEN where it stands. */
const LISTEN_SHOWN = 6;

/** Where a person's ear is needed, by name: unsafe statements that rest on a sound-alike, and unsure items. */
function listenTo(page: Page, { items, unsafe }: MarkSheet): void {
  const unsure = [...items.filter((item) => item.listen)].sort((a, b) => Number(b.critical) - Number(a.critical));
  const sounds = unsafe.found.filter((statement) => statement.listen);
  const count = unsure.length + sounds.length;
  if (count === 0) return;
  row(page, "Listen", styled(`${plural(count, "mark is", "marks are")} unsure:`, "doubt"));
  const hints: Text[] = [
    ...sounds.map(({ label, evidence }): Text => [styled(`at ${place(evidence)}`, "doubt"), `: unsafe, or mis-heard: ${label}`]),
    ...unsure.map((item): Text => {
      const places = listenPlaces(item);
      return [styled(places.length > 0 ? `at ${places.join(", ")}` : "not found, perhaps said", "doubt"), `: ${item.label}`];
    }),
  ];
  for (const hint of hints.slice(0, LISTEN_SHOWN)) page.entry({ indent: NAME_COLUMNS, lead: page.symbols.bullet, hang: 2, body: hint });
  const left = hints.length - LISTEN_SHOWN;
  if (left > 0) page.entry({ indent: NAME_COLUMNS, body: faint(`and ${left} more, marked LISTEN below`) });
}
