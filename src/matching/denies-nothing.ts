import { wordWeight } from "../language/lexicon.ts";
import { around, MARGIN } from "./must-words.ts";
import { clausesAround, type Stream } from "./stream.ts";
import { warns } from "./warned-of.ts";
import type { Window } from "./windows.ts";

/**
 * Whether the response denies, and the speaker near the passage denies nothing: "wait until it's empty" has most of the
 * words of "don't wait until it's empty", and the one that is turned is outvoted.
 */
export function deniesNothing(stream: Stream, window: Window): boolean {
  const terms = window.aligned.map(({ term }) => window.response.terms[term]!);
  if (!terms.some(({ negated, weight, supposed }) => negated && weight > 0 && !supposed)) return false;
  if (window.aligned.some(({ term, hit }) => window.response.terms[term]!.eitherWay && stream.polarity[hit.first]!.eitherWay)) return false;
  const near = around(stream, window, MARGIN);
  const clauses = clausesAround(stream, window);
  const first = Math.min(near.first, clauses.first);
  const end = Math.max(near.end, clauses.end);
  for (let place = first; place < end; place += 1) {
    if (!stream.polarity[place]!.negated) continue;
    const denied = deniedUpTo(stream, place);
    if (place < window.end || !deniesAnother(stream, place, denied)) return false;
    place = denied - 1;
  }
  return !warns(stream, window);
}

/** Behind the last token of what is denied from here on. */
function deniedUpTo({ polarity }: Stream, from: number): number {
  let end = from;
  while (polarity[end]?.negated === true) end += 1;
  return end;
}

/** Without punctuation: "dry it with a towel don't leave it to drip" denies what is told next, "a towel don't use it" what was named. */
function deniesAnother({ tokens }: Stream, first: number, end: number): boolean {
  return tokens.slice(first, end).some(({ stem }) => wordWeight(stem) >= 1);
}
