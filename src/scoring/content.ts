import type { Content } from "./types.ts";

/** Whether a mark decides. Only what is decided stands in the denominator: not what cannot be told, was not offered or does not apply. */
export function isDecided(content: Content): boolean {
  return content === "complete" || content === "partial" || content === "incorrect" || content === "absent";
}

/** Whether the station did not ask for the item: its condition does not hold, or the patient gave no cue for it. */
export function notAskedFor(content: Content): boolean {
  return content === "not-applicable" || content === "not-offered";
}
