import type { Finding } from "../problem/problem.ts";
import type { Rubric } from "../rubric/schema.ts";
import type { Sentence, Station } from "../station/types.ts";
import { showClock } from "../transcript/clock.ts";
import type { Correction, Corrections, HeardUnsafe, UnsafeCorrection } from "./corrections.ts";
import { evidenceOf } from "./evidence.ts";
import type { HeardAt, StatementResult } from "./types.ts";

/*
 * An unsafe statement is the mark that a person must be able to add: the recogniser may have written something else, or
 * nothing at all, where it was said. So the person gives the place by ear, and the sheet shows what the transcript has there.
 */

/** A place by ear, or a time estimated between two of the file, is off by so much; common practice, no source. */
const BY_EAR = 3;
/** Nobody is so far off: a place further from all talk of the station is a slip of the pen. */
const FARTHEST = 30;

type Heard = UnsafeCorrection & HeardUnsafe;

const isHeard = (correction: Correction): correction is Heard => "unsafe" in correction && correction.content === "said";

/** Places that no talk of the station is near to, each with its line of the corrections. */
export function heardFaults({ file, corrections }: Corrections, station: Station): Finding[] {
  return corrections.filter(isHeard).flatMap(({ at, unsafe, line }): Finding[] => {
    if (sentenceHeard(station, at) !== null) return [];
    const timed = station.transcript.words.some(({ start }) => start !== null);
    const { start, end } = station;
    const [message, mend] =
      "time" in at && !timed
        ? ["the transcript has no times", "Write 'at: line 12', with the line of the transcript."]
        : "time" in at
          ? [`nobody speaks at ${showClock(at.time)} in the station${start.time === null || end.time === null ? "" : `, which runs from ${showClock(start.time)} to ${showClock(end.time)}`}`, "Write the time of the recording at which it is heard."]
          : [`line ${at.line} of the transcript has no words of the station`, "Write the line of the transcript in which it stands, or should."];
    return [{ code: "SW-M02", severity: "error", file, line, message: `'${unsafe}': ${message}`, mend }];
  });
}

/**
 * What was found, less what a person did not hear, and with what a person did. What stands by the person's word and by
 * the tool's alike keeps the tool's places too; what the tool left to a listener or took for put right is the person's to say.
 */
export function withHeard(found: readonly StatementResult[], corrections: readonly Correction[], station: Station, rubric: Rubric): StatementResult[] {
  const own = corrections.filter((correction) => "unsafe" in correction);
  if (own.length === 0) return [...found];
  const kept = found.filter(({ id, corrected, listen }) => {
    const correction = own.find(({ unsafe }) => unsafe === id);
    return correction === undefined || (correction.content === "said" && !correction.corrected && !corrected && !listen);
  });
  const heard = own.filter(isHeard).map(({ unsafe, at, corrected, by, when }): StatementResult => {
    const { label, severity } = rubric.unsafe.find(({ id }) => id === unsafe)!;
    const sentence = sentenceHeard(station, at)!;
    const evidence = found.find(({ id, evidence: { first, end } }) => id === unsafe && first < sentence.end && sentence.first < end)?.evidence ?? evidenceOf(station, sentence);
    return { id: unsafe, label, severity, evidence, confidence: 1, corrected, listen: false, overruled: { by, when, at } };
  });
  const elsewhere = kept.filter(({ id, evidence }) => !heard.some((other) => other.id === id && other.evidence.first === evidence.first));
  return [...elsewhere, ...heard].sort((a, b) => a.evidence.first - b.evidence.first);
}

/** The sentence that a person means: of those at hand the candidate's, who may as well have been taken for the patient. Null where nobody speaks near by. */
function sentenceHeard({ sentences, transcript: { words } }: Station, at: HeardAt): Sentence | null {
  const away = (sentence: Sentence): number => {
    if ("line" in at) return words.slice(sentence.first, sentence.end).some(({ line }) => line === at.line) ? 0 : Infinity;
    const [start, end] = [words[sentence.first]?.start ?? null, words[sentence.end - 1]?.end ?? words[sentence.end - 1]?.start ?? null];
    return start === null || end === null ? Infinity : Math.max(0, start - at.time, at.time - end);
  };
  const [nearest] = sentences
    .filter(({ inStation }) => inStation)
    .map((sentence) => ({ sentence, away: away(sentence), rank: away(sentence) + (sentence.role === "candidate" ? 0 : BY_EAR) }))
    .filter((one) => one.away <= FARTHEST)
    .sort((a, b) => a.rank - b.rank);
  return nearest?.sentence ?? null;
}
