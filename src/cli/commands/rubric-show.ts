import { clock } from "../../report/figures.ts";
import type { Rubric } from "../../rubric/schema.ts";
import { toJson } from "../../report/json.ts";
import { rubricPage } from "../../report/rubric/show.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { findRubric } from "../rubric-source.ts";
import { listShipped } from "../shipped-list.ts";
import { outputLook } from "../terminal.ts";
import type { OutputFlags } from "./options.ts";

export interface ShowFlags extends OutputFlags {
  responses?: boolean;
}

/** Lists the shipped rubrics as a table. */
export async function runRubricList(flags: Pick<OutputFlags, "format" | "width" | "colour">): Promise<void> {
  await listShipped(flags, ({ version, jurisdiction, limit, items, critical }) => `${items} items, ${critical} critical; limit ${clock(limit)}; version ${version}; ${jurisdiction.join(", ")}`);
}

/** Prints what a rubric asks. JSON is the rubric itself, blocks read in and defaults filled in. */
export async function runRubricShow(nameOrFile: string, flags: ShowFlags): Promise<void> {
  const output = { out: flags.out, force: flags.force, inputs: [nameOrFile] };
  checkOutput(output);
  const rubric = await findRubric(nameOrFile, output.inputs, nameOrFile);
  // Blocks and responses files are known only now.
  checkOutput(output);
  const look = outputLook(flags);
  await writeOutput(flags.format === "json" ? toJson(withoutLearnt(rubric)) : rubricPage(rubric, { ...look, responses: flags.responses === true }), output);
}

/** Thousands of numbers that a program wrote for itself. */
function withoutLearnt({ learnt: _, ...rubric }: Rubric): Omit<Rubric, "learnt"> {
  return rubric;
}
