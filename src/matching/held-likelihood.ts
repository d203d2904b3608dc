import { compareQuantity, dimensionOf } from "../language/quantity-compare.ts";
import type { CompiledElement } from "./compile.ts";
import { aroundPassage, Fitting, isAlone, itemsOf, type Items } from "./company.ts";
import { askedShare } from "./act-gate.ts";
import weights from "./likelihood.json" with { type: "json" };
import { countsBare, ownShareOf, standsAlone } from "./held-passages.ts";
import { likelihoodOf, type Curve } from "./curve.ts";
import type { Passage } from "./passages.ts";
import type { Stream } from "./stream.ts";
import { weightyWords } from "./windows.ts";

/*
 * How likely it is that a passage states its element wrongly. Words of a wrong statement stand by chance in much that is
 * right, and a number is the wrong one only for what it is the number of: what is spoken of around tells. Logistic
 * curves over such signs, one for wrong statements and one for wrong numbers, fitted behind the other curves of
 * likelihood.json (tests/bench/fit-held.ts).
 */

/** In the order of the weights in likelihood.json, behind the intercept. */
export const HELD_SIGNS = [
  "coverage",
  "share of the response's words, its number aside",
  "weighty words of the stretch (log)",
  "weighty words that the response lacks (log)",
  "terms found (log)",
  "least sureness of a word",
  "its item is spoken of near by",
  "an item next to it is spoken of near by",
  "another item is spoken of right beside it",
  "another element has these words",
  "said rightly in these words",
  "said rightly elsewhere",
  "share that asks",
  "its item has no other element",
  "a number in the element's own unit",
  "elements that the number is right for (log)",
  "a vague number",
  "elements with such a number (log)",
] as const;

/** From here on it is held against the speaker: on talk about rubrics left out of the fit almost three of four such are true (tests/bench/results/held.md). */
export const HELD_LIKELY = 0.6;

export interface Said {
  stream: Stream;
  items: Items;
  elements: readonly CompiledElement[];
  /** Passages that may say their elements, and how likely they do. */
  fitting: Fitting;
  likelihood: (passage: Passage) => number;
}

/** @param weighed passages that would say their elements, with their likelihood where they have one. */
export function saidIn(weighed: readonly Passage[], stream: Stream, elements: readonly CompiledElement[]): Said {
  return { stream, items: itemsOf(elements), elements, fitting: new Fitting(weighed.filter(({ likelihood }) => likelihood !== undefined)), likelihood: ({ likelihood }) => likelihood! };
}

export function signsOfHeld(passage: Passage, { stream, items, elements, fitting, likelihood }: Said): number[] {
  const { window, element, quantity } = passage;
  const { weighty, lacking } = weightyWords(window, stream);
  const { ownItem, nextItem, farItem, sharing, own, elsewhere } = aroundPassage(passage, fitting, items, likelihood);
  const others = quantity === undefined ? [] : elements.filter((other) => other !== element && other.quantity !== null);
  const expected = element.quantity;
  return [
    passage.coverage,
    ownShareOf(window),
    Math.log1p(weighty),
    Math.log1p(lacking),
    Math.log1p(window.aligned.length),
    Math.min(...window.aligned.map(({ quality }) => quality)),
    ownItem,
    nextItem,
    farItem,
    sharing,
    own,
    elsewhere,
    askedShare(stream, window).asked,
    items.get(element.item)!.elements === 1 ? 1 : 0,
    quantity !== undefined && quantity.unit === expected?.unit ? 1 : 0,
    Math.log1p(others.filter((other) => compareQuantity(quantity!, other.quantity!) === "right").length),
    quantity?.vague === true ? 1 : 0,
    expected === null ? 0 : Math.log1p(others.filter((other) => dimensionOf(other.quantity!.unit) === dimensionOf(expected.unit)).length),
  ];
}

/** The passages with how likely each is what it would be held for. */
export function withHeldLikelihood(passages: readonly Passage[], said: Said): Passage[] {
  return passages.map((passage) => ({ ...passage, likelihood: likelihoodOf(curveFor(passage), signsOfHeld(passage, said)), ...(isOfAnother(passage, said) && { ofAnother: true }) }));
}

/** Whether a bare number is the right one of another element in the same unit: "dial it to two" may be the test. */
function isOfAnother(passage: Passage, { elements }: Said): boolean {
  if (!countsBare(passage)) return false;
  const { element, quantity } = passage;
  return elements.some((other) => other !== element && other.quantity !== null && dimensionOf(other.quantity.unit) === dimensionOf(element.quantity!.unit) && compareQuantity(quantity!, other.quantity) === "right");
}

/** A number said beside so nearly all that it is the number of is held against the speaker, even where the right one was said before. */
const WHOLE = 0.9;
/** With hardly anything around it there is nothing that could speak for it; then a little less will do. */
const HELD_ALONE = 0.4;

/** Whether a passage with its likelihood is held against the speaker. */
export function isHeld(passage: Passage, stream: Stream): boolean {
  if (passage.ofAnother === true) return false;
  if (passage.likelihood! >= (isAlone(passage, stream) ? HELD_ALONE : HELD_LIKELY)) return true;
  return passage.quantity !== undefined && (passage.coverage >= WHOLE || countsBare(passage)) && standsAlone(passage);
}

const curveFor = ({ quantity }: Passage): Curve => (quantity === undefined ? weights.statement : weights.number);
