import type { QuantityMention } from "../../language/quantity-mention.ts";
import { compareQuantity } from "../../language/quantity-compare.ts";
import type { CompiledElement, CompiledRubric } from "../compile.ts";
import { likelihoodOf, within } from "../curve.ts";
import type { Passage } from "../passages.ts";
import { mayBeMisheard, wrongNumberIn } from "../quantity-gate.ts";
import type { ExpectedQuantity } from "../response.ts";
import type { Stream } from "../stream.ts";
import curves from "./curves.json" with { type: "json" };
import { asksOnly, leadOf, readingSigns, type Company, type LearntReading, type ReadSaying } from "./reading.ts";
import { holdsHalf } from "./sayings.ts";

/*
 * Wrong numbers in words that no response has: "then up it goes for a minute". The lines, to which all numbers are one,
 * know what is spoken of; the grammar of numbers knows that it is not the one expected.
 */

/** In the order of the weights of `number` in curves.json. */
export const NUMBER_SIGNS = ["about", "turned", "lead", "best fit of what would say it", "an element that has the number, about"] as const;

/** From here on it is taken for the element's number, and wrong. In a station numbers of many things are told, and it must be surer. */
export const NUMBER_LIKELY: Readonly<Record<Company, number>> = { company: 0.7, lonely: 0.6 };

/** A number said of an element. */
export interface SaidNumber {
  mention: QuantityMention;
  signs: number[];
}

/** Log-odds of a reading beyond these are no surer. */
const SUREST = 5;

/** The number of a saying that is not the element's; null where it has none, the right one, or only some of something else altogether. */
export function wrongNumberSaid({ quantity, elsewhere }: CompiledElement, saying: ReadSaying, stream: Stream): QuantityMention | null {
  if (quantity === null) return null;
  return wrongNumberIn(stream, saying, quantity, elsewhere.flatMap((other): ExpectedQuantity[] => (other.quantity === null ? [] : [other.quantity])));
}

/**
 * @param own passages of the element.
 * @returns null where the saying tells no wrong number.
 */
export function numberSigns(element: CompiledElement, saying: ReadSaying, place: number, own: readonly Passage[], rubric: CompiledRubric, reading: LearntReading, stream: Stream): SaidNumber | null {
  const mention = wrongNumberSaid(element, saying, stream);
  if (mention === null) return null;
  const { about, turned } = readingSigns(saying, place);
  const fit = own.reduce((best, passage) => (passage.verdict === "right" && holdsHalf(saying, passage) ? Math.max(best, passage.coverage) : best), 0);
  return { mention, signs: [about, turned, leadOf(saying, place, reading), Math.min(1, fit), aboutItsElement(mention, element, saying, rubric, reading)] };
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

/** The wrong number that a saying likely tells of an element, and how likely; null where it tells none, or one that sounds like the right one. */
export function wrongNumberFor(element: CompiledElement, saying: ReadSaying, own: readonly Passage[], rubric: CompiledRubric, reading: LearntReading, stream: Stream): { mention: QuantityMention; likelihood: number } | null {
  const place = element.quantity === null ? undefined : reading.placeOf(`${element.item}/${element.element}`);
  if (place === undefined || asksOnly(saying, stream)) return null;
  const number = numberSigns(element, saying, place, own, rubric, reading, stream);
  if (number === null || mayBeMisheard(number.mention, element.quantity!)) return null;
  const likelihood = likelihoodOf(curves[saying.company].number, number.signs);
  return likelihood >= NUMBER_LIKELY[saying.company] ? { mention: number.mention, likelihood } : null;
}
