import type { DraftWord } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import type { Seconds } from "./types.ts";
import { readWords } from "./words.ts";

/** One entry of a list of words. */
export interface ListedWord {
  text: string;
  line: number;
  start: Seconds | null;
  end: Seconds | null;
  confidence?: number;
  speaker: string | null;
  /** It opens a stretch, in what the label command writes. */
  stretch?: StretchMark;
}

/** Times that the file gives a stretch, seconds. `shares`: it lies in the interval of the one before. */
export interface StretchMark {
  start: Seconds | null;
  end: Seconds | null;
  shares: boolean;
}

export type SpokenWord = DraftWord & { speaker?: string | null; stretch?: StretchMark };

/** Below this share of words found again, a list of words and the text beside it are two different things. */
const LEAST_MATCHED = 0.5;
/** How far ahead, in words, the match between text and list looks for a word: recognisers split and join a few. */
const LOOK_AHEAD = 6;

/**
 * The words of a segment that may have text, a list of words, or both. The text wins where they differ, since it has
 * the punctuation; the list gives its words their times. A listed word that the text writes otherwise, or lacks, is told (SW-T16).
 */
export function joinWordList(text: { value: string; line: number } | undefined, listed: readonly ListedWord[], log: FindingLog): SpokenWord[] {
  if (text === undefined) return wordsOfList(listed, log);
  const words = stringWords(text.value, text.line, log);
  if (listed.length === 0) return words;
  // The same characters: the list is the text, cut into words by the recogniser itself.
  if (listed.map((word) => bare(word.text)).join("") === words.map((word) => bare(word.text)).join("") && listed.length === words.length) {
    return words.map((word, at) => ({ ...word, ...ownOf(listed[at] as ListedWord) }));
  }
  const matches = match(words, listed);
  const found = matches.filter((place) => place >= 0).length;
  if (found < LEAST_MATCHED * Math.min(words.length, listed.length)) {
    log.add({
      code: "SW-T17",
      severity: "warning",
      line: text.line,
      kind: "two texts",
      message: "the text of a segment and its list of words differ; the text was read and the times of the list were not used",
    });
    return words;
  }
  if (found < listed.length) {
    log.add({
      code: "SW-T16",
      severity: "info",
      line: text.line,
      kind: "word list",
      message: "some words of a segment's list are written otherwise in its text; the text was read and their times were estimated",
    });
  }
  return words.map((word, at) => {
    const entry = listed[matches[at] ?? -1];
    return entry === undefined ? word : { ...word, ...ownOf(entry) };
  });
}

/** Reads the list as one text, so that a mark may span entries, and pins each entry's times to its first and last word. */
function wordsOfList(listed: readonly ListedWord[], log: FindingLog): SpokenWord[] {
  const starts: number[] = [];
  let text = "";
  for (const entry of listed) {
    starts.push(text.length);
    text += `${entry.text.trim().replace(/\s+/g, " ")} `;
  }
  const words = readWords(text, listed[0]?.line ?? 1, log);
  let at = 0;
  return words.map(({ offset, ...word }, place): SpokenWord => {
    while (at + 1 < listed.length && (starts[at + 1] as number) <= offset) at += 1;
    const entry = listed[at] as ListedWord;
    const upTo = words[place + 1]?.offset ?? text.length;
    let last = at;
    while (last + 1 < listed.length && (starts[last + 1] as number) < upTo) last += 1;
    const begins = place === 0 || (words[place - 1]?.offset ?? -1) < (starts[at] as number);
    const ends = upTo >= (starts[at + 1] ?? text.length);
    const spoken: SpokenWord = { ...word, line: entry.line, speaker: entry.speaker };
    if (entry.confidence !== undefined) spoken.confidence = entry.confidence;
    if (begins && entry.stretch !== undefined) spoken.stretch = entry.stretch;
    if (begins && entry.start !== null) spoken.start = entry.start;
    const end = listed[last]?.end ?? null;
    if (ends && end !== null) spoken.end = end;
    return spoken;
  });
}

/** The words of a JSON string. A line end in it is an escape: all stay on the line of the string. */
export function stringWords(text: string, line: number, log: FindingLog): DraftWord[] {
  return readWords(text.replace(/[\r\n]+/g, " "), line, log).map(({ offset: _, ...word }) => word);
}

function ownOf(entry: ListedWord): Partial<SpokenWord> {
  return {
    line: entry.line,
    ...(entry.start === null ? {} : { start: entry.start }),
    ...(entry.end === null ? {} : { end: entry.end }),
    ...(entry.confidence === undefined ? {} : { confidence: entry.confidence }),
    ...(entry.speaker === null ? {} : { speaker: entry.speaker }),
    ...(entry.stretch === undefined ? {} : { stretch: entry.stretch }),
  };
}

/** For each word of the text the place of the same word in the list, in rising order, or -1. */
function match(words: readonly SpokenWord[], listed: readonly ListedWord[]): number[] {
  let next = 0;
  return words.map((word) => {
    const wanted = bare(word.text);
    for (let place = next; place < Math.min(listed.length, next + LOOK_AHEAD); place += 1) {
      if (wanted !== "" && bare((listed[place] as ListedWord).text) === wanted) {
        next = place + 1;
        return place;
      }
    }
    return -1;
  });
}

function bare(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "");
}
