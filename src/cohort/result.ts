import type { Finding } from "../problem/problem.ts";
import type { MarkSheet } from "../scoring/types.ts";

/*
 * The data between `saidwell cohort` and everything that reads its results (`merge`, `agree`, `cutscore`, `progress`,
 * item analysis): one JSON object a line in DIR/results.jsonl, sorted by `compareResults`, one line for each rehearsal
 * of the folder or plan, marked or not. A public form like the mark sheet's: it is added to, what is there stays.
 */

export const RESULT_FORM = "saidwell/result@1";

/** Who, where and which try: from the file's name or the plan, never from the transcript. */
export interface ResultKey {
  candidate: string;
  /** As the file's name or the plan calls it; the rubric's id when neither names one. */
  station: string;
  /** "1" when nothing names one; often a whole number, but any text is taken. */
  attempt: string;
}

/** What a mark rests on: when one of these has changed, the rehearsal is marked anew. SHA-256, hexadecimal. */
export interface ResultHashes {
  /** Of the transcript's bytes; null when the file could not be read. */
  transcript: string | null;
  /** `Rubric.hash`: of the rubric with its blocks read in; null when no rubric was found for the station. */
  rubric: string | null;
  /** Of the options that change marks: limit, target, from, to, the candidate's label. */
  options: string;
  /** Of the program's own marking code and data, which may change between two builds of one version. */
  program: string;
}

interface ResultHead {
  form: typeof RESULT_FORM;
  /** Parts may be empty when the file's name does not follow the pattern; then there is no sheet. */
  key: ResultKey;
  /** Path below the cohort's folder, with forward slashes. `key` and `file` together are unique. */
  file: string;
  hashes: ResultHashes;
  /** Of the program. */
  version: string;
  /** The plan's other columns (accent, school, recogniser), and other names of the pattern. As written, all text. */
  columns: Record<string, string>;
}

export interface MarkedResult extends ResultHead {
  /** The whole sheet, as `saidwell mark --format json` gives it, on one line. */
  sheet: MarkSheet;
}

export interface FailedResult extends ResultHead {
  sheet: null;
  /** Why there is no sheet: at least one. */
  errors: Finding[];
}

export type CohortResult = MarkedResult | FailedResult;

export function isMarked(result: CohortResult): result is MarkedResult {
  return result.sheet !== null;
}

/** By candidate, station, attempt, file. "2" comes before "10", and the order is the same on every machine. */
export function compareResults(a: Pick<CohortResult, "key" | "file">, b: Pick<CohortResult, "key" | "file">): number {
  return (
    compareNatural(a.key.candidate, b.key.candidate) ||
    compareNatural(a.key.station, b.key.station) ||
    compareNatural(a.key.attempt, b.key.attempt) ||
    compareNatural(a.file, b.file)
  );
}

const PARTS = /\d+|\D+/g;

/** Runs of digits by their value, everything else by code unit: no locale, which differs between machines. */
export function compareNatural(a: string, b: string): number {
  if (a === b) return 0;
  const [left, right] = [a.match(PARTS) ?? [], b.match(PARTS) ?? []];
  for (let place = 0; place < Math.min(left.length, right.length); place += 1) {
    const order = comparePart(left[place]!, right[place]!);
    if (order !== 0) return order;
  }
  // "01" and "1" are equal part by part: then by code unit, so that only equal texts are equal.
  return left.length - right.length || (a < b ? -1 : 1);
}

function comparePart(a: string, b: string): number {
  if (/^\d/.test(a) && /^\d/.test(b)) {
    const [x, y] = [a.replace(/^0+/, ""), b.replace(/^0+/, "")];
    return x.length - y.length || (x < y ? -1 : Number(x > y));
  }
  return a < b ? -1 : Number(a > b);
}
