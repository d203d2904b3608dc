import type { Passage } from "../passages.ts";
import { wrongNumberIn } from "../quantity-gate.ts";
import { inOneSentence, type Stream } from "../stream.ts";
import type { Judgement } from "../types.ts";
import { tokensOf } from "../windows.ts";
import { judgementOf } from "./judgement.ts";
import { readByBoth, type ByResponses, type ReadByBoth } from "./read-by-both.ts";
import { isAsked, type Company, type ReadSaying } from "./reading.ts";

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
  const saying = by.passages.filter(says);
  return by.passages.flatMap((passage): Passage[] => {
    if (says(passage)) {
      const gate = gateOn(passage, saying, read);
      return [gate === null ? passage : { ...passage, closed: [...passage.closed, gate] }];
    }
    return passage.verdict !== "wrong" || standsAgainst(passage, read) ? [passage] : [];
  });
}

/** The gate that both readers together close on a passage that would say its element, if they do. */
function gateOn(passage: Passage, saying: readonly Passage[], read: ReadByBoth): "quantity" | "turned" | null {
  const judged = judgedAround(passage, read);
  if (judged === null) return null;
  const { right, wrong, closest, turned } = judged;
  if (wrong >= ANOTHER_NUMBER && tellsAnotherNumber(passage, closest, read.stream)) return "quantity";
  const likely = right >= STAYS_SAID[closest.company] && right >= wrong;
  return likely || (turned < 0 && isListed(passage, saying, read.stream)) ? null : "turned";
}

function standsAgainst(passage: Passage, read: ReadByBoth): boolean {
  const judged = judgedAround(passage, read);
  return judged === null || judged.wrong >= STANDS_AGAINST[judged.closest.company];
}

/** What the sayings around a passage most likely do to its element; null where nothing is known of it, and where little more is said than the response. */
function judgedAround(passage: Passage, read: ReadByBoth): (Judgement & { closest: ReadSaying; turned: number }) | null {
  const { element, window, coverage } = passage;
  const place = read.reading.placeOf(`${element.item}/${element.element}`);
  if (place === undefined) return null;
  const around = read.reading.around(passage);
  const [closest] = around;
  if (closest === undefined || isAllOf(coverage, tokensOf(window).size, closest)) return null;
  const judgements = around.map((one) => judgementOf(one, element, place, read));
  return { right: Math.max(...judgements.map(({ right }) => right)), wrong: Math.max(...judgements.map(({ wrong }) => wrong)), closest, turned: closest.readings[place]!.turned };
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
