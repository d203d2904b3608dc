// Figures by word and by sentence: predicted labels against the corpus's own tags.
import { MARK, tokenise } from "../../../src/station/token.ts";
import { strip, type Stripped } from "./strip.ts";
import type { Consultation } from "./corpora.ts";

/** A patient's sentence of at most so many words is a short reply, counted apart. */
export const SHORT_REPLY_WORDS = 3;

export interface Tally {
  consultations: number;
  words: number;
  right: number;
  candidateWords: number;
  longSentences: number;
  longRecalled: number;
  shortSentences: number;
  shortRecalled: number;
  /** Consultations where more than half of the words are wrong. */
  swapped: string[];
}

export function emptyTally(): Tally {
  return { consultations: 0, words: 0, right: 0, candidateWords: 0, longSentences: 0, longRecalled: 0, shortSentences: 0, shortRecalled: 0, swapped: [] };
}

/** True sentences: the written form's, cut where the turn ends. End (exclusive) of each, in spoken words. */
export function goldSentenceEnds(consultation: Consultation): number[] {
  const written = strip(consultation, "written");
  const tokens = tokenise(written.transcript);
  const ends: number[] = [];
  tokens.forEach((token, at) => {
    const next = tokens[at + 1];
    if (next === undefined || token.mark >= MARK.stop || written.turns[next.word] !== written.turns[token.word]) ends.push(at + 1);
  });
  return ends;
}

/** Adds one consultation. `labels`: 0 candidate, 1 patient, by token. */
export function add(tally: Tally, stripped: Stripped, labels: Uint8Array, ends: number[]): void {
  const gold = tokenise(stripped.transcript).map((token) => (stripped.sides[token.word] === "candidate" ? 0 : 1));
  let right = 0;
  gold.forEach((label, at) => {
    if (label === labels[at]) right++;
    if (label === 0) tally.candidateWords++;
  });
  tally.consultations++;
  tally.words += gold.length;
  tally.right += right;
  if (right * 2 < gold.length) tally.swapped.push(stripped.id);
  let from = 0;
  for (const end of ends) {
    if (gold[from] === 1) {
      let found = 0;
      for (let at = from; at < end; at++) found += labels[at]!;
      const recalled = found * 2 > end - from ? 1 : 0;
      if (end - from > SHORT_REPLY_WORDS) {
        tally.longSentences++;
        tally.longRecalled += recalled;
      } else {
        tally.shortSentences++;
        tally.shortRecalled += recalled;
      }
    }
    from = end;
  }
}

export function accuracy(tally: Tally): number {
  return tally.right / Math.max(1, tally.words);
}

export function recall(tally: Tally): number {
  return tally.longRecalled / Math.max(1, tally.longSentences);
}
