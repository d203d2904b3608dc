import { meets } from "../station/span.ts";
import type { Passage } from "./passages.ts";
import type { Response } from "./response.ts";
import { sameSentence } from "./one-voice.ts";
import { inOneSentence, type Stream } from "./stream.ts";
import { saysAll, tokensOf } from "./windows.ts";

/** A wrong statement that fits less than so well contradicts nothing. */
const CLOSE = 0.7;
/** From here on a wrong statement is said whole, and so much better than what is right it is what the sentence says. */
const WHOLE = 0.8;
const CLEARER = 0.12;
/** So much worse a fit is no worse. */
const AS_GOOD = 0.05;
/** A word this heavy, beside the heaviest of its response, decides. */
const HEAVY = 0.5;

/**
 * Right passages, closed where a wrong statement of the element takes the same words and says more with them: "blow your
 * nose after you've sprayed" has all of "blow your nose", and which way; "used needles go in the household rubbish" has
 * "household rubbish" for its own word, which only stands for the bin of "the sharps bin".
 * @param held wrong statements of the element on which no gate closes.
 */
export function closeContradicted(saying: readonly Passage[], held: readonly Passage[], stream: Stream): Passage[] {
  const wrong = held.filter(({ quantity, coverage, closed }) => quantity === undefined && coverage >= CLOSE && closed.length === 0);
  if (wrong.length === 0) return [...saying];
  return saying.map((passage) => (passage.verdict === "right" && wrong.some((other) => saysMore(other, passage, stream)) ? { ...passage, closed: [...passage.closed, "contradicted"] } : passage));
}

function saysMore(wrong: Passage, right: Passage, stream: Stream): boolean {
  if (!sameSentence(wrong, right, stream)) return false;
  if (wrong.coverage >= WHOLE && wrong.coverage >= right.coverage + CLEARER && saysAll(wrong.window) && !deniesBehind(wrong, stream)) return true;
  if (!meets(wrong, right)) return false;
  return tellsWhichWay(wrong, right) || (wrong.coverage >= right.coverage - AS_GOOD && (hasOwnWord(wrong, right) || saysAllAndMore(wrong, right)));
}

/** "People have died from having it each day, so never, ever daily": what is denied behind it may be just that. */
function deniesBehind({ end }: Passage, stream: Stream): boolean {
  for (let place = end; place < stream.tokens.length && inOneSentence(stream, place, end - 1); place += 1) if (stream.polarity[place]!.negated || /^(never|not|no)$/.test(stream.tokens[place]!.text)) return true;
  return false;
}

/** So many weighty words more are another thing said: "put some cream on a spreading rash and carry on" beside "a spreading rash". */
const MORE = 2;

/** Whether the wrong statement has all words of the other and several weighty ones more. */
function saysAllAndMore({ window: wrong }: Passage, { window: right }: Passage): boolean {
  const theirs = tokensOf(wrong);
  const ours = tokensOf(right);
  if (![...ours].every((place) => theirs.has(place))) return false;
  const heavy = heavyFrom(wrong.response);
  return wrong.aligned.filter(({ term, hit }) => wrong.response.terms[term]!.weight >= heavy && !ours.has(hit.first)).length >= MORE;
}

/** Whether the wrong statement has all words of the other and one more that tells which way. */
function tellsWhichWay({ window: wrong }: Passage, { window: right }: Passage): boolean {
  const theirs = tokensOf(wrong);
  const ours = tokensOf(right);
  if (!right.aligned.every(({ term, hit }) => right.response.terms[term]!.plain || theirs.has(hit.first) || theirs.has(hit.end - 1))) return false;
  return wrong.aligned.some(({ term, hit }) => wrong.response.terms[term]!.direction && !ours.has(hit.first));
}

/** Whether a weighty word is the wrong statement's own, where it only stands for one of the right response. */
function hasOwnWord({ window: wrong }: Passage, { window: right }: Passage): boolean {
  const heavy = { wrong: heavyFrom(wrong.response), right: heavyFrom(right.response) };
  return wrong.aligned.some(({ term, hit, quality }) => {
    if (quality < 1 || wrong.response.terms[term]!.weight < heavy.wrong) return false;
    return right.aligned.some((other) => other.quality < 1 && meets(other.hit, hit) && right.response.terms[other.term]!.weight >= heavy.right);
  });
}

/** The weight from which a word of the response is heavy. */
const heavyFrom = ({ terms }: Response): number => HEAVY * Math.max(...terms.map(({ weight }) => weight));
