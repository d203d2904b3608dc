import type { Clause } from "./clause.ts";
import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { opensInstruction } from "./main-clause.ts";
import { phraseList } from "./phrase-set.ts";
import { speechPhrases } from "./speech-phrases.ts";
import { stem } from "./stem.ts";
import type { Token } from "./token.ts";

/*
 * Where a denial stands that turns what follows it ("don't", "away from"), and what only looks like one ("don't worry").
 */

const LEXICON = polarityData as LexiconFile<"polarity">;
const FORWARD = phraseList([...LEXICON.forward, ...LEXICON.outright]);
const NEUTRAL = phraseList(LEXICON.neutral);
const DISMISSALS = phraseList(LEXICON.dismissals);
const COMFORTS = speechPhrases("comforts");
/** What is dismissed is something to do: "reading the name". */
export const DOING = /^(?!something|anything|nothing|everything|during|morning|evening)[a-z]{2,}ing$/;
const NEGATIVE_VERBS = phraseList(LEXICON.negative_verbs);
const AVOIDING_VERBS = new Set(LEXICON.avoiding_verbs);
/** "Pull it out of the box" tells, "keep it out of the damp" denies. */
const MOVES_OUT = new Set(LEXICON.moves_out.map(stem));
const TAKEN_OUT_OF = new Set(LEXICON.taken_out_of);

/** Behind "don't you" they make a warning of it, where it asks elsewhere. */
const FORBIDS_YOU = /^(dare|ever|go|be|let|start|even)$/;

/** A denial of which the words end before `end`. */
export interface DenialCue {
  end: number;
  /** It denies what follows, turns what that was ("don't forget to shake it"), or is a comfort and does nothing. */
  does: "denies" | "turns" | "nothing";
}

/** The places of a clause that look like denials and deny nothing. */
export function silentIn(tokens: readonly Token[], clause: Clause): Set<number> {
  const silent = new Set<number>();
  for (const hit of NEUTRAL.find(tokens, clause.first, clause.end)) {
    // "Don't worry" denies nothing, "don't worry about reading the label" does.
    if (DISMISSALS.at(tokens, hit.first) !== null) continue;
    // "Don't you dare put it in the sink" asks nothing.
    if (tokens[hit.end - 1]!.text === "you" && FORBIDS_YOU.test(tokens[hit.end]?.text ?? "")) continue;
    for (let k = hit.first; k < hit.end; k += 1) silent.add(k);
  }
  return silent;
}

/** The denial that begins at a token, or null. @param isDenied whether a denial before it reaches over the token. */
export function cueAt(tokens: readonly Token[], clause: Clause, place: number, isDenied: boolean): DenialCue | null {
  const phrase = FORWARD.at(tokens, place);
  // "Not bother with the sink" is more than "not bother".
  const comforts = DISMISSALS.at(tokens, place);
  const dismissal = comforts !== null && phrase !== null && phrase.end > comforts.end ? null : comforts;
  // "Don't worry about the noise": comfort, no denial.
  if (dismissal !== null && !DOING.test(tokens[dismissal.end]?.text ?? "")) return { end: dismissal.end, does: "nothing" };
  const denial = dismissal ?? ((phrase === null || phrase.end === place + 1) && isAnswer(tokens, place) ? null : (phrase ?? keptOff(tokens, place, clause)));
  const cue = denial ?? negativeVerb(tokens, place, isDenied);
  if (cue === null || (tokens[place]!.text === "out" && takesOut(tokens, clause, place))) return null;
  // "If it lands on your cheek, never mind, have another go": comfort by itself denies nothing.
  const comfort = tokens[place - 1]?.after === "," ? COMFORTS.at(tokens, place) : null;
  if (comfort !== null && comfort.end >= cue.end && tokens[comfort.end - 1]!.after === ",") return { end: comfort.end, does: "nothing" };
  // "Don't forget to shake", "don't avoid it" deny a denial.
  return { end: cue.end, does: denial === null || (isDenied && AVOIDING_VERBS.has(tokens[place]!.text)) ? "turns" : "denies" };
}

/** "Forget to shake"; behind a denial the negative verb turns a thing too: "you can't skip the shake". */
function negativeVerb(tokens: readonly Token[], place: number, isDenied: boolean): { end: number } | null {
  const verb = NEGATIVE_VERBS.at(tokens, place);
  return verb !== null && (governsAnAction(tokens, verb.end) || (isDenied && governsAThing(tokens, verb.end))) ? verb : null;
}

/** So far before it stands the verb of "out of": "slide it gently out of its tube". */
const VERB_REACH = 5;

/** "Pull it out of the box" tells, "keep it out of the damp" denies. */
function takesOut(tokens: readonly Token[], clause: Clause, place: number): boolean {
  for (let k = place - 1; k >= Math.max(clause.first, place - VERB_REACH); k -= 1) {
    if (MOVES_OUT.has(tokens[k]!.stem)) return true;
    if (/^(keep|kept|store|leave|stay|put)$/.test(tokens[k]!.text)) return false;
  }
  return TAKEN_OUT_OF.has(tokens[place + 2]?.text ?? "") || TAKEN_OUT_OF.has(tokens[place + 3]?.text ?? "");
}


/** "Keep it off the radiator", "stays well off the heat". */
function keptOff(tokens: readonly Token[], place: number, clause: Clause): { end: number } | null {
  if (tokens[place]!.text !== "off" || !/^(the|your|any|his|her)$/.test(tokens[place + 1]?.text ?? "")) return null;
  let verb = place - 1;
  while (verb > clause.first && /^(it|them|him|her|these|those|that|well|right|always|yourself)$/.test(tokens[verb]!.text)) verb -= 1;
  return verb >= clause.first && /^(keep|keeps|stay|stays)$/.test(tokens[verb]!.text) ? { end: place + 1 } : null;
}

/** "No, you press it", "sorry, no, two sprays": an answer or a slip put right, no denial of what follows. */
function isAnswer(tokens: readonly Token[], place: number): boolean {
  const { text, after } = tokens[place]!;
  if (text !== "no") return false;
  return after !== "" || BEHIND_AN_ANSWER.test(tokens[place + 1]?.text ?? "") || BEFORE_AN_ANSWER.test(tokens[place - 1]?.text ?? "") || (tokens[place + 1]?.text !== "use" && place + 1 < tokens.length && opensInstruction(tokens, place + 1));
}

/** No thing that "no" denies begins so. */
const BEHIND_AN_ANSWER = /^(you|i|it|we|they|he|she|that|this|these|the|your|my|there|please|sorry|wait|actually|not|never|no|because|cause|so|well|just)$/;
const BEFORE_AN_ANSWER = /^(sorry|oh|ah|um|uh|er|mm|hmm|nah|say|says|said)$/;

/** "forget to shake", "skip priming": the negative verb turns an action. "A missed dose" turns nothing. */
function governsAnAction(tokens: readonly Token[], place: number): boolean {
  const next = tokens[place]?.text;
  return next === "to" || (next !== undefined && /^[a-z]{3,}ing$/.test(next) && next !== "something" && next !== "anything");
}

/** "skip the shake", "miss your morning one": but "don't miss a dose" denies the missing of a dose. */
function governsAThing(tokens: readonly Token[], place: number): boolean {
  return /^(the|that|this|your|it)$/.test(tokens[place]?.text ?? "");
}
