import { joinMarks } from "../../cohort/agreement/join.ts";
import { agreementReport } from "../../cohort/agreement/report.ts";
import { readMarks } from "../../cohort/marks.ts";
import { ProblemError } from "../../problem/problem.ts";
import { agreementText } from "../../report/cohort/agreement.ts";
import { toJson } from "../../report/json.ts";
import { readRecords } from "../analysis/results.ts";
import { readTextFile } from "../analysis/text-file.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { tell } from "../tell.ts";
import { outputLook } from "../terminal.ts";
import { VERSION } from "../version.ts";
import type { OutputFlags } from "./options.ts";

/** Compares the tool's marks with people's, and people's with each other's. */
export async function runAgree(marksPath: string, resultsPath: string, flags: OutputFlags): Promise<void> {
  checkOutput({ out: flags.out, force: flags.force, inputs: [marksPath, resultsPath] });
  const marks = readMarks(readTextFile(marksPath, "the marks"), marksPath);
  const { records, findings, inputs } = readRecords(resultsPath);
  const joined = joinMarks(records, marks);
  if (joined.records.length === 0) {
    throw new ProblemError([{ code: "SW-A07", severity: "error", file: marksPath, message: "none of the marks is of a rehearsal in the results", mend: "Candidate, station and attempt must be written as in the results." }, ...joined.findings]);
  }
  tell([...findings, ...joined.findings]);
  const report = agreementReport(joined, VERSION, marks.blank);
  const look = outputLook(flags);
  await writeOutput(flags.format === "json" ? toJson(report) : agreementText(report, look), { out: flags.out, force: flags.force, inputs: [marksPath, ...inputs] });
}
