import type { LexiconFile } from "./lexicon/schema.ts";
import speechActData from "./lexicon/speech-act.yaml";
import { phraseList, type PhraseSet } from "./phrase-set.ts";

/** How spoken English asks, requests, confirms and shows, as people edit it. Its form is checked by the tests. */
export const SPEECH = speechActData as LexiconFile<"speech-act">;

const sets = new Map<string, PhraseSet<true>>();

/**
 * Some of its lists as one, made once for all who ask for it: a list is read word by word, and they are asked for at
 * every start. By text: "have you" asks where "had you" does not, and "do that" tells where "does that" asks.
 */
export function speechPhrases(...lists: (keyof typeof SPEECH)[]): PhraseSet<true> {
  const name = lists.join(" ");
  let set = sets.get(name);
  if (set === undefined) sets.set(name, (set = phraseList(lists.flatMap((list) => SPEECH[list]), { by: "text" })));
  return set;
}
