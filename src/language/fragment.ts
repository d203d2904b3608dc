import { isToldVerb } from "./main-clause.ts";
import type { Token } from "./token.ts";

/** More words than these are hardly left without a verb. */
const LONGEST = 6;
/** A subject or a verb that a sentence is heard by; what is told to a patient is told by others (main-clause.ts). */
const OF_A_SENTENCE = /^(am|is|are|was|were|be|been|has|have|had|do|does|did|will|would|can|could|should|must|may|might|shall|i|we|you|they|he|she|go|goes|get|gets)$/;
/** Behind these stands a thing, whatever else the word may be. */
const DETERMINES = /^(the|a|an|your|this|that|no|each|every)$/;

/** "Four months.", "Straight on top.": whether these tokens are a few words without a verb, which say something only with what stands beside them. */
export function isFragment(tokens: readonly Token[], first: number, end: number): boolean {
  if (end - first > LONGEST || tokens[end - 1]!.after === "?") return false;
  for (let place = first; place < end; place += 1) {
    const { text, after } = tokens[place]!;
    if (OF_A_SENTENCE.test(text) || (place < end - 1 && /[.?!]/.test(after))) return false;
    if (isToldVerb(text) && !(place > first && DETERMINES.test(tokens[place - 1]!.text))) return false;
  }
  return true;
}
