import { closeSync, existsSync, openSync, statSync } from "node:fs";
import { join } from "node:path";
import { RESULT_FORM, type CohortResult, type ResultHashes } from "../../cohort/result.ts";
import { identityOf } from "../../cohort/sheet-names.ts";
import { readAt, readLines, LineAppender } from "./lines.ts";

export const RESULTS = "results.jsonl";
/** Results of the run under way, in the order in which they came. */
export const JOURNAL = "journal.jsonl";

/** Where a result stands and what decides whether it still holds. Small: there is one for every rehearsal. */
export interface Located {
  fd: number;
  /** The folder it came from. */
  folder: string;
  offset: number;
  length: number;
  /** Of the transcript; null when the file could not be read. */
  transcript: string | null;
  /** Rubric, options and program in one. */
  basis: string;
  /** As JSON. */
  columns: string;
  marked: boolean;
  /** A fault that may be gone next time: the file could not be read, or the program failed. */
  again: boolean;
}

/** What a mark rests on besides the transcript. */
export function basisOf({ rubric, options, program }: Omit<ResultHashes, "transcript">): string {
  return `${rubric ?? "-"} ${options} ${program}`;
}

/** An index over result files: the sheets stay on the disk. */
export class ResultStore {
  readonly index = new Map<string, Located>();
  /** Lines that could not be read, by file. */
  readonly broken = new Map<string, number>();
  readonly #files: number[] = [];
  /** One copy of texts that many results share. */
  readonly #shared = new Map<string, string>();

  /** Reads what a file holds; what it says of a rehearsal replaces what an earlier file said. A missing file holds nothing. */
  load(folder: string, name: string, onTwice?: (identity: string, before: Located, now: Located) => void): void {
    const path = join(folder, name);
    if (!existsSync(path) || statSync(path).size === 0) return;
    const fd = openSync(path, "r");
    this.#files.push(fd);
    let end = 0;
    for (const { offset, length, text } of readLines(fd)) {
      end = offset + length + 1;
      const result = parseResult(text);
      if (result === null) this.#addBroken(path);
      else this.#add(result, { fd, folder, offset, length }, onTwice);
    }
    if (end < statSync(path).size) this.#addBroken(path);
  }

  /** Takes in a line just written to the journal. */
  note(result: Omit<CohortResult, "sheet" | "errors">, place: { fd: number; folder: string; offset: number; length: number }, outcome: { marked: boolean; again: boolean }): void {
    this.index.set(identityOf(result), this.#located(result, place, outcome));
  }

  /** The result as it stands on the disk, without its line end. */
  read({ fd, offset, length }: Located): string {
    return readAt(fd, offset, length);
  }

  close(): void {
    for (const fd of this.#files.splice(0)) closeSync(fd);
  }

  #add(result: CohortResult, place: { fd: number; folder: string; offset: number; length: number }, onTwice?: (identity: string, before: Located, now: Located) => void): void {
    const errors = result.sheet === null ? result.errors : [];
    const identity = identityOf(result);
    const now = this.#located(result, place, { marked: result.sheet !== null, again: mayBeGone(errors) });
    const before = this.index.get(identity);
    if (before !== undefined) onTwice?.(identity, before, now);
    this.index.set(identity, now);
  }

  #located(result: Omit<CohortResult, "sheet" | "errors">, place: { fd: number; folder: string; offset: number; length: number }, { marked, again }: { marked: boolean; again: boolean }): Located {
    // Named one by one: what comes along in these objects (a whole sheet) must not stay in memory.
    const { fd, folder, offset, length } = place;
    return { fd, folder, offset, length, marked, again, transcript: result.hashes.transcript, basis: this.#share(basisOf(result.hashes)), columns: this.#share(JSON.stringify(result.columns)) };
  }

  #share(text: string): string {
    const known = this.#shared.get(text);
    if (known !== undefined) return known;
    this.#shared.set(text, text);
    return text;
  }

  #addBroken(path: string): void {
    this.broken.set(path, (this.broken.get(path) ?? 0) + 1);
  }
}

/** Errors that come from the machine or the program, not from the transcript. */
const PASSING = new Set(["SW-T01", "SW-B06"]);

export function mayBeGone(errors: readonly { code: string }[]): boolean {
  return errors.some(({ code }) => PASSING.has(code));
}

function parseResult(text: string): CohortResult | null {
  try {
    const result = JSON.parse(text) as Partial<CohortResult> | null;
    const whole = result !== null && result.form === RESULT_FORM && typeof result.key === "object" && typeof result.file === "string" && typeof result.hashes === "object" && typeof result.columns === "object" && result.sheet !== undefined;
    return whole ? (result as CohortResult) : null;
  } catch {
    return null;
  }
}

/** Opens the journal for adding, after its torn last line, if any, was cut off. */
export function openJournal(folder: string): LineAppender {
  return new LineAppender(join(folder, JOURNAL));
}
