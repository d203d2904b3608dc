import { showClock } from "../transcript/clock.ts";
import type { TokenSpan } from "./clauses.ts";
import { cuesOf, quote, wordAt, type Scene } from "./scene.ts";

/** One station's stretch of the recording, as told by what opens it. */
export interface Run extends TokenSpan {
  opener: "speech" | "announcement" | "heading" | "introduction";
  /** First token after the opener itself, where the station may start. */
  inside: number;
  /** For the sheet: "after the announcement 'you may begin' (line 4)". */
  reason: string;
}

/** Less speech than this between two openers is reading time or a false start, not a station. */
const SHORTEST_STATION_WORDS = 40;
/** A station that counts as one of several has at least so much conversation. */
const SHORTEST_OF_SEVERAL_WORDS = 60;
/** An introduction opens a station when a greeting is so near. */
const GREETING_REACH = 12;

const STATION_HEADING = /\b(?:station|scenario|case|rehearsal|attempt|practice)\s*(?:no\.?|number|#)?\s*(?:\d+|[a-d]\b|one|two|three|four|five|six)/i;

interface Opener {
  type: Run["opener"];
  first: number;
  inside: number;
  reason: string;
}

function openers(scene: Scene): Opener[] {
  const found: Opener[] = [];
  for (const span of scene.announcements) {
    const starts = span.kinds.includes("begin");
    if (starts) found.push({ type: "announcement", first: span.first, inside: span.end, reason: `after the announcement ${quote(scene, begins(scene, span))}` });
  }
  for (const heading of scene.transcript.headings) {
    if (!STATION_HEADING.test(heading.text)) continue;
    const at = scene.tokens.findIndex((token) => token.word >= heading.beforeWord);
    if (at >= 0) found.push({ type: "heading", first: at, inside: at, reason: `after the heading '${heading.text.trim()}' (line ${heading.line})` });
  }
  for (const cue of cuesOf(scene, ["introduction"])) {
    const greeting = cuesOf(scene, ["greeting"], Math.max(0, cue.first - GREETING_REACH), cue.first)[0];
    if (greeting !== undefined && scene.roles[cue.first] !== "patient") found.push({ type: "introduction", first: greeting.first, inside: greeting.first, reason: `at the introduction ${quote(scene, { first: greeting.first, end: cue.end + 1 })}` });
  }
  return found.sort((a, b) => a.first - b.first || (a.type === "heading" ? -1 : 1));
}

/** The cue inside an announcement that lets the candidate begin. */
function begins(scene: Scene, span: TokenSpan): TokenSpan {
  return cuesOf(scene, ["begin"], span.first, span.end)[0] ?? span;
}

/** A leave-taking or the end of the time stands in the stretch: the talk before was over. */
function closes(scene: Scene, first: number, end: number): boolean {
  return cuesOf(scene, ["leave_taking"], first, end).length > 0 || scene.announcements.some((span) => span.kinds.includes("stop") && span.first >= first && span.end <= end);
}

/** Words of the conversation, announcements apart. */
export function spokenWords(scene: Scene, first: number, end: number): number {
  const official = scene.announcements.reduce((sum, span) => sum + Math.max(0, Math.min(end, span.end) - Math.max(first, span.first)), 0);
  return end - first - official;
}

/**
 * The stations in the recording, one or several, in order. An announcement or a heading opens one; so does an
 * introduction after a leave-taking. Reading time and false starts are not stations.
 */
export function runsOf(scene: Scene, range: TokenSpan): Run[] {
  const runs: Run[] = [{ ...range, opener: "speech", inside: range.first, reason: "at the start of speech" }];
  for (const opener of openers(scene).filter((each) => each.first >= range.first && each.inside < range.end)) {
    const current = runs[runs.length - 1]!;
    const since = spokenWords(scene, current.inside, opener.first);
    const closed = closes(scene, current.inside, opener.first);
    const fresh: Run = { first: opener.first, end: range.end, opener: opener.type, inside: opener.inside, reason: opener.reason };
    if (opener.type === "introduction") {
      if (closed && since >= SHORTEST_STATION_WORDS) runs.push(fresh);
      continue;
    }
    // "You may begin" in the middle of a station that nothing has closed belongs to it (a second candidate's task, an echo).
    const startsAnother = current.opener !== "speech" && since >= SHORTEST_STATION_WORDS && (opener.type === "heading" || closed);
    const afterChat = current.opener === "speech" && since >= SHORTEST_OF_SEVERAL_WORDS && closed && introduced(scene, current.inside, opener.first);
    if (startsAnother || afterChat) runs.push(fresh);
    else if (current.opener === "speech" || since < SHORTEST_STATION_WORDS) runs[runs.length - 1] = { ...fresh, first: current.first };
  }
  runs.forEach((run, at) => {
    run.end = runs[at + 1]?.first ?? range.end;
  });
  const real = runs.filter((run) => spokenWords(scene, run.inside, run.end) >= SHORTEST_OF_SEVERAL_WORDS);
  return real.length > 0 ? real : runs.slice(0, 1);
}

function introduced(scene: Scene, first: number, end: number): boolean {
  return cuesOf(scene, ["introduction"], first, end).length > 0;
}

/** "0:12 to 6:40, lines 3 to 60", for the question which of several is meant: whole seconds that --from and --to can be given. */
export function placeOf(scene: Scene, { first, end }: TokenSpan): string {
  const from = wordAt(scene, Math.min(first, end - 1));
  const to = wordAt(scene, end - 1);
  const times = from.start === null || to.end === null ? "" : `${showClock(from.start)} to ${showClock(Math.ceil(to.end))}, `;
  return `${times}lines ${from.line} to ${to.line}`;
}
