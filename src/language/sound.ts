import { doubleMetaphone } from "double-metaphone";
// A deep path: the whole of `natural` takes most of a second to load.
import jaroWinkler from "natural/lib/natural/distance/jaro-winkler_distance.js";

import homophones from "./homophones.json" with { type: "json" };

const HOMOPHONES: Record<string, string[]> = homophones;

/**
 * Trade words that sound just like this one (CMU Pronouncing Dictionary, by way of src/build/homophones.mjs): sound
 * codes are made for names and miss "knows" for "nose".
 */
export function homophonesOf(word: string): readonly string[] {
  return Object.hasOwn(HOMOPHONES, word) ? HOMOPHONES[word]! : [];
}

const cache = new Map<string, readonly string[]>();
const CACHE_LIMIT = 50_000;

/**
 * The sound keys of a word (Philips 2000, "The double metaphone search algorithm", C/C++ Users Journal 18(6)).
 * Not by `natural`, whose version drops letters: it codes "dispenser" as TPNSR (tests/language/sound.test.ts).
 * @param word lower case letters.
 */
export function soundKeys(word: string): readonly string[] {
  const known = cache.get(word);
  if (known !== undefined) return known;
  const [primary, secondary] = doubleMetaphone(word);
  const keys = primary === secondary ? [primary] : [primary, secondary];
  if (cache.size >= CACHE_LIMIT) cache.clear();
  cache.set(word, keys);
  return keys;
}

/** Shorter words collide with half the language. */
const SHORTEST = 4;
/** Words alike in sound must look alike this much too (Jaro-Winkler); set by hand on a few mis-heard words. */
const LEAST_LIKENESS = 0.72;

/** How much two words look alike: 0 to 1 (Jaro-Winkler; Winkler 1990). */
export function likeness(one: string, other: string): number {
  return jaroWinkler(one, other);
}

/** Finds which words of a small vocabulary a mis-heard word may have been. */
export class SoundIndex {
  private readonly byKey = new Map<string, string[]>();
  private readonly cache = new Map<string, readonly string[]>();

  constructor(vocabulary: Iterable<string>) {
    for (const word of vocabulary) {
      if (!canBeMisheard(word)) continue;
      for (const key of soundKeys(word)) {
        const list = this.byKey.get(key);
        if (list) list.push(word);
        else this.byKey.set(key, [word]);
      }
    }
  }

  /** Words of the vocabulary that sound like this one and look like it; none when it is too short. */
  alike(heard: string): readonly string[] {
    const known = this.cache.get(heard);
    if (known !== undefined) return known;
    const found = new Set<string>();
    if (canBeMisheard(heard)) {
      for (const key of soundKeys(heard)) {
        for (const word of this.byKey.get(key) ?? []) if (word !== heard && jaroWinkler(heard, word) >= LEAST_LIKENESS) found.add(word);
      }
    }
    const result = [...found];
    if (this.cache.size >= CACHE_LIMIT) this.cache.clear();
    this.cache.set(heard, result);
    return result;
  }
}

function canBeMisheard(word: string): boolean {
  return word.length >= SHORTEST && /^[a-z]+$/.test(word);
}
