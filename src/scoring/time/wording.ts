import { findFillers } from "../../language/fillers.ts";
import { countText, fleschKincaidGrade } from "../../language/readability.ts";
import { stem } from "../../language/stem.ts";
import { unexplained } from "../../language/technical.ts";
import { tokenise } from "../../language/token.ts";
import { tenths } from "../rounding.ts";
import type { Station } from "../../station/types.ts";
import type { Word } from "../../transcript/types.ts";
import { evidenceOf } from "../evidence.ts";
import type { TimeResult } from "../types.ts";

const MOST_LISTED = 5;

/** Fillers by words of the candidate; their places are word positions of the transcript. */
export function fillerWords(words: readonly Word[]): { word: string; first: number; end: number }[] {
  const tokens = tokenise(words.map(({ text }) => text));
  return findFillers(tokens).map((hit) => ({ word: hit.value, first: words[tokens[hit.first]!.word]!.index, end: words[tokens[hit.end - 1]!.word]!.index + 1 }));
}

export function fillersOf(words: readonly Word[]): TimeResult["fillers"] {
  const found = fillerWords(words);
  const counts = new Map<string, number>();
  for (const { word } of found) counts.set(word, (counts.get(word) ?? 0) + 1);
  const commonest = [...counts].map(([word, count]) => ({ word, count })).sort((a, b) => b.count - a.count || a.word.localeCompare(b.word)).slice(0, MOST_LISTED);
  return { count: found.length, perHundredWords: words.length === 0 ? null : tenths((100 * found.length) / words.length), commonest };
}

export function technicalWordsOf(station: Station, candidate: readonly Word[], patient: readonly Word[]): TimeResult["technicalWords"] {
  const tokens = tokenise(candidate.map(({ text }) => text));
  const firstHeard = new Map<string, number>();
  for (const word of patient) {
    for (const token of tokenise([word.text])) if (!firstHeard.has(token.stem)) firstHeard.set(token.stem, word.index);
  }
  return unexplained(tokens, (place, stemmed) => (firstHeard.get(stem(stemmed)) ?? firstHeard.get(stemmed) ?? Infinity) < candidate[tokens[place]!.word]!.index).map(({ place, word, plain }) => {
    const { index } = candidate[tokens[place]!.word]!;
    return { word, evidence: evidenceOf(station, { first: index, end: index + 1 }), plain };
  });
}

/** Speech with a stop less often than this is not punctuated; one with more is cut to shreds. Words a sentence. */
const SENTENCE_LENGTH = { least: 3, most: 40 } as const;
/** A grade of fewer words swings with each of them (the formula was made on passages of 100 words and more). */
const FEWEST_WORDS = 100;

export function readingGrade(words: readonly Word[]): TimeResult["readingGrade"] {
  if (words.length < FEWEST_WORDS) return { value: null, why: `fewer than ${FEWEST_WORDS} words of the candidate` };
  const counts = countText(words.map(({ text }) => text));
  const perSentence = counts.words / Math.max(1, counts.sentences);
  if (perSentence > SENTENCE_LENGTH.most || perSentence < SENTENCE_LENGTH.least) return { value: null, why: "the transcript is not punctuated well enough to count sentences" };
  return { value: tenths(fleschKincaidGrade(counts)), estimated: false };
}
