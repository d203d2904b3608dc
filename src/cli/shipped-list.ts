import { toJson } from "../report/json.ts";
import { strong } from "../report/page.ts";
import { displayWidth } from "../report/width.ts";
import type { OutputFlags } from "./commands/options.ts";
import { listPage } from "./list-page.ts";
import { writeOutput } from "./output.ts";
import { shippedRubrics, type ShippedRubric } from "./shipped.ts";

/** Lists the shipped rubrics, each with a line of facts below its title. @param closing said below the list */
export async function listShipped(flags: Pick<OutputFlags, "format" | "width" | "colour">, facts: (rubric: ShippedRubric) => string, closing?: string): Promise<void> {
  const rubrics = shippedRubrics();
  if (flags.format === "json") return writeOutput(toJson(rubrics), { inputs: [] });
  const page = listPage(flags);
  const hang = 2 + Math.max(...rubrics.map(({ name }) => displayWidth(name)));
  for (const rubric of rubrics) {
    page.entry({ lead: strong(rubric.name), hang, body: rubric.title });
    page.entry({ indent: hang, body: facts(rubric) });
  }
  if (closing !== undefined) {
    page.blank();
    page.entry({ body: closing });
  }
  await writeOutput(page.toString(), { inputs: [] });
}
