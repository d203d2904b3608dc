import type { CompiledElement, CompiledRubric } from "../compile.ts";
import { likelihoodOf } from "../curve.ts";
import { toldOfOthers } from "../others.ts";
import type { Passage } from "../passages.ts";
import type { Postings } from "../postings.ts";
import type { Stream } from "../stream.ts";
import curves from "./curves.json" with { type: "json" };
import { asksOnly, leadOf, learntReading, readingSigns, type LearntReading, type ReadSaying } from "./reading.ts";
import { holdsHalf } from "./sayings.ts";
import { isWarning } from "./warned-of.ts";

/*
 * What no response fits, and sayings that people marked are worded like: "an empty pop bottle will do you" for the
 * sharps bin. The second reader alone must be surer than both together.
 */

/** In the order of the weights of `right` and `wrong` in curves.json. */
export const ALONE_SIGNS = ["about", "turned", "how far ahead of other elements", "best fit that is open", "best fit that is closed", "hardly anything else is said", "about where hardly anything is", "turned where hardly anything is"] as const;

/** From here on it is taken for said wrongly, and for said. Where hardly anything else is said nothing around it speaks for it, and it must be surer. */
export const WRONG_ALONE = { company: 0.75, lonely: 0.85 } as const;
export const SAID_ALONE = { company: 0.7, lonely: 0.9 } as const;

export interface FoundByReader {
  element: CompiledElement;
  verdict: "right" | "wrong";
  saying: ReadSaying;
  likelihood: number;
}

/**
 * @param missing elements that nothing was found of.
 * @param passages all that were tried.
 */
export function foundByReader(rubric: CompiledRubric, missing: readonly CompiledElement[], passages: readonly Passage[], postings: Postings, stream: Stream): FoundByReader[] {
  const reading = learntReading(rubric, stream);
  if (reading === null) return [];
  return missing.flatMap((element): FoundByReader[] => {
    const place = reading.placeOf(`${element.item}/${element.element}`);
    if (place === undefined) return [];
    const own = passages.filter((passage) => passage.element === element);
    let best: FoundByReader | null = null;
    for (const saying of reading.sayings) {
      const found = said(saying, place, own, reading, element);
      if (found === null || (best !== null && found.likelihood <= best.likelihood) || asksOnly(saying, stream)) continue;
      if (found.verdict === "wrong" && (toldOfOthers(saying, stream) || isWarning(element.incorrect, saying, postings, stream))) continue;
      best = found;
    }
    return best === null ? [] : [best];
  });
}

/** Log-odds below which nobody would look. */
const LEAST_ABOUT = -3;

function said(saying: ReadSaying, place: number, own: readonly Passage[], reading: LearntReading, element: CompiledElement): FoundByReader | null {
  if (saying.readings[place]!.about < LEAST_ABOUT) return null;
  const signs = aloneSigns(saying, place, own, reading);
  const company = saying.alone ? "lonely" : "company";
  const [right, wrong] = [likelihoodOf(curves.right, signs), likelihoodOf(curves.wrong, signs)];
  if (wrong >= WRONG_ALONE[company] && wrong > right) return { element, verdict: "wrong", saying, likelihood: wrong };
  return right >= SAID_ALONE[company] ? { element, verdict: "right", saying, likelihood: right } : null;
}

/** @param own passages of the element. */
export function aloneSigns(saying: ReadSaying, place: number, own: readonly Passage[], reading: LearntReading): number[] {
  const { about, turned, alone } = readingSigns(saying, place);
  let open = 0;
  let closed = 0;
  for (const passage of own) {
    if (passage.verdict !== "right" || !holdsHalf(saying, passage)) continue;
    if (passage.closed.length === 0) open = Math.max(open, passage.coverage);
    else closed = Math.max(closed, passage.coverage);
  }
  return [about, turned, leadOf(saying, place, reading), Math.min(1, open), Math.min(1, closed), alone, alone * about, alone * turned];
}
