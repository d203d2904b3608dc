import { besideOf, TURNED, turnedBy } from "../beside.ts";
import type { CompiledRubric } from "../compile.ts";
import { likelihoodOf, logOddsOf } from "../curve.ts";
import type { Passage } from "../passages.ts";
import { wrongNumberIn } from "../quantity-gate.ts";
import { inOneSentence, type Stream } from "../stream.ts";
import { tokensOf } from "../windows.ts";
import curves from "./curves.json" with { type: "json" };
import { toldOfElement } from "./number-by-reader.ts";
import { asksOnly, leadOf, learntReading, readingSigns, type Company, type ReadSaying } from "./reading.ts";

/*
 * What was learnt from marked sayings is a second reader beside the responses of the rubric: neither decides alone.
 * Logistic curves over what both say, fitted by `npm run fit:learnt` on sayings of hands that the lines were learnt
 * without.
 */

/** Log-odds beyond these are no surer. */
const SUREST = Math.log(999);

/** In the order of the weights of `turned` and `held` in curves.json. */
export const TURNED_SIGNS = ["log-odds of its likelihood", "log-odds that what stands beside turns it", "about", "turned", "lead"] as const;
const TURNED_AT = TURNED_SIGNS.indexOf("turned");
export const STANDING_SIGNS = ["log-odds of its likelihood", "about", "turned", "lead"] as const;

/** From here on a passage that would say its element is taken for one that does not. */
export const TURNED_LIKELY: Readonly<Record<Company, number>> = { company: 0.5, lonely: 0.6 };
/** From here on a passage stands against the speaker. */
export const STANDS_AGAINST: Readonly<Record<Company, number>> = { company: 0.5, lonely: 0.5 };

/** What a passage's curve is asked with. */
export interface Weighed {
  company: Company;
  signs: number[];
}

/**
 * A passage that likely says its element; closed where what stands beside it turns it, by that alone or with the second reader, or tells another number.
 * @param likely all that likely say theirs.
 */
export function weighedBeside(passage: Passage, likely: readonly Passage[], rubric: CompiledRubric, stream: Stream): Passage {
  if (tellsAnotherNumber(passage, rubric, stream)) return { ...passage, closed: [...passage.closed, "quantity"] };
  const beside = turnedBy(besideOf(passage, stream, rubric.elements));
  const signs = turnedSigns(passage, beside, rubric, stream);
  const closed = (is: boolean) => (is ? [...passage.closed, "turned" as const] : passage.closed);
  if (signs === null) return { ...passage, closed: closed(beside >= TURNED) };
  const turned = likelihoodOf(curves[signs.company].turned, signs.signs);
  const dropped = turned >= TURNED_LIKELY[signs.company] && !(signs.signs[TURNED_AT]! < 0 && isListed(passage, likely, stream));
  return { ...passage, turned, closed: closed(beside >= TURNED || dropped) };
}

/** So many things of one item in a sentence are a list. */
const LISTED = 3;

/** "A sore throat or a fever, mouth ulcers, or unusual bruising": what is listed with others of its item is overshadowed by them, and need be no less said for that. */
function isListed({ element, first }: Passage, likely: readonly Passage[], stream: Stream): boolean {
  const listed = likely.filter((other) => other.element.item === element.item && inOneSentence(stream, other.first, first));
  return new Set(listed.map((other) => other.element)).size >= LISTED;
}

/** "Lean forward and pinch the soft bit for about two minutes": a response that names no number fits, and the one said is not the element's. */
function tellsAnotherNumber(passage: Passage, rubric: CompiledRubric, stream: Stream): boolean {
  const { element } = passage;
  if (element.quantity === null || passage.quantity !== undefined) return false;
  const reading = learntReading(rubric, stream);
  const place = reading?.placeOf(`${element.item}/${element.element}`);
  const saying = reading?.around(passage) ?? null;
  if (reading === null || place === undefined || saying === null || asksOnly(saying, stream)) return false;
  const mention = wrongNumberIn(stream, saying, element);
  return mention !== null && toldOfElement(mention, element, saying, place, [passage], rubric, reading) !== null;
}

/**
 * How likely a passage that fits does not say its element hangs on these; null where nothing is known of it.
 * @param beside how likely what stands beside the passage turns it.
 */
export function turnedSigns(passage: Passage, beside: number, rubric: CompiledRubric, stream: Stream): Weighed | null {
  return weighed(passage, rubric, stream, [logOddsOf(passage.likelihood ?? 0, SUREST), logOddsOf(beside, SUREST)]);
}

/** The signs of a passage that may be held against the speaker; null where nothing is known of its element. */
export function heldSigns(passage: Passage, rubric: CompiledRubric, stream: Stream): Weighed | null {
  return weighed(passage, rubric, stream, [logOddsOf(passage.likelihood ?? 0, SUREST)]);
}

/** Whether the second reader lets a passage be held against the speaker. */
export function standsForReader(passage: Passage, rubric: CompiledRubric, stream: Stream): boolean {
  const held = heldSigns(passage, rubric, stream);
  return held === null || likelihoodOf(curves[held.company].held, held.signs) >= STANDS_AGAINST[held.company];
}

function weighed(passage: Passage, rubric: CompiledRubric, stream: Stream, ofResponses: readonly number[]): Weighed | null {
  const reading = learntReading(rubric, stream);
  const place = reading?.placeOf(`${passage.element.item}/${passage.element.element}`);
  if (reading === null || place === undefined) return null;
  const saying = reading.around(passage);
  if (saying === null || isAllOf(passage.coverage, tokensOf(passage.window).size, saying)) return null;
  const { about, turned } = readingSigns(saying, place);
  return { company: saying.company, signs: [...ofResponses, about, turned, leadOf(saying, place, reading)] };
}

/** A response said whole, with so few words beside it, is what the author of the rubric says it is. */
const BESIDE = 2;
const WHOLE = 0.95;

/** @param tokens of the response that were said; of an unsafe statement, those of the stretch that it was found in. */
export function isAllOf(coverage: number, tokens: number, saying: ReadSaying): boolean {
  return coverage >= WHOLE && saying.end - saying.first <= tokens + BESIDE;
}
