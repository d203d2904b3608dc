import { opensInstruction } from "../language/main-clause.ts";
import type { CompiledElement } from "./compile.ts";
import { remembered } from "./remembered.ts";
import { sentenceUpTo, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/*
 * Some things are to be done in any case: "go to hospital even if you feel fine", "keep using them even though nothing is
 * felt". Who tells them for one case or up to one time alone ("only go if you are sick", "but only till it feels better")
 * says most of the words, and the contrary.
 */

const IN_ANY_CASE = /\b(even (if|when|though|after)|no matter)\b/;
/** An element is of any case where so many of its responses say so. */
const LEAST = 2;

/** Of a time told by its number "only until the four weeks are up" is the thing itself. */
const isOfAnyCase = remembered((element: CompiledElement): boolean => element.quantity === null && new Set(element.say.map(({ text }) => text).filter((text) => IN_ANY_CASE.test(text))).size >= LEAST);

/** So far behind "only" stands the case ("only go to the hospital if"), and so far behind what is told stands "only". */
const REACH = 7;
const UP_TO = /^(till|until|while)$/;
const IN_CASE = /^(if|when)$/;
/** "Only stop when the clinic says so" ends nothing else. */
const ENDS = /^(stop|stops|stopping|finish|quit|change|leave|skip|miss|cut|come)$/;

/** Whether what is to be done in any case is told for one alone: what must alarm always is. */
export function toldForOneCase(window: Window, stream: Stream, element: CompiledElement): boolean {
  return (isOfAnyCase(element) && ofOneCase(window, stream)) || (element.redFlag && onlyInOneCase(window, stream));
}

function ofOneCase(window: Window, stream: Stream): boolean {
  const { tokens, clauses, clauseOf } = stream;
  const first = clauses[clauseOf[window.first]!]!.first;
  const end = sentenceUpTo(stream, window.end, REACH);
  for (let only = first; only < end; only += 1) {
    if (tokens[only]!.text !== "only" || tokens[only - 1]?.text === "not" || stream.withdrawn.has(only)) continue;
    if (ENDS.test(tokens[only + 1]?.text ?? "")) continue;
    if (UP_TO.test(tokens[only + 1]?.text ?? "")) return true;
    const to = sentenceUpTo(stream, only + 1, REACH);
    for (let place = only + 1; place < to; place += 1) {
      if (!IN_CASE.test(tokens[place]!.text)) continue;
      // "Only if you bang your head" is the case that the response has; behind "if you bang your head" it is another.
      return window.aligned.some(({ hit }) => hit.first < only && stream.polarity[hit.first]!.hypothetical) || !window.aligned.some(({ hit }) => hit.first > place);
    }
  }
  return false;
}

/** So soon behind what must alarm it is said in which case alone. */
const ALONE_WITHIN = 6;

/** "Bang your head, up to A and E, but only when you start feeling poorly": what must alarm in any case is told for one alone. */
function onlyInOneCase({ end }: Window, stream: Stream): boolean {
  const { tokens, clauses, clauseOf } = stream;
  const last = sentenceUpTo(stream, end, ALONE_WITHIN);
  for (let place = end; place + 2 < last; place += 1) {
    if (tokens[place]!.text !== "but" || tokens[place + 1]!.text !== "only" || !/^(if|when|once)$/.test(tokens[place + 2]!.text)) continue;
    const to = clauses[clauseOf[place + 2]!]!.end;
    for (let k = place + 3; k < to; k += 1) if (opensInstruction(tokens, k)) return false;
    return to === tokens.length || /[.?!]/.test(tokens[to - 1]!.after);
  }
  return false;
}
