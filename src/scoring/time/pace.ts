import { firstSpoken, lastSpoken } from "../../station/edges.ts";
import type { Station } from "../../station/types.ts";
import type { Seconds, Word } from "../../transcript/types.ts";
import { tenths } from "../rounding.ts";
import type { Measured, TimeResult } from "../types.ts";
import { endGiven, startGiven } from "./given.ts";
import { isEstimated, isSpokenWord } from "./spoken.ts";

export const NO_TIMES = "the transcript has no times";

/** Seconds from the station's first word to its last. */
export function timeUsed(station: Station): Measured<Seconds> {
  const [start, end] = [station.start.time, station.end.time];
  if (start === null || end === null) return { value: null, why: NO_TIMES };
  if (end <= start) return { value: null, why: "the station has no length" };
  return { value: tenths(end - start), estimated: edgesEstimated(station) };
}

function edgesEstimated({ transcript, start, end }: Station): boolean {
  return !startGiven(transcript, firstSpoken(transcript.words, start.word)) || !endGiven(transcript, lastSpoken(transcript.words, end.word));
}

/** Words a minute over a stretch of seconds. */
export function perMinute(words: number, seconds: Seconds): number {
  return (60 * words) / seconds;
}

/** The candidate's words over the whole station time. */
export function overallPace(words: readonly Word[], used: Measured<Seconds>): Measured<number> {
  if (used.value === null) return used;
  if (words.length === 0) return { value: null, why: "no words of the candidate were found" };
  return { value: tenths(perMinute(words.length, used.value)), estimated: used.estimated };
}

/**
 * Talking time: the candidate's own stretches, end to end. Inside a segment of the file, words that follow each other are
 * one stretch; a gap longer than this is a pause, and no talking. What the file sets apart is never joined.
 */
const TALKING_GAP: Seconds = 0.75;

export function talkingSeconds(words: readonly Word[]): Seconds | null {
  let seconds = 0;
  let from: Seconds | null = null;
  let to = 0;
  let segment = -1;
  for (const word of words) {
    if (word.start === null || word.end === null) return null;
    const follows = from !== null && word.start >= from && (word.start < to || (word.segment === segment && word.start - to <= TALKING_GAP));
    if (!follows) {
      if (from !== null) seconds += Math.max(0, to - from);
      from = word.start;
      to = word.end;
    } else to = Math.max(to, word.end);
    segment = word.segment;
  }
  return from === null ? null : seconds + Math.max(0, to - from);
}

/**
 * The candidate's words over the candidate's own talking time.
 * @param uttered words and unheard stretches: what could not be heard took time too.
 */
export function talkingPace(uttered: readonly Word[]): Measured<number> {
  const words = uttered.filter(isSpokenWord);
  if (words.length === 0) return { value: null, why: "no words of the candidate were found" };
  const seconds = talkingSeconds(uttered);
  if (seconds === null) return { value: null, why: NO_TIMES };
  if (seconds <= 0) return { value: null, why: "the candidate's talking time is nought" };
  return { value: tenths(perMinute(words.length, seconds)), estimated: isEstimated(words) };
}

/** One point of the curve covers so many seconds: a few sentences. */
export const CURVE_WINDOW: Seconds = 30;
/** A last window shorter than this says more of its edges than of the pace. */
const SHORTEST_WINDOW: Seconds = 10;

/** Candidate's words a minute in windows of CURVE_WINDOW from the start of the station; silence and others' turns count as time. */
export function paceCurve(station: Station, words: readonly Word[]): TimeResult["curve"] {
  const [start, end] = [station.start.time, station.end.time];
  if (start === null || end === null) return [];
  const curve: TimeResult["curve"] = [];
  for (let from = start; from < end; from += CURVE_WINDOW) {
    const to = Math.min(end, from + CURVE_WINDOW);
    if (to - from < SHORTEST_WINDOW && curve.length > 0) break;
    const inside = words.filter((word) => word.start !== null && word.start >= from && word.start < to).length;
    curve.push({ from: tenths(from), to: tenths(to), wordsPerMinute: Math.round(perMinute(inside, to - from)) });
  }
  return curve;
}
