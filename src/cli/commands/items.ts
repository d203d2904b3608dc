import { joinMarks } from "../../cohort/agreement/join.ts";
import { itemsReport } from "../../cohort/items/report.ts";
import { readMarks } from "../../cohort/marks.ts";
import { itemsText } from "../../report/cohort/items.ts";
import { toJson } from "../../report/json.ts";
import { readRecords } from "../analysis/results.ts";
import { readTextFile } from "../analysis/text-file.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { problem } from "../problems.ts";
import { didYouMean } from "../../problem/nearest.ts";
import { tell } from "../tell.ts";
import { outputLook } from "../terminal.ts";
import { VERSION } from "../version.ts";
import type { OutputFlags } from "./options.ts";

export interface ItemsFlags extends OutputFlags {
  by?: string[];
  marks?: string;
}

/** Item analysis, reliability, and rates by groups. @throws ProblemError SW-A07 when no result has a column of --by */
export async function runItems(path: string, flags: ItemsFlags): Promise<void> {
  const given = [path, ...(flags.marks === undefined ? [] : [flags.marks])];
  checkOutput({ out: flags.out, force: flags.force, inputs: given });
  const { records, findings, inputs } = readRecords(path);
  const columns = [...new Set(records.flatMap((record) => Object.keys(record.columns)))];
  const by = (flags.by ?? []).map((column) => column.normalize("NFC"));
  for (const column of by) {
    if (!columns.includes(column)) {
      throw problem("SW-A07", `--by ${column}`, "no result has this column", `${didYouMean(column, columns)}${columns.length === 0 ? "The results have no columns: a plan gives them ('saidwell cohort --plan')." : `There are: ${columns.join(", ")}.`}`);
    }
  }
  const joined = flags.marks === undefined ? null : joinMarks(records, readMarks(readTextFile(flags.marks, "the marks"), flags.marks));
  tell([...findings, ...(joined?.findings ?? [])]);
  const report = itemsReport(records, VERSION, by, joined?.records ?? null);
  const look = outputLook(flags);
  await writeOutput(flags.format === "json" ? toJson(report) : itemsText(report, look), { out: flags.out, force: flags.force, inputs: [...given, ...inputs] });
}
