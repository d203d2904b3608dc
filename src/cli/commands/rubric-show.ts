import { clock } from "../../report/figures.ts";
import { toJson } from "../../report/json.ts";
import { Page, strong } from "../../report/page.ts";
import { rubricPage } from "../../report/rubric/show.ts";
import { painter } from "../../report/style.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { findRubric } from "../rubric-source.ts";
import { shippedRubrics } from "../shipped.ts";
import { outputLook } from "../terminal.ts";
import type { OutputFlags } from "./options.ts";

export interface ShowFlags extends OutputFlags {
  responses?: boolean;
}

/** Lists the shipped rubrics as a table. */
export async function runRubricList(flags: Pick<OutputFlags, "format" | "width" | "colour">): Promise<void> {
  const rubrics = shippedRubrics();
  if (flags.format === "json") return writeOutput(toJson(rubrics), { inputs: [] });
  const { width, colour, ascii } = outputLook(flags);
  const page = new Page({ width: Math.min(width, 100), ascii, paint: painter(colour) });
  const hang = 2 + Math.max(...rubrics.map(({ name }) => name.length));
  for (const { name, title, version, jurisdiction, limit, items, critical } of rubrics) {
    page.entry({ lead: strong(name), hang, body: title });
    page.entry({ indent: hang, body: `${items} items, ${critical} critical; limit ${clock(limit)}; version ${version}; ${jurisdiction.join(", ")}` });
  }
  await writeOutput(page.toString(), { inputs: [] });
}

/** Prints what a rubric asks. JSON is the rubric itself, blocks read in and defaults filled in. */
export async function runRubricShow(nameOrFile: string, flags: ShowFlags): Promise<void> {
  const output = { out: flags.out, force: flags.force, inputs: [nameOrFile] };
  checkOutput(output);
  const rubric = await findRubric(nameOrFile, output.inputs, nameOrFile);
  // Blocks and responses files are known only now.
  checkOutput(output);
  const look = outputLook(flags);
  await writeOutput(flags.format === "json" ? toJson(rubric) : rubricPage(rubric, { ...look, responses: flags.responses === true }), output);
}
