// A deep path: the whole of `natural` takes most of a second to load.
import porter from "natural/lib/natural/stemmers/porter_stemmer.js";
import irregular from "./irregular.json" with { type: "json" };
import type { LexiconFile } from "./lexicon/schema.ts";
import stemsData from "./lexicon/stems.yaml";
import known from "./stems.json" with { type: "json" };

const IRREGULAR: Record<string, string> = irregular;
// Stems of the words of the lexicon and the shipped rubrics, worked out beforehand (src/build/stems.mjs): Porter's
// algorithm is slow while it is cold, and every start needs these words.
const KNOWN: Record<string, string> = known;
const KEPT_APART: ReadonlyMap<string, string> = new Map(Object.entries((stemsData as LexiconFile<"stems">).kept_apart).flatMap(([stemmed, words]) => words.map((word): [string, string] => [word, stemmed])));
const cache = new Map<string, string>();
/** Transcripts hold a few thousand distinct words; a cohort run must not grow without end. */
const CACHE_LIMIT = 50_000;

/**
 * The stem that inflections of one word share: "shaken", "shakes" and "shaking" are all "shake".
 * Porter's algorithm (Porter 1980, as `natural` has it) after irregular forms are put back to their base.
 * Numbers come back as they are.
 * @param word lower case, no punctuation.
 */
export function stem(word: string): string {
  const cached = cache.get(word) ?? (Object.hasOwn(KNOWN, word) ? KNOWN[word] : undefined);
  if (cached !== undefined) return cached;
  const result = computeStem(word);
  if (cache.size >= CACHE_LIMIT) cache.clear();
  cache.set(word, result);
  return result;
}

/** The same without any memory: what the table of known stems is made and tested by. */
export function computeStem(word: string): string {
  const apart = KEPT_APART.get(word);
  if (apart !== undefined) return apart;
  const base = Object.hasOwn(IRREGULAR, word) ? IRREGULAR[word]! : word;
  return /^[a-z]{3,}$/.test(base) ? porter.stem(base) : base;
}

/** Whether the lexicon or a shipped rubric uses the word: a word it does not may be somebody's name. */
export function isTradeWord(word: string): boolean {
  return Object.hasOwn(KNOWN, word);
}
