import { formsOfBe } from "./forms-of-be.ts";
import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { phraseList } from "./phrase-set.ts";

/*
 * What words beside a statement say of it: that it is allowed or harmful, a fault, nothing to mind, or not yet so.
 */

const LEXICON = polarityData as LexiconFile<"polarity">;

/** Words that allow, and words of the harm that comes of it. */
export const PERMITS: ReadonlySet<string> = new Set(LEXICON.permits);
export const HARMS = phraseList(LEXICON.harms);
export const DEATHS = phraseList(LEXICON.deaths);
/** What stands behind it is not yet so. */
export const NEARLY = phraseList(LEXICON.nearly, { by: "text" });
/** Say of a sign that it means nothing. */
export const PLAYS_DOWN = phraseList(LEXICON.plays_down, { by: "text" });
/** Look like those and are none. */
export const PLAYS_NOTHING_DOWN = phraseList(LEXICON.plays_nothing_down, { by: "text" });
/** What is told to be done at once plays nothing down: "a rash is nothing to wait with, ring us". */
export const ALARMS = phraseList(LEXICON.alarms, { by: "text" });
/** Let a thing be. */
export const LETS_BE = phraseList(LEXICON.lets_be);
/** Say of what is told beside them that nothing comes of it. */
export const UNTROUBLED = phraseList(LEXICON.untroubled, { by: "text" });
/** Call something a fault or a harm. */
export const FAULTS = phraseList(LEXICON.faults.flatMap(formsOfBe), { by: "text" });
