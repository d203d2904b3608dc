import type { Rubric } from "./rubric/schema.ts";
import type { MarkSheet } from "./scoring/types.ts";
import type { StationOptions } from "./station/types.ts";
import type { Transcript } from "./transcript/types.ts";

export interface MarkOptions extends StationOptions {
  /** Seconds, in place of the rubric's own. */
  limit?: number;
  /** Seconds, in place of the rubric's own. */
  target?: number;
}

/** The pipeline: finds the station, matches what was said to the rubric, scores it. Pure. */
export function mark(_transcript: Transcript, _rubric: Rubric, _options: MarkOptions = {}): MarkSheet {
  throw new Error("not built yet");
}
