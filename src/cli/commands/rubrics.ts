import { clock } from "../../report/figures.ts";
import { listShipped } from "../shipped-list.ts";
import type { OutputFlags } from "./options.ts";

/** Lists the shipped rubrics. */
export async function runRubrics(flags: Pick<OutputFlags, "format" | "width" | "colour">): Promise<void> {
  await listShipped(
    flags,
    ({ limit, target, items, critical }) => `limit ${clock(limit)}, target ${clock(target)}; ${items} items, ${critical} critical`,
    "Mark with one: saidwell mark TRANSCRIPT --rubric NAME. A rubric of your own is named by its path.",
  );
}
