import { CATALOGUE, EXIT, type CatalogueEntry, type ExitCode } from "../problem/catalogue.ts";
import type { Finding } from "../problem/problem.ts";

/** What each exit code says. The README's table and `saidwell codes` are written from this. */
export const EXIT_MEANING: Record<ExitCode, string> = {
  [EXIT.done]: "done; every requirement of --require holds",
  [EXIT.requirementNotMet]: "done, but a requirement of --require does not hold, or `rubric check` found errors or too many warnings, or `rubric compare --fail-on-change` found marks that change",
  [EXIT.usage]: "the command line is wrong",
  [EXIT.transcript]: "the transcript cannot be used",
  [EXIT.rubric]: "the rubric cannot be used",
  [EXIT.station]: "the station cannot be told from the recording as asked",
  [EXIT.output]: "the output cannot be written",
  [EXIT.cohortFiles]: "the cohort is marked, but some of its files could not be",
  [EXIT.cohort]: "the folder, plan, parts, results or marks of a cohort cannot be used",
  [EXIT.corrections]: "the corrections of a sheet cannot be used",
  [EXIT.internal]: "a fault of the program itself",
};

export const ENTRIES: ReadonlyMap<string, CatalogueEntry> = new Map(Object.entries(CATALOGUE));

/** The exit code of the first error; a code outside the catalogue is a fault of the program. */
export function exitCodeOf(findings: readonly Finding[]): ExitCode {
  const first = findings.find(({ severity }) => severity === "error") ?? findings[0];
  return (first && ENTRIES.get(first.code)?.exit) ?? EXIT.internal;
}
