import type { ExpectedQuantity } from "../language/quantity.ts";
import { readPhrase, type Slot } from "../matching/phrase.ts";
import { itemsOf } from "../rubric/items.ts";
import type { Element, Item, Rubric } from "../rubric/schema.ts";
import { expectedQuantity } from "./expected-quantity.ts";
import { quantityInWords } from "./number-speech.ts";

/** Stands where a phrase gives the speaker's name. Made up, and no word of the trade. */
export const MADE_UP_NAME = "Leni";

/**
 * What somebody says who uses this phrase: every variant of word groups (`(a b|c)`), and in each as many sentences as its
 * longest list of alternatives (`a|b|c`) has words, so that every alternative is said at least once. All combinations
 * would say the same words again and again.
 */
export function utterancesOf(phrase: string, quantity: ExpectedQuantity | null): string[] {
  const number = quantity === null ? "" : quantityInWords(quantity);
  const said = readPhrase(phrase).flatMap((slots) => {
    const most = Math.max(1, ...slots.map((slot) => (typeof slot === "string" ? 1 : slot.words.length)));
    return Array.from({ length: most }, (_, turn) => slots.map((slot) => wordOf(slot, turn, number)).join(" ").trim());
  });
  return [...new Set(said)];
}

function wordOf(slot: Slot, turn: number, number: string): string {
  if (slot === "quantity") return number;
  if (slot === "name") return MADE_UP_NAME;
  return slot.words[turn % slot.words.length]!;
}

/** An element and all that may be said for it. */
export interface SaidElement {
  item: Item;
  element: Element;
  /** A list of sentences for each of its responses. */
  said: string[][];
}

/** Every element of a rubric, in order. */
export function saidElements(rubric: Rubric): SaidElement[] {
  return itemsOf(rubric).flatMap((item) =>
    item.elements.map((element) => {
      const quantity = expectedQuantity(element.quantity, rubric);
      return { item, element, said: element.say.map((response) => utterancesOf(response, quantity)) };
    }),
  );
}
