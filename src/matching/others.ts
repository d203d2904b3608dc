import { speechPhrases } from "../language/speech-phrases.ts";
import { inOneSentence, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

const OTHERS = speechPhrases("others", "others_think");
/** So many tokens before the passage the others are named; without punctuation a sentence may be very long. */
const REACH = 22;

/**
 * Whether the passage tells what others do or did ("we had a gentleman who carried on with both"): a warning, which is
 * held against nobody.
 */
export function toldOfOthers({ first, end }: { first: number; end: number }, stream: Stream): boolean {
  return OTHERS.find(stream.tokens, openedFrom(first, stream), end).length > 0;
}

/** Where what stands before a token in its sentence and turn begins, so far back at most. */
function openedFrom(first: number, stream: Stream): number {
  let from = first;
  while (from > 0 && first - from < REACH && stream.turnOf[from - 1] === stream.turnOf[first] && inOneSentence(stream, from - 1, first)) from -= 1;
  return from;
}

const OF_ANOTHER_AGE = { adult: speechPhrases("of_children"), child: speechPhrases("of_adults") };
const OF_THE_PATIENT = speechPhrases("of_the_patient");

/** Of what age the patient of the scenario is, where it says so. */
export type Age = "adult" | "child";

/** Whether the passage tells what holds for people of another age: "for a child it's one puff, you have two". */
export function toldOfAnotherAge({ first, end }: { first: number; end: number }, stream: Stream, age: Age | null): boolean {
  if (age === null) return false;
  const others = OF_ANOTHER_AGE[age].find(stream.tokens, openedFrom(first, stream), end).at(-1);
  return others !== undefined && OF_THE_PATIENT.find(stream.tokens, others.end, end).length === 0;
}

/** Whether the passage tells how much people of some age have ("children under five have ten puffs"): a rule of dosing, which lets nobody do anything. */
export function tellsDoseOfAnAge({ first, end, aligned }: Window, stream: Stream): boolean {
  const counted = stream.quantities.some((mention) => mention.first >= first && mention.end <= end && aligned.some(({ hit }) => mention.first < hit.first && hit.end === mention.end));
  return counted && [OF_ANOTHER_AGE.adult, OF_ANOTHER_AGE.child].some((phrases) => phrases.find(stream.tokens, first, end).some((hit) => !OF_THESE.test(stream.tokens[hit.first - 1]?.text ?? "")));
}

/** "Let the children have two puffs" is said of those at home. */
const OF_THESE = /^(the|your|my|his|her|their|let)$/;
