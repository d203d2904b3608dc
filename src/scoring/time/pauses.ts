import { tenths } from "../rounding.ts";
import type { Station } from "../../station/types.ts";
import type { Seconds } from "../../transcript/types.ts";
import type { Measured, TimeResult } from "../types.ts";
import { NO_TIMES } from "./pace.ts";

/**
 * A silence of this length between any two people's words is a pause worth a line. Shorter ones are turn taking and
 * breath: gaps between turns are of the order of 0.2 s (Levinson and Torreira 2015, "Timing in turn-taking and its
 * implications for processing models of language", Frontiers in Psychology 6:731). Ten times that is silence to anybody.
 */
export const PAUSE: Seconds = 2;
const MOST_LISTED = 3;
/** Pauses are told where the file gives at least this share of the ends of its stretches: a caption without an end is a slip, a paragraph without one a habit. Judgement. */
const ENDS_GIVEN = 0.8;

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

interface Stretch {
  start: Seconds;
  end: Seconds;
  /** Whether the file itself gives the start, and the end. */
  startGiven: boolean;
  endGiven: boolean;
}

function wordEdges(station: Station) {
  return gaps(station.transcript.words.flatMap(({ start, end, timing }) => (start === null || end === null ? [] : [{ start, end, startGiven: timing === "measured", endGiven: timing === "measured" }])));
}

/** Null where the file gives hardly any ends: a pause or two would then be said of a whole station. */
function segmentEdges(station: Station) {
  const stretches = station.transcript.segments.flatMap(({ start, end, timing, edgeGiven }) =>
    start === null || end === null ? [] : [{ start, end, startGiven: timing === "measured" || edgeGiven === "start", endGiven: timing === "measured" || edgeGiven === "end" }],
  );
  // Of several voices in one cue only the last ends where the file says; between them there is nothing to measure.
  const { segments } = station.transcript;
  const ends = segments.filter((_, place) => segments[place + 1]?.shares !== true).length;
  return stretches.filter(({ endGiven }) => endGiven).length >= ends * ENDS_GIVEN && ends > 0 ? gaps(stretches) : null;
}

/**
 * Silence between the latest end so far and the next start: people who talk at once leave none. A stretch whose time is
 * only estimated fills its place, but no silence is measured from it.
 */
function gaps(stretches: Stretch[]): { from: Seconds; to: Seconds }[] {
  const found: { from: Seconds; to: Seconds }[] = [];
  let latest: Stretch | null = null;
  for (const stretch of [...stretches].sort((a, b) => a.start - b.start)) {
    if (latest !== null && stretch.start > latest.end && latest.endGiven && stretch.startGiven) found.push({ from: latest.end, to: stretch.start });
    if (latest === null || stretch.end >= latest.end) latest = stretch;
  }
  return found;
}
