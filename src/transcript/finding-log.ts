import type { FindingCode } from "../problem/catalogue.ts";
import { ProblemError, type Finding } from "../problem/problem.ts";

/** How many lines a folded finding names before it only counts the rest. */
const NAMED_LINES = 3;

export interface Note {
  code: FindingCode;
  severity: "warning" | "info";
  line?: number;
  message: string;
  mend?: string;
  /** Notes of the same code and kind are folded into one; by default the message is the kind. */
  kind?: string;
}

/**
 * Collects what was repaired, lost or guessed while one file is read. Equal notes are folded into one
 * finding that names the first lines and counts the rest, so that a sheet stays readable and nothing is silent.
 */
export class FindingLog {
  readonly file: string;
  private readonly kinds = new Map<string, { note: Note; lines: number[]; count: number }>();

  constructor(file: string) {
    this.file = file;
  }

  add(note: Note): void {
    const key = `${note.code} ${note.severity} ${note.kind ?? note.message}`;
    const known = this.kinds.get(key);
    if (known === undefined) {
      this.kinds.set(key, { note, lines: note.line === undefined ? [] : [note.line], count: 1 });
      return;
    }
    known.count += 1;
    if (note.line !== undefined && !known.lines.includes(note.line) && known.lines.length < NAMED_LINES) {
      known.lines.push(note.line);
    }
  }

  /** The findings in file order; those without a line come first. */
  list(): Finding[] {
    const folded = [...this.kinds.values()].map(({ note, lines, count }): Finding => {
      const { code, severity, line, message, mend } = note;
      return {
        code,
        severity,
        file: this.file,
        ...(line === undefined ? {} : { line }),
        message: message + alsoAt(lines.slice(1), count - Math.max(lines.length, 1)),
        ...(mend === undefined ? {} : { mend }),
      };
    });
    return folded.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  }

  /** The error that ends the reading of this file. */
  refuse(code: FindingCode, message: string, at: { line?: number; column?: number; mend?: string } = {}): ProblemError {
    return new ProblemError([{ code, severity: "error", file: this.file, ...at, message }]);
  }
}

function alsoAt(lines: number[], more: number): string {
  if (lines.length === 0) return more > 0 ? `; and ${more} more like it` : "";
  const named = `; the same on line${lines.length > 1 ? "s" : ""} ${lines.join(" and ")}`;
  return more > 0 ? `${named}, and ${more} more like it` : named;
}
