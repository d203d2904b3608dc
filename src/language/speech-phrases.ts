import type { LexiconFile } from "./lexicon/schema.ts";
import speechActData from "./lexicon/speech-act.yaml";
import { phraseList, type PhraseSet } from "./phrase-set.ts";

/** How spoken English asks, requests, confirms and shows, as people edit it. Its form is checked by the tests. */
export const SPEECH = speechActData as LexiconFile<"speech-act">;

const sets = new Map<keyof typeof SPEECH, PhraseSet<true>>();

/**
 * One of its lists, made once for all who ask for it: a list is read word by word, and they are asked for at every start.
 * By text: "have you" asks where "had you" does not, and "do that" tells where "does that" asks.
 */
export function speechPhrases(list: keyof typeof SPEECH): PhraseSet<true> {
  let set = sets.get(list);
  if (set === undefined) sets.set(list, (set = phraseList(SPEECH[list], { by: "text" })));
  return set;
}
