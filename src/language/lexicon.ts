import type { LexiconFile } from "./lexicon/schema.ts";
import synonymData from "./lexicon/synonyms.yaml";
import weightData from "./lexicon/weights.yaml";
import { PhraseSet } from "./phrase-set.ts";
import { stem } from "./stem.ts";
import { tokenise } from "./token.ts";

// Their form is checked at build and by the tests (lexicon/schema.ts).
const SYNONYMS = synonymData as LexiconFile<"synonyms">;
const WEIGHTS = weightData as LexiconFile<"weights">;

/** A set of words that stand for one another, by its place in the lexicon: "s12" (same) or "n5" (near). */
export type ConceptKey = string;

const wordSets = new Map<string, ConceptKey[]>();
const phraseEntries: [string, ConceptKey][] = [];

for (const [letter, sets] of [["s", SYNONYMS.same], ["n", SYNONYMS.near]] as const) {
  sets.forEach((entries, place) => {
    const key = `${letter}${place}`;
    for (const entry of entries) {
      // "hold-breath" names a set that has no single word; it is an entry for rubrics, never spoken.
      const stems = tokenise(entry.split(/\s+/)).map((token) => token.stem);
      if (stems.length === 1) {
        const known = wordSets.get(stems[0]!);
        if (known === undefined) wordSets.set(stems[0]!, [key]);
        else if (!known.includes(key)) known.push(key);
      } else phraseEntries.push([entry, key]);
    }
  });
}

/** The sets that a stem belongs to by itself. */
export function conceptsOf(stemmed: string): readonly ConceptKey[] {
  return wordSets.get(stemmed) ?? [];
}

/** Entries of several words, found in tokens with their set. */
export const lexiconPhrases = new PhraseSet<ConceptKey>(phraseEntries, { gaps: true });

const silent = new Set(WEIGHTS.silent.map((word) => stem(word)));
const light = new Set(WEIGHTS.light.map((word) => stem(word)));

const direction = new Set(WEIGHTS.direction.map((word) => stem(word)));

/** Words that tell which way: small, but they turn the sense. */
export function isDirection(stemmed: string): boolean {
  return direction.has(stemmed);
}

/** How surely one word of a set stands for another. */
export const QUALITY = { same: 0.95, near: 0.7 } as const;

export function qualityOf(key: ConceptKey): number {
  return key.startsWith("s") ? QUALITY.same : QUALITY.near;
}

const LIGHT_WEIGHT = 0.35;

/** 0 for words that carry nothing by themselves, a little for words of place and time, else 1. */
export function wordWeight(stemmed: string): number {
  if (silent.has(stemmed)) return 0;
  return light.has(stemmed) ? LIGHT_WEIGHT : 1;
}
