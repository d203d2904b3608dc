import type { Word } from "../transcript/types.ts";

/** An edge between tokens: the station's first token, or the first after it. */
export interface Edge {
  token: number;
  reason: string;
  confidence: number;
  /** Nothing marked it: the start or end of all speech. */
  guessed: boolean;
}

/** How far each kind of evidence is believed. Judgement, not measured: no open corpus of stations with their edges is known to us. */
export const BELIEF = { announcement: 0.95, heading: 0.95, introduction: 0.9, examiner: 0.9, restart: 0.85, afterSetup: 0.7, farewell: 0.85, debrief: 0.75, pause: 0.6, speech: 0.5 } as const;

/** After a leave-taking so few words are its tail ("thanks, you too, bye"); a greeting reaches so far before an introduction. */
export const TAIL_WORDS = 15;
/** Sentences of greeting or farewell have at most so many words. */
export const TAIL_CLAUSE_WORDS = 8;

export function edgeAt(token: number, reason: string, confidence: number): Edge {
  return { token, reason, confidence, guessed: false };
}

/*
 * A door, a bell or a silence may stand minutes away from the talk that it borders on: the clock runs from voice to voice.
 * What could not be heard was said all the same.
 */

/** Position of the first word from here on that is no noise; where only noises follow, this one. */
export function firstSpoken(words: readonly Word[], from: number): number {
  for (let place = from; place < words.length; place += 1) if (words[place]!.kind !== "sound") return place;
  return from;
}

/** Position of the last word before `end` that is no noise; where only noises stand before it, the one before. */
export function lastSpoken(words: readonly Word[], end: number): number {
  for (let place = end - 1; place >= 0; place -= 1) if (words[place]!.kind !== "sound") return place;
  return end - 1;
}
