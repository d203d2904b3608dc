import type { Learnt } from "../../../src/rubric/schema.ts";
import { rubricNamed } from "../match/passages.ts";
import { markedSayings, type MarkedSaying } from "./marked-sayings.ts";
import { learnt } from "./train.ts";

/*
 * What judges lines must not have been learnt from. Two parts of the hands (of passages, of talk, of unsafe sayings, and
 * one round of drills) are each read by lines that were learnt from all others.
 */

const JUDGED_HANDS: readonly RegExp[] = [/^(g\d|h[1-4]|k[12]|w9|w11|w13|w15|u[1357]|d6)$/, /^(c\d|h[5-8]|k[56]|w8|w10|w12|w14|w16|w17|u[2468])$/];

/** The fold that a hand is in; undefined of hands that are in none. */
export function foldOf(hand: string): number | undefined {
  const fold = JUDGED_HANDS.findIndex((hands) => hands.test(hand));
  return fold < 0 ? undefined : fold;
}

/** Lines by rubric, learnt from all sayings. */
export function linesOf(sayings: readonly MarkedSaying[]): Map<string, Learnt> {
  return learnt([...new Set(sayings.map(({ rubric }) => rubric))].sort().map(rubricNamed), sayings);
}

/** For each hand of the folds, lines by rubric that were learnt without its fold. Some minutes. */
export function linesWithoutHands(sayings: readonly MarkedSaying[] = markedSayings()): { linesFor: (hand: string) => Map<string, Learnt> | null } {
  const folds = JUDGED_HANDS.map((hands) => linesOf(sayings.filter(({ hand }) => !hands.test(hand))));
  return { linesFor: (hand) => folds[foldOf(hand) ?? -1] ?? null };
}
