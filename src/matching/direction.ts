import { areOpposite } from "../language/opposites.ts";
import type { Response } from "./response.ts";
import { clausesAround, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/** So near to a passage, in its clause, a word that tells which way belongs to it. */
const REACH = 3;
const AT_ONCE = /\b(as|while|the same time|the same moment|at once|together)\b/;
const ONE_BY_ONE = /^(before|after)$/;
const SIDE = /^(left|right)$/;
const SIDES = /\b(left|right)\b/;
/** Of the words "left" and "right" those are sides, not "right, then" or "what's left". */
const HAS_SIDES = /^(hand|nostril|side|one|eye|ear|leg|arm|thigh|foot|cheek)s?$/;

/**
 * Whether what is said goes another way than the response: it has the opposite of a word that tells which way ("after"
 * for "before"), one thing before the other for both at once, or the sides paired otherwise.
 */
export function goesAnotherWay(stream: Stream, window: Window): boolean {
  const { tokens } = stream;
  const { response, aligned } = window;
  const { directed, atOnce, paired } = waysOf(response);
  // Most responses tell no way, and end here.
  if (!directed && !atOnce && !paired) return false;
  const clauses = clausesAround(stream, window);
  const first = Math.max(clauses.first, window.first - REACH);
  const end = Math.min(clauses.end, window.end + REACH);
  const lacking = response.terms.filter((term, place) => term.direction && !aligned.some((found) => found.term === place));
  if (lacking.length === 0 && !atOnce && !paired) return false;
  const carrying = new Set(aligned.flatMap(({ hit }) => Array.from({ length: hit.end - hit.first }, (_, k) => hit.first + k)));
  const own = new Set(response.terms.flatMap(({ keys }) => keys.map(({ key }) => key)));
  const told = (place: number) => !stream.polarity[place]!.negated && !stream.withdrawn.has(place) && !carrying.has(place) && tokens[place + 1]?.text !== "of";
  // "The pen comes before the syrup" is "the syrup comes after the pen".
  const turned = (place: number) => {
    const before = aligned.filter(({ hit }) => hit.first < place);
    const behind = aligned.filter(({ hit }) => hit.first > place);
    return before.length > 0 && behind.length > 0 && before.every(({ term }) => behind.every((other) => other.term < term));
  };
  for (let place = first; place < end; place += 1) {
    const { stem, text } = tokens[place]!;
    if (!told(place) || own.has(stem) || (ONE_BY_ONE.test(text) && turned(place))) continue;
    if (lacking.some(({ keys, negated }) => !negated && keys.some(({ key, quality }) => quality === 1 && areOpposite(key, stem)))) return true;
    if (ONE_BY_ONE.test(text) && place > window.first && place < window.end && atOnce) return true;
  }
  return paired && pairsOtherwise(response.text, tokens.slice(first, end).map(({ text }) => text));
}

interface Ways {
  /** A word of it tells which way. */
  directed: boolean;
  /** It wants two things at once. */
  atOnce: boolean;
  /** It names sides. */
  paired: boolean;
}

const ways = new WeakMap<Response, Ways>();

function waysOf(response: Response): Ways {
  let known = ways.get(response);
  if (known === undefined) {
    known = { directed: response.terms.some(({ direction }) => direction), atOnce: response.terms.length > 1 && AT_ONCE.test(response.text), paired: SIDES.test(response.text) };
    ways.set(response, known);
  }
  return known;
}

function pairsOtherwise(response: string, said: readonly string[]): boolean {
  const asked = sidesOf(response.replace(/[^a-z ]/g, " ").split(" ").filter(Boolean));
  if (asked.length < 2 || asked[0] === asked[1]) return false;
  const sides = sidesOf(said);
  return sides.length >= 2 && sides[0] === sides[1];
}

const sidesOf = (words: readonly string[]): string[] => words.filter((word, place) => SIDE.test(word) && HAS_SIDES.test(words[place + 1] ?? ""));
