import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { phraseList } from "./phrase-set.ts";

/** Say of what to do that it need not be done: "no need to". */
export const DISPENSES = phraseList((polarityData as LexiconFile<"polarity">).dispenses, { by: "text" });
