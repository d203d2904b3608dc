import type { QuantityMention } from "../../language/quantity-mention.ts";
import { compareQuantity } from "../../language/quantity-compare.ts";
import { besideOf, turnedBy } from "../beside.ts";
import type { CompiledElement } from "../compile.ts";
import { logOddsOf, within } from "../curve.ts";
import type { Passage } from "../passages.ts";
import { wrongNumberIn } from "../quantity-gate.ts";
import type { Gate } from "../types.ts";
import type { ReadByBoth } from "./read-by-both.ts";
import { isAsked, SUREST, type LearntReading, type ReadSaying } from "./reading.ts";
import { holdsHalf } from "./sayings.ts";

/*
 * All that both readers know of a saying and an element: what the lines say, what the responses and the wrong statements
 * fit, and which gates close on them.
 */

/** Gates that the responses close often enough for a sign of their own. */
const GATES = ["polarity", "speech-act", "must", "not-with", "quantity", "contradicted", "direction", "rule", "turned"] as const satisfies readonly Gate[];

/** In the order of the weights of `right` and `wrong` in curves.json. */
export const SIGNS = [
  "about",
  "turned",
  "whatever it is said of, turned",
  "another element of the item, about",
  "another item, about",
  "the next other item, about",
  "an unsafe statement, about",
  "lesser of about and turned",
  "lesser of about and not turned",
  "lead over all other elements",
  "weighty words",
  "tokens",
  "best fit that is open",
  "log-odds of its likelihood",
  "log-odds that what stands beside turns it",
  "best fit that is closed",
  ...GATES.map((gate) => `best fit that is closed by ${gate}`),
  "best fit of what is wrong",
  "log-odds of its likelihood, wrong",
  "it asks",
  "it should ask",
  "it asks where it should, or tells where it should",
  "a number that is not the element's",
  "an element that has that number, about",
  "a response fits with its number",
  "the element has a number",
  "log-odds that another element of the item is said near by",
] as const;

/** Tokens from a saying within which another element of the item is near by. */
const NEAR = 60;

/** @param place of the element in the reading. */
export function signsOf(saying: ReadSaying, element: CompiledElement, place: number, read: ReadByBoth): number[] {
  const { stream, reading } = read;
  const { about, turned, anyhow } = saying.readings[place]!;
  const { sibling, other, next, statement } = othersAbout(saying, element, place, reading);
  const fits = fitsIn(saying, read.passagesOf.get(element) ?? []);
  const shouldAsk = isAsked(element);
  const number = wrongNumberIn(stream, saying, element);
  const flag = (is: boolean) => (is ? 1 : 0);
  const odds = (value: number) => within(value, SUREST);
  return [
    odds(about),
    odds(turned),
    odds(anyhow),
    odds(sibling),
    odds(other),
    odds(next),
    odds(statement),
    odds(Math.min(about, turned)),
    odds(Math.min(about, -turned)),
    odds(about - Math.max(sibling, other)),
    saying.weighty,
    saying.end - saying.first,
    fits.open?.coverage ?? 0,
    logOddsOf(fits.likelihood, SUREST),
    logOddsOf(fits.open === null ? 0 : turnedOf(fits.open, read), SUREST),
    Math.max(0, ...fits.closed.values()),
    ...GATES.map((gate) => fits.closed.get(gate) ?? 0),
    fits.wrong,
    logOddsOf(fits.wrongLikelihood, SUREST),
    flag(saying.asks),
    flag(shouldAsk),
    flag(saying.asks === shouldAsk),
    flag(number !== null),
    number === null ? -SUREST : odds(aboutItsElement(number, element, saying, read)),
    flag(fits.withNumber),
    flag(element.quantity !== null),
    logOddsOf(saidNearBy(saying, element, read), SUREST),
  ];
}

/** How much the saying is about another element that waits for this very number. */
function aboutItsElement(number: QuantityMention, than: CompiledElement, { readings }: ReadSaying, { rubric, reading }: ReadByBoth): number {
  let most = -SUREST;
  for (const other of rubric.elements) {
    if (other === than || other.quantity === null || compareQuantity(number, other.quantity) !== "right") continue;
    const place = reading.placeOf(`${other.item}/${other.element}`);
    if (place !== undefined) most = Math.max(most, readings[place]!.about);
  }
  return most;
}

/** What else the saying is about: the most of another element of the item, the two most of other items, the most of an unsafe statement. */
function othersAbout({ readings }: ReadSaying, { item }: CompiledElement, place: number, { itemAt, isStatement }: LearntReading) {
  let [sibling, other, next, statement] = [-SUREST, -SUREST, -SUREST, -SUREST];
  readings.forEach(({ about }, at) => {
    if (at === place) return;
    if (isStatement[at]!) statement = Math.max(statement, about);
    else if (itemAt[at] === item) sibling = Math.max(sibling, about);
    else if (about > other) [other, next] = [about, other];
    else next = Math.max(next, about);
  });
  return { sibling, other, next, statement };
}

/** What fits the element in a saying. */
interface Fits {
  /** The best fit on which no gate closes. */
  open: Passage | null;
  likelihood: number;
  /** The best fit that each gate closes. */
  closed: Map<Gate, number>;
  /** The best fit of a wrong statement or number. */
  wrong: number;
  wrongLikelihood: number;
  withNumber: boolean;
}

/** @param passages of the element. */
function fitsIn(saying: ReadSaying, passages: readonly Passage[]): Fits {
  const fits: Fits = { open: null, likelihood: 0, closed: new Map(), wrong: 0, wrongLikelihood: 0, withNumber: false };
  for (const passage of passages) {
    if (!holdsHalf(saying, passage)) continue;
    const { verdict, closed, coverage, likelihood = 0 } = passage;
    if (verdict === "wrong" && closed.length === 0) {
      fits.wrong = Math.max(fits.wrong, coverage);
      fits.wrongLikelihood = Math.max(fits.wrongLikelihood, likelihood);
    }
    if (verdict !== "right") continue;
    fits.withNumber ||= passage.quantity !== undefined;
    for (const gate of closed) fits.closed.set(gate, Math.max(fits.closed.get(gate) ?? 0, coverage));
    if (closed.length > 0) continue;
    if (fits.open === null || coverage > fits.open.coverage) fits.open = passage;
    fits.likelihood = Math.max(fits.likelihood, likelihood);
  }
  return fits;
}

function turnedOf(passage: Passage, { stream, rubric, turned }: ReadByBoth): number {
  let known = turned.get(passage);
  if (known === undefined) turned.set(passage, (known = turnedBy(besideOf(passage, stream, rubric.elements))));
  return known;
}

/** How likely the likeliest passage near by says another element of the item. */
function saidNearBy({ first }: ReadSaying, element: CompiledElement, { saidOf }: ReadByBoth): number {
  return (saidOf.get(element.item) ?? []).reduce((most, other) => (other.element !== element && Math.abs(other.first - first) < NEAR ? Math.max(most, other.likelihood ?? 0) : most), 0);
}
