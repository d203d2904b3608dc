import type { CohortSummary } from "../../cohort/summary.ts";
import { EXIT } from "../../problem/catalogue.ts";
import { summaryText } from "../../report/cohort/summary.ts";
import type { OutputFlags } from "../commands/options.ts";
import { writeOutput } from "../output.ts";
import { tell } from "../tell.ts";
import { outputLook } from "../terminal.ts";

/** Prints the summary of a folder of results. Where files could not be marked, that is told and decides the exit code. */
export async function showSummary(summary: CohortSummary, folder: string, { width, colour }: Pick<OutputFlags, "width" | "colour">): Promise<void> {
  await writeOutput(summaryText(summary, outputLook({ width, colour })), { inputs: [] });
  if (summary.failed.length === 0) return;
  process.exitCode = EXIT.cohortFiles;
  tell([{ code: "SW-B13", severity: "error", file: folder, message: `${summary.failed.length} of ${summary.rehearsals} files could not be marked`, mend: "The files summary.txt and gradebook.csv name each with its reason." }]);
}
