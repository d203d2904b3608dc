import type { CompiledElement, CompiledRubric } from "../compile.ts";
import { likelihoodOf } from "../curve.ts";
import type { Passage } from "../passages.ts";
import type { Postings } from "../postings.ts";
import type { Stream } from "../stream.ts";
import curves from "./curves.json" with { type: "json" };
import type { Reading } from "./learnt.ts";
import { learntReading, type ReadSaying } from "./reading.ts";
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
      if (saying.asks || saying.readings[place]!.about < LEAST_ABOUT) continue;
      const signs = aloneSigns(saying, place, own, reading.isStatement);
      const company = saying.alone ? "lonely" : "company";
      const [right, wrong] = [likelihoodOf(curves.right, signs), likelihoodOf(curves.wrong, signs)];
      const found: FoundByReader | null = wrong >= WRONG_ALONE[company] && wrong > right ? { element, verdict: "wrong", saying, likelihood: wrong } : right >= SAID_ALONE[company] ? { element, verdict: "right", saying, likelihood: right } : null;
      if (found?.verdict === "wrong" && (saying.ofOthers || isWarning(element.incorrect, saying, postings, stream))) continue;
      if (found !== null && (best === null || found.likelihood > best.likelihood)) best = found;
    }
    return best === null ? [] : [best];
  });
}

/** Log-odds below which nobody would look. */
const LEAST_ABOUT = -3;
const SUREST = 4;

export function aloneSigns({ readings, first, end, alone }: ReadSaying, place: number, own: readonly Passage[], isStatement: readonly boolean[]): number[] {
  const { about, turned } = readings[place]!;
  const within = (value: number) => Math.max(-SUREST, Math.min(SUREST, value));
  let open = 0;
  let closed = 0;
  for (const passage of own) {
    if (passage.verdict !== "right" || Math.min(end, passage.end) - Math.max(first, passage.first) < (passage.end - passage.first) / 2) continue;
    if (passage.closed.length === 0) open = Math.max(open, passage.coverage);
    else closed = Math.max(closed, passage.coverage);
  }
  const lonely = alone ? 1 : 0;
  return [within(about), within(turned), within(about - bestOther(readings, place, isStatement)), Math.min(1, open), Math.min(1, closed), lonely, lonely * within(about), lonely * within(turned)];
}

function bestOther(readings: readonly Reading[], place: number, isStatement: readonly boolean[]): number {
  return readings.reduce((best, { about }, at) => (at === place || isStatement[at]! ? best : Math.max(best, about)), -Infinity);
}

