import { findCues, OFFICIAL, type CueKind } from "./cues.ts";
import { BELIEF, edgeAt, TAIL_WORDS, type Edge } from "./edges.ts";
import { farewellBefore, tailEnd } from "./farewell.ts";
import type { Run } from "./runs.ts";
import { clauseStart, cuesOf, official, quote, type Scene } from "./scene.ts";
import type { TokenSpan } from "./clauses.ts";
import { normalise } from "./token.ts";

/** Words of station that must lie before a leave-taking or the stop. */
const LEAST_STATION_WORDS = 20;
/** Debrief so soon after a leave-taking shows that the leave-taking was the end. */
const DEBRIEF_WITHIN_WORDS = 80;
/** Two phrases of feedback so close together are a debrief without a leave-taking before. */
const DEBRIEF_PAIR_WORDS = 60;
/** "Nice to meet you" is said on meeting as well: words of leave-taking in this first share of the talk take no leave. */
const OPENING_SHARE = 0.2;
/** So few words of the patient after an examiner's closing are said out of their part ("you were fine"). */
const OUT_OF_PART_WORDS = 40;
/** An examiner's turn closes the station, with words of the patient behind it, only so late in the talk. */
const LATE_SHARE = 0.6;
/** An examiner who speaks so soon after a leave-taking closes the station. */
const CLOSING_WITHIN_WORDS = 40;

/** Something after which nothing is the station's. */
interface Limit extends TokenSpan {
  reason: string;
  belief: number;
}

export function findEnd(scene: Scene, run: Run, start: number): Edge {
  const from = start + LEAST_STATION_WORDS;
  const hard = [stopIn(scene, from, run.end), headingIn(scene, from, run.end), examinerCloses(scene, from, run.end)].filter((each) => each !== undefined);
  const hardest = hard.reduce<Limit | undefined>((best, each) => (best === undefined || each.first < best.first ? each : best), undefined);
  const parting = Math.max(from, start + Math.floor(OPENING_SHARE * (run.end - start)));
  const debrief = debriefFrom(scene, from, parting, hardest?.first ?? run.end);
  const told = debrief ?? hardest;
  const limit = lastOfPair(scene, start, told?.first ?? run.end);
  const farewell = farewellBefore(scene, Math.min(parting, limit), limit, told !== undefined || limit < scene.tokens.length);
  if (farewell !== undefined) {
    // Between the leave-taking and a sure end stand the pair's last words ("and don't forget your bag").
    const end = debrief === undefined && hardest !== undefined && limit - farewell.end <= TAIL_WORDS && !farewell.silent ? limit : farewell.end;
    return edgeAt(end, `after the leave-taking ${quote(scene, farewell)}`, BELIEF.farewell);
  }
  if (told !== undefined) return edgeAt(limit, told.reason, told.belief);
  if (limit < run.end) return edgeAt(limit, "where patient and candidate stop speaking", BELIEF.debrief);
  return { token: run.end, reason: run.end < scene.tokens.length ? "where the next station starts" : "at the end of speech: no leave-taking and no announcement was found", confidence: BELIEF.speech, guessed: true };
}

/** A phrase that is also said of a device ("leave it there") stops the clock only where so few words are said behind it, or a debrief begins so soon. */
const WEAK_STOP_WORDS = 60;
const DEBRIEF: readonly CueKind[] = ["feedback", "examiner_question", "setup"];

function stops(scene: Scene, span: TokenSpan, end: number): boolean {
  const clock = cuesOf(scene, OFFICIAL, span.first, span.end);
  if (clock.some(({ weak }) => !weak) || scene.roles[span.first] === "examiner" || end - span.end <= WEAK_STOP_WORDS) return true;
  return cuesOf(scene, DEBRIEF, span.end, Math.min(end, span.end + WEAK_STOP_WORDS)).length > 0;
}

function stopIn(scene: Scene, from: number, end: number): Limit | undefined {
  const span = scene.announcements.find((each) => each.kinds.includes("stop") && each.first >= from && each.first < end && stops(scene, each, end));
  if (span === undefined) return undefined;
  const cue = cuesOf(scene, ["stop"], span.first, span.end)[0] ?? span;
  return { first: span.first, end: span.end, reason: `at the announcement ${quote(scene, cue)}`, belief: BELIEF.announcement };
}

