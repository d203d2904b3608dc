import { meets } from "../../station/span.ts";
import type { Postings } from "../postings.ts";
import type { Response } from "../response.ts";
import type { Stream } from "../stream.ts";
import { windowsFor, type Window } from "../windows.ts";
import type { Saying } from "./sayings.ts";

/** So much of a wrong or unsafe statement in its own words, denied, makes a warning of a saying. */
const WARNED = 0.4;
/** Share of those words that is denied. */
const MOSTLY_DENIED = 0.5;

/** "If it has been frozen you never thaw it": what is wrong to say stands there in the rubric's own words, and is denied. The lines know words and not what a denial reaches. */
export function isWarning(statements: readonly Response[], saying: Saying, postings: Postings, stream: Stream): boolean {
  return statements.some((response) => windowsFor(response, postings, stream, WARNED).some((window) => meets(window, saying) && isDenied(window, stream)));
}

/** Whether most of the words are denied that the response affirms. */
function isDenied({ response, aligned }: Window, { polarity }: Stream): boolean {
  let all = 0;
  let denied = 0;
  for (const { term, hit } of aligned) {
    const { weight, negated } = response.terms[term]!;
    if (negated) return false;
    all += weight;
    if (polarity[hit.end - 1]!.negated) denied += weight;
  }
  return all > 0 && denied / all >= MOSTLY_DENIED;
}
