import { hasGivenEnd, hasGivenStart } from "../transcript/given-times.ts";
import type { Seconds, Transcript, Word } from "../transcript/types.ts";
import type { Role, Sentence, Station } from "./types.ts";

/** The part of the file that a word stands in. */
export type Part = "before" | "station" | "after";

export function partOf(station: Station, word: number): Part {
  return word < station.start.word ? "before" : word < station.end.word ? "station" : "after";
}

/**
 * The time of a line of the label file, in seconds. `given`: the file's own, with its end where it gives one, for this
 * line and the ones behind it that share it. `estimated`: it lies in the interval of the line before. `none`: the file
 * has no time for it.
 */
export type LineTime = { kind: "given"; start: Seconds; end: Seconds | null } | { kind: "estimated"; start: Seconds } | { kind: "none" };

/** One line of the label file: words `first` up to, not including, `end`. */
export interface LabelLine {
  first: number;
  end: number;
  role: Role;
  part: Part;
  time: LineTime;
}

/** A turn longer than this many words is written sentence by sentence, so that a person can correct a part of it. */
const LONGEST_LINE_WORDS = 60;

/** Where the file times every word, a silence of this length, in seconds, parts two lines: so long ones are not lost, nor counted as talk (scoring/time/pace.ts). */
const SILENCE: Seconds = 0.75;

/**
 * A station's words as lines of one role, each inside one stretch of the file: no time that the file gives is lost,
 * and none that was estimated is given.
 */
export function linesOf(station: Station): LabelLine[] {
  const { transcript } = station;
  const lines: Omit<LabelLine, "time">[] = [];
  for (const sentence of station.sentences) {
    for (const piece of piecesOf(transcript, sentence)) {
      const line = { ...piece, role: sentence.role, part: partOf(station, piece.first) };
      const last = lines[lines.length - 1];
      const joins = last !== undefined && last.role === line.role && last.part === line.part && line.end - last.first <= LONGEST_LINE_WORDS && !isParted(transcript, line.first);
      if (joins) last.end = line.end;
      else lines.push(line);
    }
  }
  return lines.map((line, place) => ({ ...line, time: timeOf(transcript, lines, place) }));
}

/** The parts of a sentence that stand in different stretches of the file, or with a silence between them. */
function piecesOf(transcript: Transcript, { first, end }: Sentence): { first: number; end: number }[] {
  const pieces = [{ first, end: first + 1 }];
  for (let place = first + 1; place < end; place += 1) {
    if (isParted(transcript, place)) pieces.push({ first: place, end: place + 1 });
    else pieces[pieces.length - 1]!.end = place + 1;
  }
  return pieces;
}

/** Whether a word opens a stretch of the file, or comes after a silence that its times of words tell. */
function isParted({ words }: Transcript, place: number): boolean {
  const [before, word] = [words[place - 1]!, words[place]!];
  if (before.segment !== word.segment) return true;
  return before.timing === "measured" && word.timing === "measured" && word.start! - before.end! >= SILENCE;
}

function timeOf(transcript: Transcript, lines: readonly Omit<LabelLine, "time">[], place: number): LineTime {
  const { first } = lines[place]!;
  const start = startGiven(transcript, first);
  if (start !== null) {
    let last = place;
    while (last + 1 < lines.length && startGiven(transcript, lines[last + 1]!.first) === null && !opensUntimed(transcript, lines[last + 1]!.first)) last += 1;
    const end = endGiven(transcript, lines[last]!.end - 1);
    return { kind: "given", start, end: end !== null && end > start ? end : null };
  }
  const estimate = transcript.words[first]!.start;
  return estimate === null || opensUntimed(transcript, first) ? { kind: "none" } : { kind: "estimated", start: estimate };
}

/** Whether a word opens a stretch that has no time in the file and shares none. */
function opensUntimed({ words, segments }: Transcript, place: number): boolean {
  const segment = segments[words[place]!.segment]!;
  return segment.firstWord === place && segment.shares !== true;
}

/** The start that the file gives for this word, or for the stretch that it opens; else null. Seconds. */
export function startGiven({ words, segments }: Transcript, place: number): Seconds | null {
  const word: Word = words[place]!;
  if (word.timing === "measured") return word.start;
  const segment = segments[word.segment]!;
  return hasGivenStart(segment) && segment.firstWord === place ? segment.start : null;
}

/** The end that the file gives for this word, or for the stretch that it closes; else null. Seconds. */
export function endGiven({ words, segments }: Transcript, place: number): Seconds | null {
  const word: Word = words[place]!;
  if (word.timing === "measured") return word.end;
  const segment = segments[word.segment]!;
  return hasGivenEnd(segment) && segment.endWord === place + 1 ? segment.end : null;
}
