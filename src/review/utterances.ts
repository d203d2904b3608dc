import type { ExpectedQuantity } from "../language/quantity.ts";
import { readPhrase, type Slot } from "../matching/phrase.ts";
import type { Quantity, Rubric } from "../rubric/schema.ts";
import { quantityInWords } from "./number-speech.ts";

/** Stands where a phrase gives the speaker's name. Made up, and no word of the trade. */
export const MADE_UP_NAME = "Robin";

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

/** The rubric's number; the scenario's label goes before it. */
export function expectedQuantity(quantity: Quantity | undefined, rubric: Rubric): ExpectedQuantity | null {
  if (quantity === undefined) return null;
  return "label" in quantity ? expectedQuantity(rubric.scenario.label[quantity.label]?.quantity, rubric) : quantity;
}
