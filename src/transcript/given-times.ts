import type { Segment } from "./types.ts";

type Timed = Pick<Segment, "timing" | "edgeGiven" | "startGiven">;

/** Whether the file itself says when a stretch begins. */
export function hasGivenStart({ timing, edgeGiven, startGiven }: Timed): boolean {
  return timing === "measured" || edgeGiven === "start" || startGiven === true;
}

/** Whether the file itself says when a stretch ends. */
export function hasGivenEnd({ timing, edgeGiven }: Timed): boolean {
  return timing === "measured" || edgeGiven === "end";
}
