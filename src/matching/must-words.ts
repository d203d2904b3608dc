import { opensInstruction } from "../language/main-clause.ts";
import { firstFrom, type Postings } from "./postings.ts";
import { clausesAround, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";
import type { WordGroup } from "./word-group.ts";

/** Words just outside a passage may still belong to it ("shake it", with "the inhaler" a breath before). */
export const MARGIN = 6;

/** The passage with its margin, but not across another turn of the stream. */
export function around(stream: Stream, window: { first: number; end: number }, margin: number): { first: number; end: number } {
  let { first, end } = window;
  const { position, turnOf } = stream;
  const last = window.end - 1;
  while (first > 0 && position[window.first]! - position[first - 1]! <= margin && turnOf[first - 1] === turnOf[window.first]) first -= 1;
  while (end < position.length && position[end]! - position[last]! <= margin && turnOf[end] === turnOf[last]) end += 1;
  return { first, end };
}

/** Whether a notion is said between two tokens. @param least how surely its words are heard. */
export function groupPresent(group: WordGroup, postings: Postings, first: number, end: number, least = 0): boolean {
  // Loops, here and below: a function made for each run and word of each passage is a tenth of all that matching throws away.
  for (const run of group.runs) {
    for (const key of run[0]!) {
      const hits = postings.get(key);
      if (hits === undefined) continue;
      for (let place = firstFrom(hits, first); place < hits.length && hits[place]!.first < end; place += 1) {
        if (hits[place]!.end <= end && hits[place]!.quality >= least && continues(run, 1, hits[place]!.end, postings, end)) return true;
      }
    }
  }
  return false;
}

/** Whether the words of a notion stand anywhere in the stream: where not, no passage can have it. */
export function groupPossible(group: WordGroup, postings: Postings): boolean {
  return group.runs.some((run) => run.every((keys) => keys.some((key) => postings.has(key))));
}

/** A filler or an article may stand inside a run of words. */
const RUN_GAP = 1;

function continues(run: string[][], place: number, from: number, postings: Postings, end: number): boolean {
  if (place === run.length) return true;
  for (const key of run[place]!) {
    const hits = postings.get(key);
    if (hits === undefined) continue;
    for (let k = firstFrom(hits, from); k < hits.length && hits[k]!.first <= from + RUN_GAP; k += 1) {
      if (hits[k]!.end <= end && continues(run, place + 1, hits[k]!.end, postings, end)) return true;
    }
  }
  return false;
}

/** Every notion of `must` is said in or right beside the passage. */
export function mustHolds(groups: readonly WordGroup[], postings: Postings, stream: Stream, window: Window): boolean {
  if (groups.length === 0) return true;
  const { first, end } = around(stream, window, MARGIN);
  for (const group of groups) if (!groupPresent(group, postings, first, end)) return false;
  return true;
}

/** Every notion is said in the clauses of the passage: what is held against somebody is not made up of what stands next to it ("check the bottle, then tilt your head back"). */
export function mustHoldsInside(groups: readonly WordGroup[], postings: Postings, stream: Stream, window: Window): boolean {
  const { first, end } = clausesAround(stream, window);
  return groups.every((group) => groupPresent(group, postings, first, end));
}

/** Notions of `must` that are not said in or right beside the passage. */
export function unmetNotions(groups: readonly WordGroup[], postings: Postings, stream: Stream, window: Window): WordGroup[] {
  if (groups.length === 0) return [];
  const { first, end } = around(stream, window, MARGIN);
  return groups.filter((group) => !groupPresent(group, postings, first, end));
}

/**
 * None of the notions of `not_with` is said in the clauses of the passage.
 * @param upTo "instruction": what is told behind the passage, in speech without punctuation, is another matter. What is held against somebody must be free of them all the same.
 */
export function notWithHolds(groups: readonly WordGroup[], postings: Postings, stream: Stream, window: Window, upTo: "clause" | "instruction" = "clause"): boolean {
  if (groups.length === 0) return true;
  const clause = clausesAround(stream, window);
  const told = upTo === "instruction";
  const first = told ? Math.max(clause.first, window.first - OTHER_MATTER) : clause.first;
  const to = told ? Math.min(clause.end, window.end + OTHER_MATTER) : clause.end;
  let end = told ? window.end : to;
  while (end < to && !opensInstruction(stream.tokens, end)) end += 1;
  for (const group of groups) if (groupPresent(group, postings, first, end, SURELY_HEARD)) return false;
  return true;
}

/** So many words away from it in a long clause another thing is spoken of: "the leaflet's in the bag, and the number for the nurses is on the front of the book". */
const OTHER_MATTER = 9;

/** What keeps a passage out must be there: "love" may be "leave" mis-heard, and mostly is not. */
const SURELY_HEARD = 0.85;
