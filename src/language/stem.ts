// A deep path: the whole of `natural` takes most of a second to load.
import porter from "natural/lib/natural/stemmers/porter_stemmer.js";
import irregular from "./irregular.json" with { type: "json" };

const IRREGULAR: Record<string, string> = irregular;
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
  const known = cache.get(word);
  if (known !== undefined) return known;
  const base = Object.hasOwn(IRREGULAR, word) ? IRREGULAR[word]! : word;
  const result = /^[a-z]{3,}$/.test(base) ? apart(base, porter.stem(base)) : base;
  if (cache.size >= CACHE_LIMIT) cache.clear();
  cache.set(word, result);
  return result;
}

/** Porter makes "us" of "use" and "used": the pronoun and the verb must stay apart. */
function apart(base: string, stemmed: string): string {
  return stemmed === "us" && base !== "us" ? "use" : stemmed;
}
