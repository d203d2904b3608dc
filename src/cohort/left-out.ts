import type { FindingCode } from "../problem/catalogue.ts";
import type { Finding } from "../problem/problem.ts";

/** Lines named in one message; the rest are counted. */
const LINES_NAMED = 5;

/** Lines of a table that fit nothing, gathered by why: one finding a reason. */
export class LeftOut {
  private readonly reasons = new Map<string, { mend: string; lines: number[] }>();

  add(why: string, mend: string, line: number): void {
    const known = this.reasons.get(why) ?? { mend, lines: [] };
    known.lines.push(line);
    this.reasons.set(why, known);
  }

  /** @param what a line of the table is, in the singular ("mark"). */
  findings(code: FindingCode, file: string, what: string): Finding[] {
    return [...this.reasons].map(([why, { mend, lines }]) => ({
      code,
      severity: "warning",
      file,
      line: lines[0]!,
      message: `${why}: ${lines.length === 1 ? `the ${what} was left out` : `${lines.length} ${what}s were left out (lines ${lines.slice(0, LINES_NAMED).join(", ")}${lines.length > LINES_NAMED ? ", ..." : ""})`}`,
      mend,
    }));
  }
}
