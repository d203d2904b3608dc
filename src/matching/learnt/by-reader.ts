import type { QuantityMention } from "../../language/quantity-mention.ts";
import type { WordSpan } from "../../station/types.ts";
import type { CompiledElement, CompiledRubric } from "../compile.ts";
import { likelihoodOf } from "../curve.ts";
import { toldOfOthers } from "../others.ts";
import type { Passage } from "../passages.ts";
import type { Postings } from "../postings.ts";
import { wrongNumberIn } from "../quantity-gate.ts";
import type { Stream } from "../stream.ts";
import curves from "./curves.json" with { type: "json" };
import { toldOfElement } from "./number-by-reader.ts";
import { asksOnly, leadOf, learntReading, readingSigns, type LearntReading, type ReadSaying } from "./reading.ts";
import { holdsHalf } from "./sayings.ts";
import { isWarning } from "./warned-of.ts";

/*
 * What no response fits, and sayings that people marked are worded like: "an empty pop bottle will do you" for the
 * sharps bin. The second reader alone must be surer than both together.
 */

/** In the order of the weights of `right` and `wrong` in curves.json. */
export const ALONE_SIGNS = ["about", "turned", "lead", "best fit that is open", "best fit that is closed", "lesser of about and turned", "lesser of about and not turned"] as const;

/** From here on it is taken for said wrongly, and for said, whichever is likelier; no cut of the former is above that of the latter. Where hardly anything else is said nothing around it speaks for it, and it must be surer. */
export const WRONG_ALONE = { company: 0.6, lonely: 0.7 } as const;
export const SAID_ALONE = { company: 0.6, lonely: 0.8 } as const;

export interface FoundByReader {
  element: CompiledElement;
  verdict: "right" | "wrong";
  saying: ReadSaying;
  likelihood: number;
  /** The number that makes it wrong. */
  quantity?: QuantityMention;
}

/** What the second reader makes of elements that nothing was found of. */
export interface ReadAlone {
  found: FoundByReader[];
  /** Of the others, how likely the likeliest saying says each, rightly or wrongly. */
  almost: { element: CompiledElement; likelihood: number }[];
}

/** From here on a saying is what other elements ask for: "you take four tablets together, that makes ten milligrams" is no word against one strength. */
const TOLD_RIGHTLY = 0.6;

/**
 * @param missing elements that nothing was found of.
 * @param right where other elements are said rightly.
 * @param passages all that were tried.
 */
export function foundByReader(rubric: CompiledRubric, missing: readonly CompiledElement[], right: readonly WordSpan[], passages: readonly Passage[], postings: Postings, stream: Stream): ReadAlone {
  const reading = learntReading(rubric, stream);
  const result: ReadAlone = { found: [], almost: [] };
  if (reading === null) return result;
  const asks = reading.sayings.map((saying) => asksOnly(saying, stream));
  const accounted = (saying: ReadSaying) => shareWithin(saying, right, stream) >= TOLD_RIGHTLY;
  for (const element of missing) {
    const place = reading.placeOf(`${element.item}/${element.element}`);
    if (place === undefined) continue;
    const own = passages.filter((passage) => passage.element === element);
    let best: FoundByReader | null = null;
    let almost = 0;
    for (const [at, saying] of reading.sayings.entries()) {
      if (saying.readings[place]!.about < LEAST_ABOUT || asks[at] !== isAsked(element)) continue;
      const quantity = wrongNumberIn(stream, saying, element);
      const told = quantity === null || asks[at]! ? null : toldOfElement(quantity, element, saying, place, own, rubric, reading);
      if (quantity !== null && told !== null && (best === null || told > best.likelihood) && !toldOfOthers(saying, stream)) best = { element, verdict: "wrong", saying, likelihood: told, quantity };
      const { verdict, likelihood } = said(saying, place, own, reading, element);
      almost = Math.max(almost, likelihood, told ?? 0);
      if (verdict === null || (best !== null && likelihood <= best.likelihood)) continue;
      // The lines take one number for another.
      if (verdict === "right" && quantity !== null) continue;
      if (verdict === "wrong" && (accounted(saying) || toldOfOthers(saying, stream) || isWarning(element.incorrect, saying, postings, stream))) continue;
      best = { element, verdict, saying, likelihood };
    }
    if (best !== null) result.found.push(best);
    else result.almost.push({ element, likelihood: almost });
  }
  return result;
}

/** The share of a saying's words that stand within some spans. */
function shareWithin({ first, end }: ReadSaying, spans: readonly WordSpan[], { tokens }: Stream): number {
  const words = tokens.slice(first, end).map(({ word }) => word);
  return words.filter((word) => spans.some((span) => word >= span.first && word < span.end)).length / words.length;
}

/** Whether an element is said by asking: "have you had one of these before?". Who does not ask says nothing wrong. */
export function isAsked({ kind }: Pick<CompiledElement, "kind">): boolean {
  return kind === "ask" || kind === "invite-questions";
}

/** Log-odds below which nobody would look. */
export const LEAST_ABOUT = -3;

/** @returns what a saying says of an element, null where the curves are not sure enough, and how likely it says it either way. */
function said(saying: ReadSaying, place: number, own: readonly Passage[], reading: LearntReading, element: CompiledElement): { verdict: FoundByReader["verdict"] | null; likelihood: number } {
  const signs = aloneSigns(saying, place, own, reading);
  const { company } = saying;
  const right = likelihoodOf(curves[company].right, signs);
  const wrong = isAsked(element) ? 0 : likelihoodOf(curves[company].wrong, signs);
  if (wrong > right) return { verdict: wrong >= WRONG_ALONE[company] ? "wrong" : null, likelihood: wrong };
  return { verdict: right >= SAID_ALONE[company] ? "right" : null, likelihood: right };
}

/** @param own passages of the element. */
export function aloneSigns(saying: ReadSaying, place: number, own: readonly Passage[], reading: LearntReading): number[] {
  const { about, turned } = readingSigns(saying, place);
  const lead = leadOf(saying, place, reading);
  let open = 0;
  let closed = 0;
  for (const passage of own) {
    if (passage.verdict !== "right" || !holdsHalf(saying, passage)) continue;
    if (passage.closed.length === 0) open = Math.max(open, passage.coverage);
    else closed = Math.max(closed, passage.coverage);
  }
  return [about, turned, lead, Math.min(1, open), Math.min(1, closed), Math.min(about, turned), Math.min(about, -turned)];
}