/** A heading of the file, such as "feedback", that parts the station from what came after. */
function headingIn(scene: Scene, from: number, end: number): Limit | undefined {
  for (const heading of scene.transcript.headings) {
    const words = heading.text.split(/\s+/).map((word) => ({ norm: normalise(word) })).filter(({ norm }) => norm !== "");
    if (!findCues(words).some((cue) => cue.kind === "heading_after")) continue;
    const token = scene.tokens.findIndex((each) => each.word >= heading.beforeWord);
    if (token >= from && token < end) return { first: token, end: token, reason: `before the heading '${heading.text.trim()}' (line ${heading.line})`, belief: BELIEF.heading };
  }
  return undefined;
}

/**
 * A labelled examiner's turn that closes the station: the patient says next to nothing after it and nobody takes
 * leave, or a leave-taking stands just before it. Who says "two minutes left" only breaks in.
 */
function examinerCloses(scene: Scene, from: number, end: number): Limit | undefined {
  if (!scene.roles.slice(0, end).includes("examiner")) return undefined;
  const patients = scene.roles.slice(0, end).flatMap((role, at) => (role === "patient" ? [at] : []));
  const lastFarewell = cuesOf(scene, ["leave_taking"], from, end).findLast((cue) => !official(scene, cue.first))?.first ?? -1;
  for (let at = from; at < end; at++) {
    if (scene.roles[at] !== "examiner" || official(scene, at - 1)) continue;
    let after = at;
    while (after < end && official(scene, after)) after++;
    const clock = cuesOf(scene, ["time_remaining"], at, after).length > 0 && cuesOf(scene, ["stop", "feedback", "examiner_question"], at, after).length === 0;
    const behind = patients.filter((each) => each >= at).length;
    const late = at - from >= LATE_SHARE * (end - from);
    const alone = patients.length > behind && lastFarewell < at && behind <= (late ? OUT_OF_PART_WORDS : 0);
    const left = cuesOf(scene, ["leave_taking"], Math.max(from, at - CLOSING_WITHIN_WORDS), at).length > 0;
    if (!clock && (alone || left)) return { first: at, end: after, reason: `before the examiner's words ${quote(scene, { first: at, end: after })}`, belief: BELIEF.examiner };
    at = after;
  }
  return undefined;
}

/** After the last word of candidate or patient (labels tell an examiner's). */
function lastOfPair(scene: Scene, start: number, end: number): number {
  let at = end;
  while (at > start && official(scene, at - 1)) at--;
  return at;
}

/** From `from` on; leave-takings count from `parting` on. */
function debriefFrom(scene: Scene, from: number, parting: number, end: number): Limit | undefined {
  const cues = cuesOf(scene, ["examiner_question", "feedback"], from, end);
  for (const [at, cue] of cues.entries()) {
    const farewells = cuesOf(scene, ["leave_taking"], Math.max(parting, cue.first - DEBRIEF_WITHIN_WORDS), cue.first);
    const pair = cues.slice(at + 1).some((other) => other.phrase !== cue.phrase && other.first - cue.end <= DEBRIEF_PAIR_WORDS && other.first >= cue.end);
    const examiner = scene.roles[cue.first] === "examiner";
    // Without a leave-taking two phrases are needed, and no farewell may come later: feedback inside a consultation is about the patient.
    const later = cuesOf(scene, ["leave_taking"], cue.end, end).length > 0;
    if (farewells.length === 0 && !examiner && (!pair || later)) continue;
    const sentence = clauseStart(scene, cue.first);
    const left = farewells[farewells.length - 1];
    // A run without punctuation is one sentence: the leave-taking in it is still the station's.
    const earliest = left === undefined ? sentence : Math.max(sentence, tailEnd(scene, left.end, cue.first));
    const first = cue.first - earliest < TAIL_WORDS ? earliest : cue.first;
    return { first, end: cue.end, reason: `before the talk after it, ${quote(scene, cue)}`, belief: BELIEF.debrief };
  }
  return undefined;
}
