import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { phraseList } from "./phrase-set.ts";
import type { Token } from "./token.ts";

const { allowances, left_open } = polarityData as LexiconFile<"polarity">;

/** Say that it may be, or does no harm, before "if": "it doesn't matter if the tip touches your eye". */
export const ALLOWANCES = phraseList(allowances, { by: "text" });
/** Words of the longest. */
const LONGEST = Math.max(...allowances.map((phrase) => phrase.split(" ").length));

/** Whether an allowance ends right before a token, in its sentence. */
export function isAllowedAhead(tokens: readonly Token[], place: number): boolean {
  if (/[.?!;:]/.test(tokens[place - 1]?.after ?? ".")) return false;
  for (let first = place - 1; first >= Math.max(0, place - LONGEST); first -= 1) if (ALLOWANCES.at(tokens, first)?.end === place) return true;
  return false;
}

const LEFT_OPEN = phraseList(left_open, { by: "text" });

/** Whether what does not matter is named behind a phrase that says so: "doesn't matter if the tip touches", "doesn't matter how you feel". */
export function namesWhatDoesNotMatter(tokens: readonly Token[], place: number): boolean {
  return (tokens[place]?.text === "if" || LEFT_OPEN.at(tokens, place) !== null) && isAllowedAhead(tokens, place);
}
