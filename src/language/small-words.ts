import smallData from "./lexicon/small-words.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";

const LEXICON = smallData as LexiconFile<"small-words">;
const MEANT = new Map(Object.entries(LEXICON.meant));
/** By the word heard. */
const BESIDE = new Map<string, (typeof LEXICON.beside)[number][]>();
for (const entry of LEXICON.beside) BESIDE.set(entry.heard, [...(BESIDE.get(entry.heard) ?? []), entry]);
const DENIALS = new Set(["not", "no", "never", "nor"]);

/** A written word read as the small word that was meant. */
export interface SmallWord {
  /** As written, but for the word itself: marks behind it stay. */
  text: string;
  /** It denies: the meaning hangs on what was heard. */
  denies: boolean;
}

/**
 * @param written a word of the transcript.
 * @param previous,next the words beside it, as written; none where somebody else speaks.
 * @returns null when it stands for itself.
 */
export function smallWordOf(written: string, previous = "", next = ""): SmallWord | null {
  const [, word, behind] = /^([A-Za-z]+)([.,;:?!]*)$/.exec(written) ?? [];
  if (word === undefined) return null;
  const heard = word.toLowerCase();
  const meant = MEANT.get(heard) ?? BESIDE.get(heard)?.find((entry) => (entry.previous?.includes(previous.toLowerCase()) ?? true) && (behind === "" || entry.next === undefined) && (entry.next?.includes(bare(next)) ?? true))?.meant;
  return meant === undefined ? null : { text: meant + behind!, denies: DENIALS.has(meant) };
}

/** Without the marks behind it; those behind the word before part the two. */
const bare = (written: string) => written.toLowerCase().replace(/[.,;:?!]+$/, "");
