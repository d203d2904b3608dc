import type { Transcript } from "../transcript/types.ts";
import { wordClass } from "./word-class.ts";

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
  /** Its closed class, see word-class.ts. */
  wordClass: number;
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

/** What a written word's letters tell, whoever says it and wherever. */
interface WordForm {
  norm: string;
  hash: number;
  suffix: number;
  wordClass: number;
  tail: string;
  mark: Mark;
}

function formOf(text: string): WordForm {
  const norm = normalise(text);
  const tail = tailOf(text);
  return { norm, hash: hashText(norm), suffix: hashText(`~${norm.slice(-3)}`), wordClass: wordClass(norm), tail, mark: markOf(norm === "" ? text : tail) };
}

/**
 * The spoken words of a transcript. Lone punctuation (" , ") is given to the word before it,
 * marks of noise and of unintelligible speech are passed over.
 */
export function tokenise(transcript: Transcript): Token[] {
  const tokens: Token[] = [];
  // Speech uses few different words, so each is taken apart once.
  const forms = new Map<string, WordForm>();
  let segment = -1;
  for (const word of transcript.words) {
    if (word.kind !== "word") continue;
    let form = forms.get(word.text);
    if (form === undefined) {
      form = formOf(word.text);
      forms.set(word.text, form);
    }
    const { norm, hash, suffix, tail, mark } = form;
    const before = tokens[tokens.length - 1];
    if (norm === "") {
      if (before !== undefined && before.mark < mark) before.mark = mark;
      continue;
    }
    const abbreviation = tail !== "" && isAbbreviation(norm, tail, transcript.words[word.index + 1]?.text);
    tokens.push({
      word: word.index,
      norm,
      hash,
      suffix,
      wordClass: form.wordClass,
      mark: abbreviation ? MARK.none : mark,
      opensSegment: word.segment !== segment,
      abbreviation,
    });
    segment = word.segment;
  }
  return tokens;
}
