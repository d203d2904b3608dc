import smallData from "./lexicon/small-words.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";

const LEXICON = smallData as LexiconFile<"small-words">;
const MEANT = new Map(Object.entries(LEXICON.meant));
/** By the word heard. */
const BESIDE = new Map<string, (typeof LEXICON.beside)[number][]>();
for (const entry of LEXICON.beside) BESIDE.set(entry.heard, [...(BESIDE.get(entry.heard) ?? []), entry]);
/** By the first word heard; those of more words first. */
const BROKEN = new Map<string, { words: readonly string[]; meant: string; previous: readonly string[] | undefined; next: readonly string[] | undefined }[]>();
for (const { heard, meant, previous, next } of LEXICON.broken) {
  for (const words of heard.map((phrase) => phrase.split(" "))) {
    BROKEN.set(words[0]!, [...(BROKEN.get(words[0]!) ?? []), { words, meant, previous, next }].sort((a, b) => b.words.length - a.words.length));
  }
}
const DENIALS = new Set(["not", "no", "never", "nor"]);

/** A written word read as the small word that was meant. */
export interface SmallWord {
  /** As written, but for the word itself: marks behind it stay. */
  text: string;
  /** It denies: the meaning hangs on what was heard. */
  denies: boolean;
}

/**
 * What was meant by each word of a transcript; null for those that stand for themselves, an empty text for what is the
 * rest of a word before it ("ever he day").
 * @param written words in order, as written.
 * @param turns the turn that each is of: nobody's words tell what somebody else's are.
 */
export function smallWordsOf(written: readonly string[], turns: readonly number[]): (SmallWord | null)[] {
  const meant: (SmallWord | null)[] = [];
  let before: string[] = [];
  for (let place = 0; place < written.length; place += 1) {
    if (turns[place] !== turns[place - 1]) before = [];
    const behind = (other: number) => (turns[other] === turns[place] ? (written[other] ?? "") : "");
    const [twoBefore = "", previous = ""] = before.length > 1 ? before : ["", ...before];
    const whole = brokenAt(written, place, behind, previous, twoBefore);
    const small = whole ?? smallWordOf(written[place]!, previous, behind(place + 1), twoBefore);
    meant.push(small);
    if (whole !== null) {
      for (let rest = 1; rest < whole.words; rest += 1) meant.push({ text: "", denies: false });
      place += whole.words - 1;
    }
    before = [previous, small?.text ?? written[place]!];
  }
  return meant;
}

/** The word that is broken in pieces here, with the marks behind it, and how many words it was broken in. */
function brokenAt(written: readonly string[], place: number, beside: (other: number) => string, previous: string, twoBefore: string): (SmallWord & { words: number }) | null {
  for (const { words, meant, previous: needed, next } of BROKEN.get(bare(written[place]!)) ?? []) {
    const end = place + words.length;
    const last = beside(end - 1);
    if (!words.every((word, piece) => (piece === words.length - 1 ? bare(last) : beside(place + piece).toLowerCase()) === word)) continue;
    const behind = last.slice(bare(last).length);
    if (next !== undefined && (behind !== "" || !next.includes(bare(beside(end))))) continue;
    if (needed !== undefined && !isBehind(needed, previous, twoBefore)) continue;
    return { text: meant + behind, denies: false, words: words.length };
  }
  return null;
}

const isBehind = (previous: readonly string[], before: string, twoBefore: string) => previous.includes(before.toLowerCase()) || previous.includes(`${twoBefore} ${before}`.toLowerCase());

/**
 * @param written a word of the transcript.
 * @param previous,next the words beside it, as written; none where somebody else speaks.
 * @param twoBefore the word before the previous one.
 * @returns null when it stands for itself.
 */
export function smallWordOf(written: string, previous = "", next = "", twoBefore = ""): SmallWord | null {
  const [, word, behind] = /^([A-Za-z]+)([.,;:?!]*)$/.exec(written) ?? [];
  if (word === undefined || (word.length === 1 && LETTER.test(bare(next)))) return null;
  const heard = word.toLowerCase();
  const meant = MEANT.get(heard) ?? BESIDE.get(heard)?.find((entry) => (entry.previous === undefined || isBehind(entry.previous, previous, twoBefore)) && (behind === "" || entry.next === undefined) && (entry.next?.includes(bare(next)) ?? true))?.meant;
  return meant === undefined ? null : { text: meant + behind!, denies: DENIALS.has(meant) };
}

/** Before one of these a single letter is spelled out ("the i n r"), and no word; "a" and "i" are words themselves. */
const LETTER = /^[b-hj-z]$/;

/** Without the marks behind it; those behind the word before part the two. */
const bare = (written: string) => written.toLowerCase().replace(/[.,;:?!]+$/, "");
