import type { Matches } from "../matching/types.ts";
import type { Rubric } from "../rubric/schema.ts";
import type { Station, WordSpan } from "../station/types.ts";
import type { Seconds } from "../transcript/types.ts";
import { evidenceOf } from "./evidence.ts";
import type { Evidence } from "./types.ts";

/** What every part of the sheet is worked out from. */
export interface Context {
  station: Station;
  rubric: Rubric;
  matches: Matches;
  limit: Seconds;
  target: Seconds;
  /** First word after the time limit; `Infinity` when nothing came after it or there are no times. */
  lateWord: number;
  evidence: (span: WordSpan) => Evidence;
}

export function contextOf(station: Station, rubric: Rubric, matches: Matches, limit: Seconds, target: Seconds): Context {
  return { station, rubric, matches, limit, target, lateWord: firstLateWord(station, limit), evidence: (span) => evidenceOf(station, span) };
}

function firstLateWord(station: Station, limit: Seconds): number {
  const { start, end, transcript } = station;
  if (start.time === null) return Infinity;
  const late = transcript.words.findIndex((word) => word.index >= start.word && word.index < end.word && word.start !== null && word.start >= start.time! + limit);
  return late < 0 ? Infinity : late;
}
