import type { Passage } from "../passages.ts";
import { wrongNumberIn } from "../quantity-gate.ts";
import { inOneSentence, type Stream } from "../stream.ts";
import { tokensOf } from "../windows.ts";
import { isAsked, judgementOf, readByBoth, type ByResponses } from "./judgement.ts";
import type { Company, ReadSaying } from "./reading.ts";

/*
 * What was learnt from marked sayings is a second reader beside the responses of the rubric: neither decides alone. What
 * the responses find stands only where both together say so.
 */

/** From here on a passage that would say its element stands. */
export const STAYS_SAID: Readonly<Record<Company, number>> = { company: 0.25, lonely: 0.6 };
/** From here on a passage stands against the speaker. */
export const STANDS_AGAINST: Readonly<Record<Company, number>> = { company: 0.4, lonely: 0.5 };

/**
 * The passages that the responses leave, read once more: what most likely does not say its element is closed, what most
 * likely does not state it wrongly goes.
 * @param says whether a passage would say its element rightly.
 */
export function readAgain(by: ByResponses, says: (passage: Passage) => boolean): Passage[] {
  const read = readByBoth(by);
  if (read === null) return [...by.passages];
  const { reading } = read;
  const saying = read.passages.filter(says);
  return read.passages.flatMap((passage): Passage[] => {
    const said = says(passage);
    if (!said && passage.verdict !== "wrong") return [passage];
    const place = reading.placeOf(`${passage.element.item}/${passage.element.element}`);
    const [closest, ...others] = place === undefined ? [] : reading.around(passage);
    if (place === undefined || closest === undefined || isAllOf(passage.coverage, tokensOf(passage.window).size, closest)) return [passage];
    const judgements = [closest, ...others].map((one) => judgementOf(one, passage.element, place, read));
    const wrong = Math.max(...judgements.map((judgement) => judgement.wrong));
    if (!said) return wrong >= STANDS_AGAINST[closest.company] ? [passage] : [];
    const right = Math.max(...judgements.map((judgement) => judgement.right));
    const likely = (right >= STAYS_SAID[closest.company] && right >= wrong) || (closest.readings[place]!.turned < 0 && isListed(passage, saying, read.stream));
    const another = wrong >= ANOTHER_NUMBER && tellsAnotherNumber(passage, closest, read.stream);
    return [likely && !another ? passage : { ...passage, closed: [...passage.closed, another ? "quantity" : "turned"] }];
  });
}

/** From here on, being wrong, the number of a saying is taken for the element's. Numbers are never fuzzy. */
const ANOTHER_NUMBER = 0.3;

/** "Lean forward and pinch the soft bit for about two minutes": a response that names no number fits, and the one said is not the element's. */
function tellsAnotherNumber({ element, quantity }: Passage, saying: ReadSaying, stream: Stream): boolean {
  return quantity === undefined && !isAsked(element) && wrongNumberIn(stream, saying, element) !== null;
}

/** So many things of one item in a sentence are a list. */
const LISTED = 3;

/** "A sore throat or a fever, mouth ulcers, or unusual bruising": what is listed with others of its item is overshadowed by them, and need be no less said for that. */
function isListed({ element, first }: Passage, likely: readonly Passage[], stream: Stream): boolean {
  const listed = likely.filter((other) => other.element.item === element.item && inOneSentence(stream, other.first, first));
  return new Set(listed.map((other) => other.element)).size >= LISTED;
}

/** A response said whole, with so few words beside it, is what the author of the rubric says it is. */
const BESIDE = 2;
const WHOLE = 0.95;

/** @param tokens of the response that were said; of an unsafe statement, those of the stretch that it was found in. */
export function isAllOf(coverage: number, tokens: number, saying: ReadSaying): boolean {
  return coverage >= WHOLE && saying.end - saying.first <= tokens + BESIDE;
}

/** What a curve of unsafe statements is asked with. */
export interface Weighed {
  company: Company;
  signs: number[];
}
