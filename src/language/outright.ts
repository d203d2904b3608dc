import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { phraseList } from "./phrase-set.ts";

const { outright } = polarityData as LexiconFile<"polarity">;

/** Forbid outright what is told behind them: "on no account". */
export const OUTRIGHT = phraseList(outright, { by: "text" });
/** Their last words: a verb or question behind one of these belongs to what is forbidden. */
export const OUTRIGHT_ENDS: ReadonlySet<string> = new Set(outright.map((phrase) => phrase.split(" ").at(-1)!));
