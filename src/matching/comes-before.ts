import type { CompiledElement } from "./compile.ts";
import { remembered } from "./remembered.ts";
import { inOneSentence, sentenceUpTo, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/*
 * What an element wants done before something is not told by who has it done after that: "after the drop your lenses have
 * to come out" has all words of "your lenses have to come out" and is no "lenses out before the drop".
 */

/** An element comes before something where so many of its responses say so, and none says "after". */
const LEAST = 2;

/** What the element comes before, or nothing. */
const comesBefore = remembered((element: CompiledElement): ReadonlySet<string> => {
  const keys = new Set<string>();
  const texts = new Set<string>();
  for (const { text, terms } of element.say) {
    if (terms.some((term) => term.text === "after" || term.text === "again")) return new Set();
    const before = terms.findIndex((term) => term.text === "before" && !term.negated);
    if (before < 1 || before === terms.length - 1) continue;
    texts.add(text);
    for (const term of terms.slice(before + 1)) if (!term.plain) for (const { key, quality } of term.keys) if (quality === 1) keys.add(key);
  }
  return texts.size >= LEAST ? keys : new Set();
});

/** So far behind "after" stands what it is after, and so far before or behind a passage stands "after". */
const REACH = 5;
const COMES_FIRST = /^(before|beforehand|first|again|already|prior)$/;

/** Whether what comes before something is told for after it. */
export function toldForAfter(window: Window, stream: Stream, element: CompiledElement): boolean {
  const wanted = comesBefore(element);
  // Most elements come before nothing, and end here.
  if (wanted.size === 0) return false;
  const { tokens, clauses, clauseOf } = stream;
  let first = clauses[clauseOf[window.first]!]!.first;
  // The clause straight before it, in its sentence: "after the drop's gone in, | that's when".
  if (first > 0 && inOneSentence(stream, first - 1, first)) first = clauses[clauseOf[first - 1]!]!.first;
  const end = sentenceUpTo(stream, window.end, REACH);
  for (let after = first; after < end; after += 1) {
    if (tokens[after]!.text !== "after") continue;
    if (stream.withdrawn.has(after) || tokens[after - 1]?.text === "not" || (after >= window.end && /^(and|then|or|but)$/.test(tokens[after - 1]!.text))) continue;
    const named = tokens.slice(after + 1, sentenceUpTo(stream, after + 1, REACH)).findIndex(({ stem }) => wanted.has(stem));
    if (named < 0) continue;
    return !tokens.slice(first, end).some(({ text }) => COMES_FIRST.test(text));
  }
  return false;
}
