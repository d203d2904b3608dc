import { syllable } from "syllable";
import type { DraftWord } from "./draft.ts";

/** What a noise or an unheard word weighs beside speech: something was there, for about a short word's time. */
const MARK_SYLLABLES = 2;

/**
 * Syllables a second where the file itself tells nothing: about 260 a minute in British English conversation.
 * Source: Tauroza and Allison, Speech rates in British English, Applied Linguistics 11, 1990 (figure from memory).
 */
export const USUAL_PACE = 260 / 60;
const known = new Map<string, number>();
/** Keeps the memory of a long batch small. */
const MOST_KNOWN = 20_000;

/**
 * How many syllables a word is spoken with, at least 0 (a lone dash). Letters by the package `syllable`;
 * digits by their number (8: one, 12: three, 250: five), which is near enough for sharing out a few seconds.
 */
export function syllablesOf(word: DraftWord): number {
  if (word.kind !== "word") return MARK_SYLLABLES;
  const seen = known.get(word.text);
  if (seen !== undefined) return seen;
  const letters = word.text.replace(/[\p{N}]+/gu, " ");
  const digits = (word.text.match(/[\p{N}]+/gu) ?? []).reduce((sum, run) => sum + 2 * run.length - 1, 0);
  const spoken = /\p{L}/u.test(letters) ? Math.max(1, syllable(letters)) : 0;
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(word.text, spoken + digits);
  return spoken + digits;
}
