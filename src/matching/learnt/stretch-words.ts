import { wordWeight } from "../../language/lexicon.ts";
import { readNumber } from "../../language/number-words.ts";
import type { Token } from "../../language/token.ts";

/** What one stretch of speech is known by: its words, its denied words once more, and pairs of words that follow each other, each with its share. A long stretch says no more than a short one: the squares of the shares sum to LENGTH squared, less in a very short one. */
export type StretchWords = ReadonlyMap<string, number>;

/** Of a pair beside a word, and of a denied word. */
const PAIR = 0.5;
const DENIED = 1.2;
/** Of a word that carries nothing by itself. */
const SILENT = 0.3;
/** Scales with the penalty of the fit (tests/bench/fit-learnt.ts). */
const LENGTH = 5;
/** So much a stretch counts at least: of three words each is no surer sign for that. */
const LEAST_SQUARES = 12;
/** Stands for any number. */
const ANY_NUMBER = "#";

/**
 * @param tokens those that say something, in order.
 * @param denied whether each stands under a denial.
 * @param numbers false: all numbers are one. Numbers are never fuzzy; of an element with a quantity they are read elsewhere.
 */
export function stretchWords(tokens: readonly Pick<Token, "text" | "stem" | "after">[], denied: readonly boolean[], numbers: boolean): StretchWords {
  const words = new Map<string, number>();
  let before: string | null = null;
  tokens.forEach((token, place) => {
    const word = !numbers && isNumber(token) ? ANY_NUMBER : token.stem;
    const silent = word !== ANY_NUMBER && wordWeight(word) === 0;
    words.set(word, silent ? SILENT : 1);
    if (!silent && denied[place]!) words.set(`!${word}`, DENIED);
    if (before !== null) words.set(`${before} ${word}`, PAIR);
    before = /[.?!]/.test(token.after) ? null : word;
  });
  const length = Math.sqrt(Math.max(LEAST_SQUARES, [...words.values()].reduce((sum, share) => sum + share * share, 0)));
  for (const [word, share] of words) words.set(word, (LENGTH * share) / length);
  return words;
}

const numbersKnown = new Map<string, boolean>();

export function isNumber({ text }: Pick<Token, "text">): boolean {
  let known = numbersKnown.get(text);
  if (known === undefined) numbersKnown.set(text, (known = /^\d/.test(text) || readNumber([{ text, stem: text, word: 0, after: "" }], 0) !== null));
  return known;
}
