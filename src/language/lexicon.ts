import type { LexiconFile } from "./lexicon/schema.ts";
import synonymData from "./lexicon/synonyms.yaml";
import wordingData from "./lexicon/wordings.yaml";
import weightData from "./lexicon/weights.yaml";
import { PhraseSet } from "./phrase-set.ts";
import { stem } from "./stem.ts";
import { tokenise } from "./token.ts";

// Their form is checked at build and by the tests (lexicon/schema.ts).
const SYNONYMS = synonymData as LexiconFile<"synonyms">;
const WORDINGS = wordingData as LexiconFile<"wordings">;
const WEIGHTS = weightData as LexiconFile<"weights">;

/**
 * What a word or phrase stands for: "s12" (words that are the same) and "n5" (near) of synonyms.yaml hold both ways;
 * "w7" (sure) and "l3" (likely) of wordings.yaml one way: whoever says the alternative may mean the head.
 */
export type ConceptKey = string;

/** How surely what is heard stands for a word of the rubric. */
export const QUALITY = { same: 0.95, near: 0.7, sure: 0.9, likely: 0.75 } as const;
const QUALITY_OF: Record<string, number> = { s: QUALITY.same, n: QUALITY.near, w: QUALITY.sure, l: QUALITY.likely };

export function qualityOf(key: ConceptKey): number {
  return QUALITY_OF[key.charAt(0)]!;
}

const written = new Map<string, ConceptKey[]>();
const spoken = new Map<string, ConceptKey[]>();
const writtenPhrases: [string, ConceptKey][] = [];
const spokenPhrases: [string, ConceptKey][] = [];

function enter(map: Map<string, ConceptKey[]>, phrases: [string, ConceptKey][], entry: string, key: ConceptKey): void {
  // "hold-breath" names a set that has no single word; it is an entry for rubrics, never spoken.
  const stems = tokenise(entry.split(/\s+/)).map((token) => token.stem);
  if (stems.length !== 1) {
    phrases.push([entry, key]);
    return;
  }
  const known = map.get(stems[0]!);
  if (known === undefined) map.set(stems[0]!, [key]);
  else if (!known.includes(key)) known.push(key);
}

for (const [letter, sets] of [["s", SYNONYMS.same], ["n", SYNONYMS.near]] as const) {
  sets.forEach((entries, place) => {
    for (const entry of entries) {
      enter(written, writtenPhrases, entry, `${letter}${place}`);
      enter(spoken, spokenPhrases, entry, `${letter}${place}`);
    }
  });
}
for (const [letter, heads] of [["w", WORDINGS.sure], ["l", WORDINGS.likely]] as const) {
  Object.entries(heads).forEach(([head, alternatives], place) => {
    const key = `${letter}${place}`;
    // A word that surely stands for the head stands for what the head is the same as.
    const sets = letter === "w" && !head.includes(" ") ? (written.get(stem(head)) ?? []).filter((set) => set.startsWith("s")) : [];
    for (const alternative of alternatives) for (const each of [key, ...sets]) enter(spoken, spokenPhrases, alternative, each);
  });
}
for (const [letter, heads] of [["w", WORDINGS.sure], ["l", WORDINGS.likely]] as const) {
  Object.keys(heads).forEach((head, place) => {
    enter(written, writtenPhrases, head, `${letter}${place}`);
    if (head.includes(" ")) spokenPhrases.push([head, `${letter}${place}`]);
  });
}

/** What a stem of a rubric may be found by, beside itself. */
export function conceptsOf(stemmed: string): readonly ConceptKey[] {
  return written.get(stemmed) ?? [];
}

/** What a stem that was heard may stand for, beside itself. */
export function meaningsOf(stemmed: string): readonly ConceptKey[] {
  return spoken.get(stemmed) ?? [];
}

/** Entries of several words, in a rubric and in speech. */
export const lexiconPhrases = new PhraseSet<ConceptKey>(writtenPhrases, { gaps: true });
export const heardPhrases = new PhraseSet<ConceptKey>(spokenPhrases, { gaps: true });

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
