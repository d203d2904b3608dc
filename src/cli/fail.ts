import { CommanderError } from "commander";
import { EXIT, type ExitCode } from "../problem/catalogue.ts";
import { formatFinding, ProblemError, type Finding } from "../problem/problem.ts";
import { clean } from "../report/clean.ts";
import { sentence } from "../report/figures.ts";
import { exitCodeOf } from "./exit-codes.ts";

/** More errors than this scroll the first ones away; they are usually one mistake. */
const MOST_TOLD = 20;

type Write = (text: string) => void;

/** Tells the person what went wrong and gives the exit code. */
export function fail(error: unknown, write: Write, environment: Readonly<Record<string, string | undefined>>): ExitCode {
  if (error instanceof ProblemError) {
    for (const finding of error.findings.slice(0, MOST_TOLD)) write(`${describe(finding)}\n`);
    const more = error.findings.length - MOST_TOLD;
    if (more > 0) write(`and ${more} more like these\n`);
    return exitCodeOf(error.findings);
  }
  // commander has printed its message, or the help that was asked for.
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.usage;
  const message = error instanceof Error ? error.message : String(error);
  write(`saidwell: the program itself failed: ${clean(message)} [SW-O03]\n`);
  write("  This is a fault of saidwell, not of your files. Please report it with the command you gave.\n");
  if (environment["SAIDWELL_DEBUG"] === "1") write(`${error instanceof Error ? (error.stack ?? "") : ""}\n`);
  else write("  SAIDWELL_DEBUG=1 shows where.\n");
  return EXIT.internal;
}

/** A finding may quote the transcript, so it is cleaned like everything else that comes from outside. */
export function describe(finding: Finding): string {
  const { mend, ...rest } = finding;
  return formatFinding({ ...rest, file: clean(finding.file), message: clean(finding.message), ...(mend !== undefined && { mend: sentence(clean(mend)) }) });
}
