import { tenths } from "../rounding.ts";
import type { Station } from "../../station/types.ts";
import type { Seconds, Word } from "../../transcript/types.ts";
import { evidenceOf } from "../evidence.ts";
import type { Measured, TimeResult } from "../types.ts";
import { overallPace, paceCurve, talkingPace, timeUsed } from "./pace.ts";
import { pausesOf } from "./pauses.ts";
import { spokenBy, utteredBy } from "./spoken.ts";
import { fillersOf, readingGrade, technicalWordsOf } from "./wording.ts";

/** Every figure of time and wording that needs no rubric but its limit and target. */
export function timeFigures(station: Station, { limit, target }: { limit: Seconds; target: Seconds }): TimeResult {
  const candidate = spokenBy(station, "candidate");
  const patient = spokenBy(station, "patient");
  const used = timeUsed(station);
  const over = (than: Seconds): Measured<Seconds> => (used.value === null ? used : { value: tenths(used.value - than), estimated: used.estimated });
  const both = candidate.length + patient.length;
  return {
    limit,
    target,
    used,
    overTarget: over(target),
    overLimit: over(limit),
    wordsPerMinute: overallPace(candidate, used),
    articulation: talkingPace(utteredBy(station, "candidate")),
    curve: paceCurve(station, candidate),
    candidateWords: candidate.length,
    patientWords: patient.length,
    patientShare: both === 0 ? null : Math.round((1000 * patient.length) / both) / 1000,
    pauses: pausesOf(station),
    fillers: fillersOf(candidate),
    technicalWords: technicalWordsOf(station, candidate, patient),
    readingGrade: readingGrade(candidate),
    afterLimit: afterLimit(station, candidate, limit),
  };
}

function afterLimit(station: Station, candidate: readonly Word[], limit: Seconds): TimeResult["afterLimit"] {
  if (station.start.time === null) return null;
  const end = station.start.time + limit;
  const late = candidate.filter((word) => word.start !== null && word.start >= end);
  if (late.length === 0) return null;
  const evidence = [];
  for (let place = 0; place < late.length; ) {
    let next = place + 1;
    while (next < late.length && late[next]!.index === late[next - 1]!.index + 1) next += 1;
    evidence.push(evidenceOf(station, { first: late[place]!.index, end: late[next - 1]!.index + 1 }));
    place = next;
  }
  return { evidence, words: late.length, items: [] };
}
