import type { LexiconFile } from "./lexicon/schema.ts";
import lookup from "./lexicon/lookup.json" with { type: "json" };
import { keysIn, type Lookup } from "./lexicon/lookup.ts";
import weightData from "./lexicon/weights.yaml";
import { PhraseSet } from "./phrase-set.ts";
import { stem } from "./stem.ts";

// Their form is checked at build and by the tests (lexicon/schema.ts).
const LOOKUP = lookup as unknown as Lookup;
const WEIGHTS = weightData as LexiconFile<"weights">;

/**
 * What a word or phrase stands for: "s12" (words that are the same) and "n5" (near) of synonyms.yaml hold both ways;
 * "w7" (sure) and "l3" (likely) of wordings.yaml one way: whoever says the alternative may mean the head.
 */
export type ConceptKey = string;

/** How surely what is heard stands for a word of the rubric. */
export const QUALITY = { same: 0.95, near: 0.7, sure: 0.9, likely: 0.65 } as const;
const QUALITY_OF: Record<string, number> = { s: QUALITY.same, n: QUALITY.near, w: QUALITY.sure, l: QUALITY.likely };

export function qualityOf(key: ConceptKey): number {
  return QUALITY_OF[key.charAt(0)]!;
}

const NONE: readonly ConceptKey[] = [];
const known = { written: new Map<string, readonly ConceptKey[]>(), spoken: new Map<string, readonly ConceptKey[]>() };

function keysOf(side: "written" | "spoken", stemmed: string): readonly ConceptKey[] {
  if (!Object.hasOwn(LOOKUP[side], stemmed)) return NONE;
  let keys = known[side].get(stemmed);
  if (keys === undefined) known[side].set(stemmed, (keys = keysIn(LOOKUP[side], stemmed)));
  return keys;
}

/** What a stem of a rubric may be found by, beside itself. */
export function conceptsOf(stemmed: string): readonly ConceptKey[] {
  return keysOf("written", stemmed);
}

/** What a stem that was heard may stand for, beside itself. */
export function meaningsOf(stemmed: string): readonly ConceptKey[] {
  return keysOf("spoken", stemmed);
}

/** Entries of several words, in a rubric and in speech. */
export const lexiconPhrases = PhraseSet.prepared(LOOKUP.writtenPhrases, { gaps: true });
export const heardPhrases = PhraseSet.prepared(LOOKUP.spokenPhrases, { gaps: true });

const silent = new Set(WEIGHTS.silent.map((word) => stem(word)));
const light = new Set(WEIGHTS.light.map((word) => stem(word)));

const direction = new Set(WEIGHTS.direction.map((word) => stem(word)));

/** Words that tell which way: small, but they turn the sense. */
export function isDirection(stemmed: string): boolean {
  return direction.has(stemmed);
}

const LIGHT_WEIGHT = 0.35;

/** 0 for words that carry nothing by themselves, a little for words of place and time, else 1. */
export function wordWeight(stemmed: string): number {
  if (silent.has(stemmed)) return 0;
  return light.has(stemmed) ? LIGHT_WEIGHT : 1;
}
