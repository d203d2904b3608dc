import type { Passage } from "../matching/passages.ts";
import type { UtteranceReading } from "../matching/utterance.ts";
import type { Element, Item } from "../rubric/schema.ts";

/** Why an utterance did not earn an element, and what to do about it. */
export interface Reason {
  why: string;
  mend: string;
}

type Explain = (item: Item, element: Element) => Reason;

const quotedList = (entries: readonly string[]) => entries.map((entry) => `'${entry}'`).join(", ");

const lacksMustWord = (must: readonly string[]): Reason => ({ why: `it lacks a must-word (${quotedList(must)})`, mend: "Say the must-word in it, or add the word it uses to 'must'." });
const hasNotWith = (notWith: readonly string[]): Reason => ({ why: `it has words of 'not_with' (${quotedList(notWith)})`, mend: "Take the words out of it, or out of 'not_with'." });

const REWORD = "Put it in other words, or leave it out.";

/** By gate. A gate that is not here is told by its name. */
const BY_GATE: Readonly<Partial<Record<string, Explain>>> = {
  must: (_item, { must = [] }) => lacksMustWord(must),
  "played-down": () => ({ why: "it plays a red flag down", mend: "Take the words out of it that make the sign harmless." }),
  aside: () => ({ why: "it is heard as a story of the speaker's own, or as asking to wait", mend: "Speak to the patient in it ('you')." }),
  faulted: () => ({ why: "it is heard as calling the thing broken or harmful", mend: REWORD }),
  contradicted: () => ({ why: "a wrong statement of the element says more with the same words", mend: "Look at 'incorrect': the two must not say the same." }),
  direction: () => ({ why: "a word in it tells the other way", mend: "Say which way in the response's own words." }),
  others: () => ({ why: "it is told of people of another age than the patient's", mend: "Tell it of the patient, or change the scenario's conditions." }),
  rule: () => ({ why: "what it tells is not heard as told for its condition", mend: "Name one condition, and tell behind it, or before it, what to do." }),
  "not-with": (_item, { not_with = [] }) => hasNotWith(not_with),
  polarity: () => ({ why: "a denial or an 'if' in it is taken to turn its sense round", mend: "Write it as plainly as it is said, without a second denial." }),
  quantity: () => ({ why: "its number is not read where it stands", mend: "Let {quantity} stand beside the words that it belongs to." }),
  "speech-act": ({ kind }) => ({ why: kind === "tell" ? "it is heard as a question" : `it is not heard as what the kind '${kind}' asks for`, mend: kind === "tell" ? "Write it as a statement." : "Write it as it would be asked, or change the item's kind." }),
  "sound-alike": () => ({ why: "it hangs on a word that may be mis-heard", mend: REWORD }),
};

/**
 * Of what was tried for the element, the nearest miss.
 * @param lacksMust whether a must-word of the element is nowhere in the utterance.
 */
export function whyNot({ tried, kept }: UtteranceReading, item: Item, element: Element, lacksMust: boolean): Reason {
  if (lacksMust) return BY_GATE["must"]!(item, element);
  const own = tried.filter((passage) => passage.element.item === item.id && passage.element.element === element.id).sort((a, b) => rank(b) - rank(a));
  const nearest = own[0];
  if (nearest === undefined) return { why: "its words are too common or too few to be found", mend: "Add a word that tells this element from others." };
  if (nearest.verdict === "wrong") return { why: `it is taken for a wrong statement (${nearest.reason ?? "denied"})`, mend: "Look at 'incorrect' and at denials in it: the two must not say the same." };
  const [gate] = nearest.closed;
  if (gate !== undefined) return BY_GATE[gate]?.(item, element) ?? { why: `the gate '${gate}' closes on it`, mend: REWORD };
  const taker = kept.find((passage) => passage.element.item !== item.id && passage.first < nearest.end && nearest.first < passage.end);
  if (taker !== undefined) return { why: `'${taker.element.item}' fits its words better`, mend: "Tell the two items apart by their words." };
  return { why: "its words do not fit well enough once they are weighed", mend: "Add a word that tells this element from others." };
}

/** Why a phrase of an unsafe statement is not found where somebody says it. @param shut what of the statement's own lists shuts it out. */
export function whyUnfound({ must, notWith }: { must: readonly string[]; notWith: readonly string[] }): Reason {
  if (must.length > 0) return lacksMustWord(must);
  if (notWith.length > 0) return hasNotWith(notWith);
  return { why: "its words are too common or too few, or are taken for a denial, a supposition or what others do", mend: "Put it in other words that tell what is unsafe, or leave it out." };
}

/** Why a wrong statement of an element is not told where somebody makes it. @param notWith entries of the element's `not_with` that shut it out. */
export function whyUntold({ kept }: UtteranceReading, item: Item, element: Element, notWith: readonly string[]): Reason {
  const earns = kept.some((passage) => passage.verdict === "right" && passage.element.item === item.id && passage.element.element === element.id);
  if (notWith.length > 0) return hasNotWith(notWith);
  if (earns) return { why: "it earns the element: a response has the same words", mend: "Say in it what is wrong with words that no response has, or give the element a not_with." };
  return { why: "its words are too common or too few, or are taken for a denial or a supposition", mend: "Put it in other words that tell what is wrong, or leave it out." };
}

const rank = (passage: Passage) => passage.coverage - 0.2 * passage.closed.length;
