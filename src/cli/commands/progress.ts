import { itemsReport } from "../../cohort/items/report.ts";
import { progressReport } from "../../cohort/progress/report.ts";
import { compareNatural } from "../../cohort/result.ts";
import { notMeasurable, type Estimate } from "../../cohort/statistics/estimate.ts";
import { progressText } from "../../report/cohort/progress.ts";
import { toJson } from "../../report/json.ts";
import { readRecords } from "../analysis/results.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { problem } from "../problems.ts";
import { didYouMean } from "../../problem/nearest.ts";
import { tell } from "../tell.ts";
import { outputLook } from "../terminal.ts";
import { VERSION } from "../version.ts";
import type { OutputFlags } from "./options.ts";

export interface ProgressFlags extends OutputFlags {
  candidate?: string;
  cohort?: string;
  sem?: number;
}

/** More names than this are not a help. */
const MOST_NAMES = 10;

/** One candidate's attempts. */
export async function runProgress(path: string, flags: ProgressFlags): Promise<void> {
  if (flags.sem !== undefined && flags.cohort !== undefined) throw problem("SW-U03", "--sem, --cohort", "both say what the error of measurement is", "Keep one of the two.");
  checkOutput({ out: flags.out, force: flags.force, inputs: [path] });
  const { records, findings, inputs } = readRecords(path);
  const names = [...new Set(records.map(({ key }) => key.candidate))].sort(compareNatural);
  const candidate = flags.candidate?.normalize("NFC") ?? (names.length === 1 ? names[0]! : null);
  const some = `${names.slice(0, MOST_NAMES).join(", ")}${names.length > MOST_NAMES ? ` and ${names.length - MOST_NAMES} more` : ""}`;
  if (candidate === null) throw problem("SW-U07", path, `there are ${names.length} candidates, and it is not said whose progress is meant`, `Add --candidate with one of ${some}.`);
  const own = records.filter(({ key }) => key.candidate === candidate);
  if (own.length === 0) throw problem("SW-A07", `--candidate ${candidate}`, "no result is of this candidate", `${didYouMean(candidate, names)}There are: ${some}.`);
  tell(findings);
  const report = progressReport(own, VERSION, {
    ...(flags.sem !== undefined && { error: flags.sem }),
    ...(flags.cohort !== undefined && { cohortErrors: errorsOf(flags.cohort) }),
  });
  const look = outputLook(flags);
  await writeOutput(flags.format === "json" ? toJson(report) : progressText(report, look), { out: flags.out, force: flags.force, inputs: [path, ...inputs] });
}

/** By rubric; none where the cohort was marked by two versions of it. */
function errorsOf(path: string): Map<string, Estimate> {
  const found = new Map<string, Estimate>();
  for (const { rubric, reliability } of itemsReport(readRecords(path).records, VERSION).stations) {
    found.set(rubric.id, found.has(rubric.id) ? notMeasurable(0, "more than one station or version") : reliability.errorOfMeasurement);
  }
  return found;
}
