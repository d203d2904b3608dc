import { syllable } from "syllable";

/*
 * Syllables of one written word. Letters by the package `syllable`, which agrees with the CMU Pronouncing Dictionary on
 * 92% of its words (tests/language/syllables.test.ts); the everyday words it gets wrong are put right here, by that
 * dictionary. Digits as they are spoken in British English, "120" as "a hundred and twenty".
 */

const PUT_RIGHT: Readonly<Record<string, number>> = {
  going: 2, doing: 2, being: 2, mr: 2, mrs: 2, dr: 2, else: 1, safety: 2, evening: 2, evenings: 2, bye: 1, goodbye: 2, squeeze: 1, squeezed: 1,
  nosebleed: 2, nosebleeds: 2, hour: 1, hours: 1, our: 1, ours: 1, ninety: 2, nineteen: 2, blocked: 1, lashes: 2, eyelashes: 3, drawer: 1,
  brilliant: 2, everything: 3, everybody: 4, everyone: 3, pushes: 2, ml: 4, mls: 4, mg: 4, mcg: 4, diabetes: 4, elements: 3, hm: 1, hmm: 1, mm: 1,
};

const UNDER_TWENTY = [2, 1, 1, 1, 1, 1, 1, 2, 1, 1, 1, 3, 1, 2, 2, 2, 2, 3, 2, 2] as const;
const TENS = [0, 0, 2, 2, 2, 2, 2, 3, 2, 2] as const;

/** Of a whole number below a million as it is said; longer ones digit by digit. */
function inNumber(digits: string): number {
  const value = Number(digits);
  if (digits.length > 6 || (digits.length > 1 && digits.startsWith("0"))) return [...digits].reduce((sum, digit) => sum + UNDER_TWENTY[Number(digit)]!, 0);
  if (value >= 1000) return inNumber(String(Math.floor(value / 1000))) + 2 + (value % 1000 === 0 ? 0 : (value % 1000 < 100 ? 1 : 0) + inNumber(String(value % 1000)));
  if (value >= 100) return UNDER_TWENTY[Math.floor(value / 100)]! + 2 + (value % 100 === 0 ? 0 : 1 + inNumber(String(value % 100)));
  if (value >= 20) return TENS[Math.floor(value / 10)]! + (value % 10 === 0 ? 0 : UNDER_TWENTY[value % 10]!);
  return UNDER_TWENTY[value]!;
}

/** "2.5": the point and each digit behind it. */
function inDecimal(written: string): number {
  const [whole = "", behind] = written.split(".");
  return inNumber(whole) + (behind === undefined ? 0 : 1 + [...behind].reduce((sum, digit) => sum + UNDER_TWENTY[Number(digit)]!, 0));
}

const known = new Map<string, number>();
/** Keeps the memory of a long batch small. */
const MOST_KNOWN = 20_000;

/**
 * How many syllables a written word is spoken with; punctuation around it does not matter. 0 for what holds neither
 * letter nor digit, else at least 1. Words come back again and again: each is counted once.
 */
export function syllablesIn(word: string): number {
  const seen = known.get(word);
  if (seen !== undefined) return seen;
  const count = counted(word);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(word, count);
  return count;
}

function counted(word: string): number {
  const plain = word.toLowerCase().replace(/[’‘]/gu, "'").replace(/(\d),(?=\d{3}\b)/gu, "$1");
  let count = 0;
  for (const [part] of plain.matchAll(/\d+(?:\.\d+)?|[\p{L}\p{M}']+/gu)) {
    if (/^\d/.test(part)) count += inDecimal(part);
    else if (/\p{L}/u.test(part)) {
      const bare = part.replace(/^'+|'+$/g, "");
      count += Object.hasOwn(PUT_RIGHT, bare) ? PUT_RIGHT[bare]! : Math.max(1, syllable(bare));
    }
  }
  return count;
}
