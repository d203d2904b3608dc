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

/**
 * @param phrases entries of `must` or `not_with`, one notion each.
 * @param synonyms whether sure synonyms stand for the words too: in `must`, to be generous; not in `not_with`, where they
 *   would shut right answers out ("emergency contact" is not "call an ambulance").
 */
export function wordGroups(phrases: readonly Phrase[], synonyms: boolean): WordGroup[] {
  const keysOf = (stemmed: string) => (synonyms ? [stemmed, ...conceptsOf(stemmed).filter((set) => qualityOf(set) > QUALITY.near)] : [stemmed]);
  return phrases.map((text) => ({
    text,
    runs: readPhrase(text).map((slots) =>
      slots.flatMap((slot) => (typeof slot === "string" ? [] : slot.words.length === 1 ? tokenise(slot.words).map((token) => keysOf(token.stem)) : [slot.words.flatMap((word) => keysOf(tokenise([word])[0]?.stem ?? word))])),
    ),
  }));
}

