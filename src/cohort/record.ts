import type { Content, MarkSheet, Outcome } from "../scoring/types.ts";
import { isMarked, type CohortResult, type ResultKey } from "./result.ts";

/** Where to listen: seconds into the recording, or the line of a transcript without times. */
export interface ListenAt {
  time: number | null;
  line: number;
  estimated: boolean;
}

export interface RecordItem {
  id: string;
  label: string;
  section: string;
  critical: boolean;
  weight: number;
  content: Content;
  /** What the tool marked, where a person overruled it: people are compared with the tool, not with themselves. */
  tool?: Content;
  earned: number;
  met: boolean;
  confidence: number;
  listen: boolean;
  at: ListenAt[];
  elements: { id: string; label: string; content: Content }[];
}

/** What the analysis of a cohort needs of one mark sheet: a tenth of its size, so that ten thousand fit in memory. */
export interface SheetRecord {
  key: ResultKey;
  file: string;
  columns: Record<string, string>;
  rubric: { id: string; title: string; version: number; hash: string };
  outcome: Outcome;
  /** Coverage in per cent of the marks that count; null when none does. */
  percent: number | null;
  /** An item, or by it the result, waits for somebody to listen. */
  provisional: boolean;
  items: RecordItem[];
  criticalMissed: string[];
  /** Those of them that listening may well find said. */
  criticalDoubted: string[];
  incorrect: { item: string; element: string; label: string; corrected: boolean }[];
  unsafe: { id: string; label: string; corrected: boolean; listen: boolean }[];
  /** The same as the tool had it, whatever a person overruled; `at` is null where a person took it out. */
  unsafeByTool: { id: string; label: string; corrected: boolean; listen: boolean; at: ListenAt | null }[];
  /** All that the rubric lists; null for sheets of earlier versions. */
  unsafeListed: { id: string; label: string }[] | null;
  sections: { id: string; title: string; seconds: number | null }[];
  /** Seconds; null where there are no times. */
  used: number | null;
  overLimit: number | null;
  limit: number;
  wordsPerMinute: number | null;
  costs: { what: string; seconds: number | null; words: number }[];
  changes: { item?: string; advice: string }[];
}

/** Quotes of an item that are worth a listener's time. */
const PLACES = 3;

export function recordOf(key: ResultKey, file: string, columns: Record<string, string>, sheet: MarkSheet): SheetRecord {
  const { id, title, version, hash } = sheet.rubric;
  return {
    // As marks, plans and the command line are read, however a system spelt the file's name.
    key: { candidate: key.candidate.normalize("NFC"), station: key.station.normalize("NFC"), attempt: key.attempt.normalize("NFC") },
    file,
    columns,
    rubric: { id, title, version, hash },
    outcome: sheet.result.outcome,
    percent: sheet.total.percent,
    provisional: sheet.total.provisional || sheet.result.outcome === "provisional",
    items: sheet.items.map(({ id: item, label, section, critical, weight, content, earned, met, confidence, listen, elements, firstSaid, overruled }) => {
      const evidence = elements.flatMap((element) => element.evidence.slice(0, 1));
      const places = (evidence.length > 0 || firstSaid === null ? evidence : [firstSaid]).sort((a, b) => a.first - b.first).slice(0, PLACES);
      return {
        id: item, label, section, critical, weight, content, ...(overruled !== undefined && { tool: overruled.tool.content }), earned, met, confidence, listen,
        at: places.map(({ start, line, estimated }) => ({ time: start, line, estimated })),
        elements: elements.map((element) => ({ id: element.id, label: element.label, content: element.content })),
      };
    }),
    criticalMissed: sheet.critical.missed,
    criticalDoubted: doubtedOf(sheet),
    incorrect: sheet.incorrect.map(({ item, element, label, corrected }) => ({ item, element, label, corrected })),
    unsafe: sheet.unsafe.found.map(({ id: statement, label, corrected, listen }) => ({ id: statement, label, corrected, listen })),
    unsafeByTool: unsafeByTool(sheet),
    unsafeListed: sheet.unsafe.statements?.map(({ id: statement, label }) => ({ id: statement, label })) ?? null,
    sections: sheet.sections.map(({ id: section, title: name, seconds }) => ({ id: section, title: name, seconds })),
    used: sheet.time.used.value,
    overLimit: sheet.time.overLimit.value,
    limit: sheet.time.limit,
    wordsPerMinute: sheet.time.wordsPerMinute.value,
    costs: sheet.plan.costs.map(({ what, seconds, words }) => ({ what, seconds, words })),
    changes: sheet.changes.map(({ item, advice }) => ({ ...(item !== undefined && { item }), advice })),
  };
}

/** Critical items missed that listening may well find said; sheets of earlier versions do not have them. */
export function doubtedOf({ critical }: MarkSheet): string[] {
  return (critical as Partial<MarkSheet["critical"]>).doubted ?? [];
}

/** What the tool found: of a statement that a person overruled the audit line says whether it stood. */
function unsafeByTool({ unsafe, corrections }: MarkSheet): SheetRecord["unsafeByTool"] {
  const overruled = ((corrections as MarkSheet["corrections"] | undefined)?.applied ?? []).filter((correction) => "unsafe" in correction);
  const own = unsafe.found.filter(({ id }) => !overruled.some((correction) => correction.unsafe === id));
  return [
    ...own.map(({ id, label, corrected, listen, evidence: { start, line, estimated } }) => ({ id, label, corrected, listen, at: { time: start, line, estimated } })),
    // Of what did not stand the audit does not say why: nobody but a listener can tell it then.
    ...overruled.filter(({ tool }) => tool.found > 0).map(({ unsafe: id, label, tool }) => ({ id, label, corrected: false, listen: (tool.standing ?? tool.found) === 0, at: null })),
  ];
}

/** Null for a rehearsal that could not be marked. */
export function recordOfResult(result: CohortResult): SheetRecord | null {
  return isMarked(result) ? recordOf(result.key, result.file, result.columns, result.sheet) : null;
}

/** One text for a key: parts cannot run into each other. */
export function keyText({ candidate, station, attempt }: ResultKey): string {
  return JSON.stringify([candidate, station, attempt]);
}
