import { LETS_BE, UNTROUBLED } from "../language/appraisals.ts";
import { DISPENSES } from "../language/dispenses.ts";
import { A_DENIAL, deniesAgain, MERELY } from "./denied-again.ts";
import { denies } from "./response.ts";
import { clausesAround, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/** What is denied later than so many words behind the passage is something else: "slowly, because you don't want to cough". */
const DENIED_BEHIND = 3;

/**
 * Whether the clauses of the passage deny anything that the response does not: "the brown one won't do anything in an
 * attack" has the words of "use the brown one in an attack" and says no such thing. What is held against somebody must
 * be free of that.
 */
export function deniesBeside(stream: Stream, window: Window): boolean {
  const { first, end } = clausesAround(stream, window);
  if (hasItMinded(stream, first, end)) return true;
  if (denies(window.response)) return deniesAgain(stream, window);
  let needless: ReadonlySet<number> | undefined;
  for (let place = first; place < Math.min(end, window.end + DENIED_BEHIND); place += 1) {
    // "If the second go hasn't worked drive yourself in": in which case is no denial of what is told.
    if (place < window.first && stream.polarity[place]!.hypothetical && !stream.polarity[window.first]!.hypothetical) continue;
    // Looked for where something is denied: beside most statements nothing is.
    if (stream.polarity[place]!.negated && !stream.withdrawn.has(place) && !(needless ??= needlessBeside(stream, window, first, end)).has(place)) return true;
    // "Not just the first time": that it is no more is what is denied.
    if (stream.tokens[place]!.text === "not" && MERELY.test(stream.tokens[place + 1]?.text ?? "")) return true;
  }
  return false;
}

/** Between a denial and the verb it denies. */
const BEFORE_LETTING_BE = /^(just|simply|ever|be|to|try)$/;

/** "Never ignore a funny reading": for the clause's polarity the two cancel, and a statement that tells to ignore it would have all its words. */
function hasItMinded({ tokens }: Stream, first: number, end: number): boolean {
  return LETS_BE.find(tokens, first, end).some((verb) => {
    let before = verb.first - 1;
    while (before > first && BEFORE_LETTING_BE.test(tokens[before]!.text)) before -= 1;
    return before >= first && A_DENIAL.test(tokens[before]!.text);
  });
}

/**
 * Places that are denied as needless or as harmless beside the passage: "ten times a day is fine, no need to let anybody
 * know", "I drop mine over the lenses, never had any bother" take nothing back. What the passage itself says must not be
 * among it.
 */
function needlessBeside({ tokens, polarity }: Stream, { aligned }: Window, first: number, end: number): ReadonlySet<number> {
  const needless = new Set<number>();
  for (const phrase of [...DISPENSES.find(tokens, first, end), ...UNTROUBLED.find(tokens, first, end)]) {
    let behind = phrase.end;
    while (behind < end && polarity[behind]!.negated) behind += 1;
    if (aligned.some(({ hit }) => hit.first >= phrase.first && hit.first < behind)) continue;
    for (let place = phrase.first; place < behind; place += 1) needless.add(place);
  }
  return needless;
}
