import { areOpposite, oppositeSets } from "../language/opposites.ts";
import { remembered } from "./remembered.ts";
import type { Response } from "./response.ts";
import { clausesAround, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/** So near to a passage, in its clause, a word that tells which way belongs to it. */
const REACH = 3;
const AT_ONCE = /\b(as|while|the same time|the same moment|at once|together)\b/;
const ONE_BY_ONE = /^(before|after)$/;
const ANOTHER = /\b(another|different|other|separate)\b/;
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
  const { directed, atOnce, paired, another, leads } = waysOf(response);
  // Most responses tell no way, and end here.
  if (!directed && !atOnce && !paired && !another && !leads) return false;
  if (another && namesTheSame(window, tokens)) return true;
  const clauses = clausesAround(stream, window);
  const first = Math.max(clauses.first, window.first - REACH);
  const end = Math.min(clauses.end, window.end + REACH);
  // "After the drop, not before" has the word "before", and does not say it.
  const lacking = response.terms.filter((term, place) => term.direction && !aligned.some((found) => found.term === place && !(ONE_BY_ONE.test(term.text) && !DENIES_TIME.test(response.text) && isDeniedTime(found.hit.first, tokens))));
  const comesFirst = leads && !aligned.some(({ term }) => response.terms[term]!.text === "first");
  if (lacking.length === 0 && !atOnce && !paired && !comesFirst) return false;
  const carries = (place: number) => aligned.some(({ hit }) => hit.first <= place && place < hit.end);
  const isOwn = (stem: string) => response.terms.some(({ keys }) => keys.some(({ key }) => key === stem));
  const told = (place: number) => !stream.polarity[place]!.negated && !stream.withdrawn.has(place) && !carries(place) && tokens[place + 1]?.text !== "of";
  // "The pen comes before the syrup" is "the syrup comes after the pen".
  const turned = (place: number) => {
    const before = aligned.filter(({ hit }) => hit.first < place);
    const behind = aligned.filter(({ hit }) => hit.first > place);
    return before.length > 0 && behind.length > 0 && before.every(({ term }) => behind.every((other) => other.term < term));
  };
  const comesAfter = lacking.some(({ text, negated }) => text === "after" && !negated);
  for (let place = first; place < end; place += 1) {
    const { stem, text } = tokens[place]!;
    // Few words tell any way.
    if (!oppositeSets.has(stem) && text !== "first") continue;
    // "At six, in the evening, no, in the morning": what the response wants was taken back.
    if (stream.withdrawn.has(place) && lacking.some(({ keys, negated }) => !negated && keys.some(({ key, quality }) => quality === 1 && key === stem))) return true;
    if (!told(place) || isOwn(stem) || (ONE_BY_ONE.test(text) && turned(place))) continue;
    if (lacking.some(({ keys, negated }) => !negated && keys.some(({ key, quality }) => quality === 1 && areOpposite(key, stem)))) return true;
    // "The syrup first and then the pen" is no "the syrup comes after the pen".
    if (text === "first" && comesAfter && isBetween(place, window)) return true;
    // And "the pen after the syrup" is no "the pen first".
    if (text === "after" && comesFirst && window.aligned.every(({ hit }) => hit.end <= place) && isStraightBehind(place, tokens)) return true;
    if (ONE_BY_ONE.test(text) && place > window.first && place < window.end && atOnce) return true;
  }
  return paired && pairsOtherwise(response.text, tokens.slice(first, end).map(({ text }) => text));
}

/** "Not before" in a response is told, not set against what is told. */
const DENIES_TIME = /\b(not|never) (before|after)\b/;

/** "After the drop, not before": behind the denial nothing follows that would tell before what. */
function isDeniedTime(place: number, tokens: Stream["tokens"]): boolean {
  return tokens[place - 1]?.text === "not" && (place + 1 === tokens.length || tokens[place]!.after !== "");
}

/** Whether "after" belongs to what stands before it: neither "lenses out, after that the drop" nor "lenses out, and after the drop wait". */
function isStraightBehind(place: number, tokens: Stream["tokens"]): boolean {
  const before = tokens[place - 1];
  return before !== undefined && before.after === "" && !/^(and|then|or|but)$/.test(before.text) && !/^(that|this|which|all)$/.test(tokens[place + 1]?.text ?? "");
}

/** "On the same day" is no "on another day": said straight before what the response wants another of. */
function namesTheSame({ response: { terms }, aligned }: Window, tokens: Stream["tokens"]): boolean {
  return aligned.some(({ term, hit }) => {
    if (tokens[hit.first - 1]?.text !== "same") return false;
    const before = terms.slice(Math.max(0, term - 2), term);
    return before.some(({ text, negated }, place) => !negated && ANOTHER.test(text) && !aligned.some((found) => found.term === Math.max(0, term - 2) + place));
  });
}

/** Whether it stands behind something of the response and before something that the response names later. */
function isBetween(place: number, { aligned }: Window): boolean {
  return aligned.some(({ term, hit }) => hit.end <= place && aligned.some((other) => other.hit.first > place && other.term > term));
}

interface Ways {
  /** A word of it tells which way. */
  directed: boolean;
  /** It wants two things at once. */
  atOnce: boolean;
  /** It names sides. */
  paired: boolean;
  /** It wants another one ("on another day"). */
  another: boolean;
  /** It ends with "first": it comes before something else. */
  leads: boolean;
}

const waysOf = remembered(({ terms, text }: Response): Ways => ({
  directed: terms.some(({ direction }) => direction),
  atOnce: terms.length > 1 && AT_ONCE.test(text),
  paired: SIDES.test(text),
  another: ANOTHER.test(text),
  leads: terms.length > 1 && terms.at(-1)!.text === "first" && !terms.at(-1)!.negated,
}));

function pairsOtherwise(response: string, said: readonly string[]): boolean {
  const asked = sidesOf(response.replace(/[^a-z ]/g, " ").split(" ").filter(Boolean));
  if (asked.length < 2 || asked[0] === asked[1]) return false;
  const sides = sidesOf(said);
  return sides.length >= 2 && sides[0] === sides[1];
}

const sidesOf = (words: readonly string[]): string[] => words.filter((word, place) => SIDE.test(word) && HAS_SIDES.test(words[place + 1] ?? ""));
