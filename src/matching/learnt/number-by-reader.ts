import type { QuantityMention } from "../../language/quantity-mention.ts";
import { compareQuantity } from "../../language/quantity-compare.ts";
import type { CompiledElement, CompiledRubric } from "../compile.ts";
import { likelihoodOf, within } from "../curve.ts";
import type { Passage } from "../passages.ts";
import { mayBeMisheard } from "../quantity-gate.ts";
import curves from "./curves.json" with { type: "json" };
import { leadOf, readingSigns, SUREST, type Company, type LearntReading, type ReadSaying } from "./reading.ts";
import { holdsHalf } from "./sayings.ts";

/*
 * Wrong numbers in words that no response has: "then up it goes for a minute". The lines, to which all numbers are one,
 * know what is spoken of; the grammar of numbers knows that it is not the one expected.
 */

/** In the order of the weights of `number` in curves.json. */
export const NUMBER_SIGNS = ["about", "turned", "lead", "best fit of what would say it", "an element that has the number, about"] as const;

/** From here on it is taken for the element's number, and wrong. In a station numbers of many things are told, and it must be surer. */
export const NUMBER_LIKELY: Readonly<Record<Company, number>> = { company: 0.7, lonely: 0.6 };

/**
 * @param mention the number of the saying that is not the element's.
 * @param own passages of the element.
 */
export function numberSigns(mention: QuantityMention, element: CompiledElement, saying: ReadSaying, place: number, own: readonly Passage[], rubric: CompiledRubric, reading: LearntReading): number[] {
  const { about, turned } = readingSigns(saying, place);
  const fit = own.reduce((best, passage) => (passage.verdict === "right" && holdsHalf(saying, passage) ? Math.max(best, passage.coverage) : best), 0);
  return [about, turned, leadOf(saying, place, reading), Math.min(1, fit), aboutItsElement(mention, element, saying, rubric, reading)];
}

/** How much the saying is about another element that waits for this very number. */
function aboutItsElement(mention: QuantityMention, than: CompiledElement, { readings }: ReadSaying, { elements }: CompiledRubric, { placeOf }: LearntReading): number {
  let most = -SUREST;
  for (const other of elements) {
    if (other === than || other.quantity === null || compareQuantity(mention, other.quantity) !== "right") continue;
    const place = placeOf(`${other.item}/${other.element}`);
    if (place !== undefined) most = Math.max(most, readings[place]!.about);
  }
  return within(most, SUREST);
}

/** How likely the saying tells the number of the element, if surely enough; null where not, and where it sounds like the right one. */
export function toldOfElement(mention: QuantityMention, element: CompiledElement, saying: ReadSaying, place: number, own: readonly Passage[], rubric: CompiledRubric, reading: LearntReading): number | null {
  if (element.quantity === null || mayBeMisheard(mention, element.quantity)) return null;
  const likelihood = likelihoodOf(curves[saying.company].number, numberSigns(mention, element, saying, place, own, rubric, reading));
  return likelihood >= NUMBER_LIKELY[saying.company] ? likelihood : null;
}
