import { conceptsOf, QUALITY, qualityOf } from "../language/lexicon.ts";
import { tokenise } from "../language/token.ts";
import type { Phrase } from "../rubric/schema.ts";
import { readPhrase } from "./phrase.ts";

/** A notion that must (or must not) be there: any one of its runs of stems. */
export interface WordGroup {
  text: string;
  /** Each a run of words; each word any of its keys. */
  runs: string[][][];
}

/** @param phrases entries of `must` or `not_with`, one notion each. */
export function wordGroups(phrases: readonly Phrase[]): WordGroup[] {
  return phrases.map((text) => ({
    text,
    runs: readPhrase(text).map((slots) =>
      slots.flatMap((slot) => (slot === "quantity" ? [] : slot.words.length === 1 ? tokenise(slot.words).map((token) => keysOf(token.stem)) : [slot.words.flatMap((word) => keysOf(tokenise([word])[0]?.stem ?? word))])),
    ),
  }));
}

/** A stem and the sets of sure synonyms it is in. */
function keysOf(stemmed: string): string[] {
  return [stemmed, ...conceptsOf(stemmed).filter((set) => qualityOf(set) >= QUALITY.same)];
}
