import type { Transcript } from "../transcript/types.ts";
import { MARK, type Token } from "./token.ts";

/** Tokens `first` up to, not including, `end`. */
export interface TokenSpan {
  first: number;
  end: number;
}

export interface Clause extends TokenSpan {
  /** A full stop, a question or exclamation mark ends it. */
  closed: boolean;
}

/** Seconds of silence inside a caption's run that end a sentence all the same. Common practice in captioning, no source. */
const SENTENCE_PAUSE = 1;
/** A share of words before a mark of punctuation from which a text counts as punctuated; running English has about one in seven (from memory). */
const PUNCTUATED_SHARE = 0.04;

export function isPunctuated(tokens: readonly Token[]): boolean {
  return tokens.filter((token) => token.mark >= MARK.stop).length >= tokens.length * PUNCTUATED_SHARE;
}

/**
 * True when a new segment also starts a new sentence. In punctuated captions a sentence may run on
 * over the border of two cues; elsewhere a border is all there is to go by.
 */
export function segmentBreaks(transcript: Transcript, left: Token, right: Token, punctuated: boolean): boolean {
  if (!right.opensSegment) return false;
  const before = transcript.words[left.word]!;
  const after = transcript.words[right.word]!;
  const a = transcript.segments[before.segment]!;
  const b = transcript.segments[after.segment]!;
  if (a.speaker !== b.speaker || a.inStation !== b.inStation || !punctuated) return true;
  return a.end === null || b.start === null || b.start - a.end >= SENTENCE_PAUSE;
}

/** Sentences as the text itself sets them apart: by punctuation, by segments and by headings. They tile the tokens. */
export function clausesOf(transcript: Transcript, tokens: readonly Token[]): Clause[] {
  const punctuated = isPunctuated(tokens);
  const headed = new Set(transcript.headings.map((heading) => heading.beforeWord));
  const clauses: Clause[] = [];
  let first = 0;
  tokens.forEach((token, at) => {
    const next = tokens[at + 1];
    const closed = token.mark >= MARK.stop;
    const breaks = closed || next === undefined || segmentBreaks(transcript, token, next, punctuated) || headed.has(next.word);
    if (!breaks) return;
    clauses.push({ first, end: at + 1, closed });
    first = at + 1;
  });
  return clauses;
}

/** The clause of every token. */
export function clauseIndex(clauses: readonly Clause[]): Int32Array {
  const index = new Int32Array(clauses[clauses.length - 1]?.end ?? 0);
  clauses.forEach((clause, at) => index.fill(at, clause.first, clause.end));
  return index;
}
