import { wordWeight } from "../language/lexicon.ts";
import type { CompiledElement } from "./compile.ts";
import { remembered } from "./remembered.ts";
import { inOneSentence, sentenceUpTo, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/*
 * Two steps told the other way round: "pull it out, and then count to ten" has all words of "count to ten, then pull it
 * out", and "prick first, then wash your hands" those of "wash your hands before you prick".
 */

const PARTS = /^(before|then)$/;
/** Behind these stands what comes first, so it is none of what comes next. */
const COMES_AFTER = /^(after|afterwards|once|when)$/;

/** What the element's responses have done next ("before you pull it out", "then pull it out"), and nowhere first; stems and sets. */
const nextSteps = remembered(({ say }: CompiledElement): ReadonlySet<string> => {
  const next = new Set<string>();
  const first = new Set<string>();
  for (const { terms } of say) {
    const parts = terms.findIndex(({ text, negated }) => PARTS.test(text) && !negated);
    const after = terms.findIndex(({ text }) => COMES_AFTER.test(text));
    const apart = parts > 0 && parts < terms.length - 1;
    terms.forEach(({ plain, keys }, place) => {
      if (apart ? place === parts || (place > parts && plain) : after < 0 || place <= after) return;
      for (const { key, quality } of keys) if (quality === 1 && wordWeight(key) > 0) (apart && place > parts ? next : first).add(key);
    });
  }
  for (const key of first) next.delete(key);
  return next;
});

/** So many tokens before and behind a passage the other step is looked for. */
const REACH = 14;
/** So many small words may stand between "then" and what is told for it: "and then you just". */
const LEADS = 4;
/** Parts of a step: "pull" and "out", "prick" alone may be of something else. */
const SURE = 2;
/** Opens what is not done yet, or only supposed. */
const NOT_DONE = /^(before|until|till|ready|going|about|unless|want)$/;
/** And these, wherever they stand beside it, put it last: "your tear drops come afterwards". */
const DONE_LAST = /^(after|afterwards|later|last|next)$/;

/** Where "then", "only then", "after that" lead to a token, or -1. */
function thenBefore(from: number, stream: Stream): number {
  const { tokens } = stream;
  for (let place = from - 1; place >= Math.max(1, from - LEADS) && inOneSentence(stream, place, from); place -= 1) {
    if (tokens[place]!.text === "then" || (tokens[place]!.text === "that" && tokens[place - 1]!.text === "after")) return place;
  }
  return -1;
}

/** Whether what comes next is told as done, and what the element tells for after it. */
export function isTurnedRound(window: Window, stream: Stream, element: CompiledElement): boolean {
  const next = nextSteps(element);
  // Most elements are no first of two steps, and end here.
  if (next.size === 0) return false;
  const { tokens, clauses, clauseOf, polarity } = stream;
  // "Before you pull it out": what is done before the step is what is told.
  const notDone = (place: number) => {
    const { first, end } = clauses[clauseOf[place]!]!;
    return tokens.slice(first, place).some(({ text }) => NOT_DONE.test(text)) || tokens.slice(first, end).some(({ text }) => DONE_LAST.test(text));
  };
  const told = (place: number) => next.has(tokens[place]?.stem ?? "") && !polarity[place]!.negated && !polarity[place]!.hypothetical && !stream.withdrawn.has(place) && !notDone(place);
  const comesFirst = (place: number) => tokens[place]!.text === "first" && tokens[place - 1]?.after === "" && (tokens[place]!.after !== "" || /^(and|then|with|but)$/.test(tokens[place + 1]?.text ?? "")) && told(place - 1);
  const own = window.aligned.filter(({ term, hit }) => !window.response.terms[term]!.plain && !next.has(tokens[hit.first]!.stem) && !comesFirst(hit.first)).map(({ hit }) => hit.first);
  if (own.length === 0) return false;
  const from = Math.min(...own);
  const then = thenBefore(from, stream);
  let steps = 0;
  for (let place = from - 1; place >= Math.max(0, from - REACH) && inOneSentence(stream, place, from); place -= 1) {
    if (comesFirst(place)) steps += SURE;
    else if (place < then && told(place)) steps += tokens[then - 1]!.text === "only" ? SURE : 1;
  }
  if (steps < SURE) return false;
  const last = Math.max(...own) + 1;
  for (let place = last; place < sentenceUpTo(stream, last, REACH); place += 1) if (next.has(tokens[place]!.stem)) return false;
  return true;
}
