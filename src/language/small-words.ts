import smallData from "./lexicon/small-words.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";

const MEANT = new Map(Object.entries((smallData as LexiconFile<"small-words">).meant));
const DENIALS = new Set(["not", "no", "never", "nor"]);

/** A written word read as the small word that was meant. */
export interface SmallWord {
  /** As written, but for the word itself: marks behind it stay. */
  text: string;
  /** It denies: the meaning hangs on what was heard. */
  denies: boolean;
}

/** @param written a word of the transcript. @returns null when it stands for itself. */
export function smallWordOf(written: string): SmallWord | null {
  const [, word, behind] = /^([A-Za-z]+)([.,;:?!]*)$/.exec(written) ?? [];
  const meant = word === undefined ? undefined : MEANT.get(word.toLowerCase());
  return meant === undefined ? null : { text: meant + behind!, denies: DENIALS.has(meant) };
}
