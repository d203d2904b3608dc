import { clock } from "../../report/figures.ts";
import { toJson } from "../../report/json.ts";
import { Page, strong } from "../../report/page.ts";
import { painter } from "../../report/style.ts";
import { displayWidth } from "../../report/width.ts";
import { writeOutput } from "../output.ts";
import { shippedRubrics } from "../shipped.ts";
import { outputLook } from "../terminal.ts";
import type { OutputFlags } from "./options.ts";

/** Lists the shipped rubrics. */
export async function runRubrics(flags: Pick<OutputFlags, "format" | "width" | "colour">): Promise<void> {
  const rubrics = shippedRubrics();
  if (flags.format === "json") return writeOutput(toJson(rubrics), { inputs: [] });
  const { width, colour, ascii } = outputLook(flags);
  const page = new Page({ width: Math.min(width, 100), ascii, paint: painter(colour) });
  const hang = 2 + Math.max(...rubrics.map(({ name }) => displayWidth(name)));
  for (const { name, title, limit, target, items, critical } of rubrics) {
    page.entry({ lead: strong(name), hang, body: title });
    page.entry({ indent: hang, body: `limit ${clock(limit)}, target ${clock(target)}; ${items} items, ${critical} critical` });
  }
  page.blank();
  page.entry({ body: "Mark with one: saidwell mark TRANSCRIPT --rubric NAME. A rubric of your own is named by its path." });
  await writeOutput(page.toString(), { inputs: [] });
}
