import type { Station } from "../../station/types.ts";
import type { Seconds } from "../../transcript/types.ts";
import type { Measured, TimeResult } from "../types.ts";
import { NO_TIMES, tenths } from "./pace.ts";

/**
 * A silence of this length between any two people's words is a pause worth a line. Shorter ones are turn taking and
 * breath: gaps between speakers lie mostly under a second (Heldner and Edlund 2010, Journal of Phonetics 38; from memory).
 */
export const PAUSE: Seconds = 2;
const MOST_LISTED = 3;

/** Silences inside the station, where the file gives a measured end and a measured next start. */
export function pausesOf(station: Station): TimeResult["pauses"] {
  const { transcript, start, end } = station;
  if (transcript.timing === "none" || start.time === null) return { value: null, why: NO_TIMES };
  const edges = transcript.timing === "word" ? wordEdges(station) : segmentEdges(station);
  if (edges === null) return notMeasurable();
  const inside = edges.filter(({ from, to }) => from >= start.time! && to <= (end.time ?? Infinity));
  const pauses = inside.map(({ from, to }) => ({ at: tenths(from), seconds: tenths(to - from) })).filter(({ seconds }) => seconds >= PAUSE);
  return {
    value: { count: pauses.length, seconds: tenths(pauses.reduce((sum, { seconds }) => sum + seconds, 0)), longest: [...pauses].sort((a, b) => b.seconds - a.seconds).slice(0, MOST_LISTED) },
    estimated: false,
  };
}

function notMeasurable(): Measured<never> {
  return { value: null, why: "the file gives starts of paragraphs, but not their ends" };
}

function wordEdges(station: Station) {
  const words = station.transcript.words.filter((word) => word.start !== null && word.end !== null);
  return gaps(words.filter((word) => word.timing === "measured").map((word) => ({ start: word.start!, end: word.end! })));
}

function segmentEdges(station: Station) {
  const { segments } = station.transcript;
  if (segments.some(({ timing }) => timing !== "measured")) return null;
  return gaps(segments.flatMap(({ start, end }) => (start === null || end === null ? [] : [{ start, end }])));
}

/** Silence between the latest end so far and the next start: people who talk at once leave none. */
function gaps(stretches: { start: Seconds; end: Seconds }[]): { from: Seconds; to: Seconds }[] {
  const found: { from: Seconds; to: Seconds }[] = [];
  let latest: Seconds | null = null;
  for (const { start, end } of [...stretches].sort((a, b) => a.start - b.start)) {
    if (latest !== null && start > latest) found.push({ from: latest, to: start });
    latest = Math.max(latest ?? end, end);
  }
  return found;
}
