import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { opensInstruction } from "./main-clause.ts";
import type { Clause } from "./clause.ts";
import { phraseList } from "./phrase-set.ts";
import type { Token } from "./token.ts";

/*
 * Whether a denial goes on through a list: "no ibuprofen, aspirin, naproxen" denies all three, of "no appetite, itching,
 * dark urine" each is a sign by itself.
 */

const LACKS = phraseList((polarityData as LexiconFile<"polarity">).lacks);

/** Words between a denial and what it belongs to: "a cough that just will not". */
const BEFORE_A_DENIAL = /^(will|would|can|could|is|are|was|were|do|does|did|has|have|had|should|may|might|just|really|still|you|he|she|it|they|i|we)$/;

/** Whether a denial is told, and so denies all of a list: "a cough that won't stop, a sore throat or ..." and "bruises for no reason, ... or ..." name signs. */
export function deniesAList(tokens: readonly Token[], clause: Clause, place: number, supposed: readonly boolean[]): boolean {
  if (supposed[place]) return false;
  let before = place - 1;
  while (before >= clause.first && BEFORE_A_DENIAL.test(tokens[before]!.text)) before -= 1;
  return before < clause.first || !/^(that|which|who|if|when|for)$/.test(tokens[before]!.text);
}

/** A list without "or" takes three things at least, of few words each. */
const BARE_LIST = { fewest: 3, longest: 2 } as const;
const IS_NOT_NAMED_ONLY = /^(is|are|was|will|can|instead|only|fine|okay|just|then|please|and|you|it|i|we|they|not|no|never|yes|yeah|now|so|to)$/;
const ANY_SUCH = /^any(thing|one|body|where)?$/;

/** "No ibuprofen, aspirin, naproxen" and "don't take aspirin, ibuprofen, anything like that" list what is denied without an "or". */
export function listsBarely(tokens: readonly Token[], denied: number, from: number): boolean {
  let members = 1;
  let words = 0;
  for (let place = denied; place < tokens.length; place += 1) {
    const { text, after } = tokens[place]!;
    if (place >= from) {
      if (ANY_SUCH.test(text) && (place === from || words === 0)) return true;
      if (IS_NOT_NAMED_ONLY.test(text) || (words === 0 && opensInstruction(tokens, place))) return false;
      words += 1;
      if (words > BARE_LIST.longest) return false;
    }
    if (after === ",") {
      members += 1;
      words = 0;
    } else if (after !== "") return members >= BARE_LIST.fewest && /[.!;]/.test(after);
  }
  return members >= BARE_LIST.fewest;
}

/** Opens what is forbidden: "no", "please don't", "you must never". */
const FORBIDS_BEHIND = /^(and|so|but|well|also|please|remember|do|you|must|should|then|just|really|absolutely|obviously)$/;

/** Whether a denial opens its clause and forbids: of "no appetite, itching, dark urine" and "can't breathe, sweating" each is a sign by itself. */
export function forbids(tokens: readonly Token[], clause: Clause, place: number, end: number): boolean {
  if (LACKS.at(tokens, end) !== null) return false;
  for (let k = clause.first; k < place; k += 1) if (!FORBIDS_BEHIND.test(tokens[k]!.text)) return false;
  return place === clause.first || tokens[place - 1]!.text !== "you";
}

/** One thing of a list seldom takes more words. */
const LONGEST_OF_A_LIST = 5;

/** Behind a comma a denial goes on only through a list: "don't twist, bend or force it", but "don't wait, have some juice". */
export function goesOn(tokens: readonly Token[], from: number, end: number): boolean {
  let words = 0;
  for (let place = from; place < end; place += 1) {
    if (/^(or|nor)$/.test(tokens[place]!.text)) return true;
    words = tokens[place]!.after === "," ? 0 : words + 1;
    if (words > LONGEST_OF_A_LIST) return false;
  }
  return false;
}
