import { readPhrase, type Slot } from "./phrase.ts";

/**
 * A phrase of a rubric as one plain sentence for people: of its alternatives those that were spoken, else the first.
 * @param spoken the words said, in lower case.
 */
export function plainWording(phrase: string, spoken: ReadonlySet<string>): string {
  let best = { words: phrase, hits: -1 };
  for (const slots of readPhrase(phrase)) {
    const words = slots.map((slot) => wordOf(slot, spoken));
    const hits = words.filter((word) => spoken.has(word)).length;
    if (hits > best.hits) best = { words: words.join(" "), hits };
  }
  return best.words;
}

function wordOf(slot: Slot, spoken: ReadonlySet<string>): string {
  if (slot === "quantity") return "so many";
  if (slot === "name") return "a name";
  return slot.words.find((word) => spoken.has(word)) ?? slot.words[0]!;
}
