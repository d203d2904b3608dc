import { readPolarity } from "../polarity-gate.ts";
import type { Postings } from "../postings.ts";
import type { Response } from "../response.ts";
import { meets } from "../../station/span.ts";
import type { Stream } from "../stream.ts";
import { windowsFor } from "../windows.ts";
import type { Saying } from "./sayings.ts";

/** So much of a wrong or unsafe statement in its own words, denied, makes a warning of a saying. */
const WARNED = 0.4;

/** "If it has been frozen you never thaw it": what is wrong to say stands there in the rubric's own words, and is denied. The lines know words and not what a denial reaches. */
export function isWarning(statements: readonly Response[], saying: Saying, postings: Postings, stream: Stream): boolean {
  return statements.some((response) => windowsFor(response, postings, stream, WARNED).some((window) => meets(window, saying) && readPolarity(stream, window, new Set()) === "opposes"));
}
