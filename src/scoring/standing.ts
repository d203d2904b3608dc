import type { StatementResult } from "./types.ts";

/** Whether an unsafe statement stands at the end of the station: not put right, and not to be listened to first. */
export function stands({ corrected, listen }: Pick<StatementResult, "corrected" | "listen">): boolean {
  return !corrected && !listen;
}
