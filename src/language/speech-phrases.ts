import type { LexiconFile } from "./lexicon/schema.ts";
import speechActData from "./lexicon/speech-act.yaml";
import { phraseList, type PhraseSet } from "./phrase-set.ts";

/** How spoken English asks, requests, confirms and shows, as people edit it. Its form is checked by the tests. */
export const SPEECH = speechActData as LexiconFile<"speech-act">;

/** One of its lists. By text: "have you" asks where "had you" does not, and "do that" tells where "does that" asks. */
export function speechPhrases(list: keyof typeof SPEECH): PhraseSet<true> {
  return phraseList(SPEECH[list], { by: "text" });
}
