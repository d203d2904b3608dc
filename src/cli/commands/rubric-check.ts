import type { CheckFlags } from "./rubric-check-flags.ts";

/** Checks rubrics and their blocks. */
export async function runRubricCheck(_paths: string[], _flags: CheckFlags): Promise<void> {
  throw new Error("not yet written");
}
