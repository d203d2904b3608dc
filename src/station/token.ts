import type { Transcript } from "../transcript/types.ts";

/** What stands after a token. `none` in speech-to-text without punctuation. */
export const MARK = { none: 0, comma: 1, stop: 2, question: 3 } as const;
export type Mark = (typeof MARK)[keyof typeof MARK];

/** One spoken word as the role model sees it. */
export interface Token {
  /** Its place in `Transcript.words`. */
  word: number;
  /** Lower case, straight apostrophes, no outer punctuation: "don't", "50-year-old". */
  norm: string;
  /** 32-bit hash of `norm`. */
  hash: number;
  /** 32-bit hash of the last three letters, a cheap stand-in for the part of speech of unseen words. */
  suffix: number;
  /** The punctuation between this token and the next. */
  mark: Mark;
  /** True for the first token of a segment. */
  opensSegment: boolean;
  /** True when the sentence's end is an abbreviation's or an initial's dot, so no sentence ends here. */
  abbreviation: boolean;
}

// Written with a dot in the middle of a sentence. Common English, no source.
const ABBREVIATIONS = new Set(["dr", "mr", "mrs", "ms", "prof", "st", "vs", "etc", "e.g", "i.e", "approx", "no.", "fig", "a.m", "p.m"]);
// An abbreviation that may well end a sentence: it does when a capital follows.
const MAY_END = new Set(["etc", "a.m", "p.m", "approx"]);

/** FNV-1a (Fowler, Noll, Vo), 32 bits, over UTF-16 code units. */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return hash | 0;
}

const NOT_WORD = /^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu;

/** The bare word, or "" for lone punctuation. */
export function normalise(text: string): string {
  return text.replace(/[‘’ʼ`]/g, "'").replace(NOT_WORD, "").toLowerCase();
}

function markOf(tail: string): Mark {
  if (tail.includes("?")) return MARK.question;
  if (/[.!…]/.test(tail)) return MARK.stop;
  return /[,;:\-–—]/.test(tail) ? MARK.comma : MARK.none;
}

/** The punctuation at the end of a written word, quotes and brackets included: `said."` gives `."`. */
function tailOf(text: string): string {
  return /[^\p{L}\p{N}]*$/u.exec(text)?.[0] ?? "";
}

function isAbbreviation(norm: string, tail: string, next: string | undefined): boolean {
  if (!tail.startsWith(".") || tail.startsWith("..")) return false;
  const dotted = ABBREVIATIONS.has(norm) || /^(?:\p{L}\.)+\p{L}$/u.test(norm);
  if (dotted) return !(MAY_END.has(norm) && next !== undefined && /^\p{Lu}/u.test(next));
  return false;
}

/**
 * The spoken words of a transcript. Lone punctuation (" , ") is given to the word before it,
 * marks of noise and of unintelligible speech are passed over.
 */
export function tokenise(transcript: Transcript): Token[] {
  const tokens: Token[] = [];
  let segment = -1;
  for (const word of transcript.words) {
    if (word.kind !== "word") continue;
    const norm = normalise(word.text);
    const before = tokens[tokens.length - 1];
    if (norm === "") {
      if (before !== undefined && before.mark < markOf(word.text)) before.mark = markOf(word.text);
      continue;
    }
    const tail = tailOf(word.text);
    const abbreviation = isAbbreviation(norm, tail, transcript.words[word.index + 1]?.text);
    tokens.push({
      word: word.index,
      norm,
      hash: hashText(norm),
      suffix: hashText(`~${norm.slice(-3)}`),
      mark: abbreviation ? MARK.none : markOf(tail),
      opensSegment: word.segment !== segment,
      abbreviation,
    });
    segment = word.segment;
  }
  return tokens;
}
