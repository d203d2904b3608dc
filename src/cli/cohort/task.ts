import type { ResultKey } from "../../cohort/result.ts";
import type { MarkOptions } from "../../mark.ts";
import type { PackedRubric } from "../../matching/packed.ts";
import type { Rubric } from "../../rubric/schema.ts";

/* What the program and its workers say to each other: plain data. */

/** Given to every worker when it starts. */
export interface WorkerSetUp {
  /** Compiled once for all workers. */
  rubrics: { rubric: Rubric; packed: PackedRubric }[];
  version: string;
  /** SHA-256 of the marking program. */
  program: string;
  /** Also write sheets as JSON. */
  json: boolean;
}

export interface Task {
  path: string;
  file: string;
  key: ResultKey;
  columns: Record<string, string>;
  /** Place in `rubrics`. */
  rubric: number;
  options: MarkOptions;
  /** SHA-256 of `options`. */
  optionsHash: string;
  /** Path of the sheet, without an ending. */
  sheet: string;
  /** SHA-256 of the transcript that is marked already, if nothing else has changed. */
  known: string | null;
}

export type Done =
  /** The transcript is the one that was marked. */
  | { kept: true }
  /** @param line the result as JSON on one line */
  | { kept: false; line: string; transcript: string | null; marked: boolean; again: boolean };
