/**
 * One thing to tell the person at the terminal: where it is, what is wrong and how to mend it.
 * Plain data, so that it travels from any layer to any output.
 */
export interface Finding {
  /** A code of the catalogue, such as `SW-T03`. */
  code: string;
  /** `error` refuses the work; `warning` says that something was guessed, repaired or lost; `info` only tells. */
  severity: "error" | "warning" | "info";
  /** The file as the person named it, or `<stdin>`. */
  file: string;
  /** 1-based; absent when the finding concerns the whole file. */
  line?: number;
  /** 1-based. */
  column?: number;
  /** What is wrong, one sentence. */
  message: string;
  /** How to mend it, one sentence. */
  mend?: string;
}

/** What is wrong and how to mend it, from who does not know where it stands. */
export type Fault = Required<Pick<Finding, "message" | "mend">>;

/** Thrown when work cannot go on. Carries every error found, not only the first. */
export class ProblemError extends Error {
  readonly findings: readonly Finding[];

  constructor(findings: readonly Finding[]) {
    super(findings.map(formatFinding).join("\n"));
    this.name = "ProblemError";
    this.findings = findings;
  }
}

/** Why a file cannot be read, as part of a sentence, and how to mend it. For who tells of it with place and code. */
export class Unreadable extends Error {
  readonly mend: string;

  constructor(reason: string, mend: string, options?: ErrorOptions) {
    super(reason, options);
    this.name = "Unreadable";
    this.mend = mend;
  }
}

/** `file:line:column: message [code]` and, on a second line, the mend. */
export function formatFinding(finding: Finding): string {
  const line = finding.line === undefined ? "" : `:${finding.line}`;
  const column = finding.line === undefined || finding.column === undefined ? "" : `:${finding.column}`;
  const mend = finding.mend === undefined ? "" : `\n  ${finding.mend}`;
  return `${finding.file}${line}${column}: ${finding.message} [${finding.code}]${mend}`;
}
