import speechActData from "../language/lexicon/speech-act.yaml";
import type { LexiconFile } from "../language/lexicon/schema.ts";
import { PhraseSet } from "../language/phrase-set.ts";

/** "Like this, you see": pointed at or done, not said. */
export const SHOWING = new PhraseSet((speechActData as LexiconFile<"speech-act">).showing.map((phrase) => [phrase, true] as const), { by: "text" });
