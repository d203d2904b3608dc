import { stringify } from "csv-stringify/sync";
import { markingSheetRows } from "../../cohort/marking-sheet.ts";
import { markingSheetText } from "../../report/cohort/marking-sheet.ts";
import { oneSheet } from "../analysis/results.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { problem } from "../problems.ts";
import { findRubric } from "../rubric-source.ts";
import { outputLook, type ColourWish } from "../terminal.ts";

export interface SheetFlags {
  format: "text" | "csv";
  out?: string;
  force?: boolean;
  candidate?: string;
  station?: string;
  attempt?: string;
  marker?: string;
  evidence?: string;
  width?: number;
  colour?: ColourWish;
}

/** Prints a blank marking sheet for people: to be printed, or as CSV to be filled in and read back by 'saidwell agree'. */
export async function runRubricSheet(nameOrFile: string, flags: SheetFlags): Promise<void> {
  const output = { out: flags.out, force: flags.force, inputs: [nameOrFile, ...(flags.evidence === undefined ? [] : [flags.evidence])] };
  checkOutput(output);
  const rubric = await findRubric(nameOrFile, output.inputs, nameOrFile);
  // Blocks and responses files are known only now.
  checkOutput(output);
  if (flags.format === "csv") return writeOutput(stringify(markingSheetRows(rubric, flags), { record_delimiter: "windows", escape_formulas: true }), output);
  const look = outputLook(flags);
  const evidence = flags.evidence === undefined ? null : oneSheet(flags.evidence);
  if (evidence !== null && evidence.rubric.id !== rubric.id) throw problem("SW-U03", `--evidence ${flags.evidence!}`, `the mark sheet is of the rubric '${evidence.rubric.id}', not of '${rubric.id}'`, "Name the rubric that marked it, or give another sheet.");
  await writeOutput(markingSheetText(rubric, evidence, look), output);
}
