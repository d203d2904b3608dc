import { announced, clauseEnd, clauseStart, cuesOf, pauseBefore, quote, type Scene } from "./scene.ts";
import { restartsIn, type Restart } from "./restart.ts";
import type { Run } from "./runs.ts";

/** An edge between tokens: the station's first token, or the first after it. */
export interface Edge {
  token: number;
  reason: string;
  confidence: number;
  /** Nothing marked it: the start or end of all speech. */
  guessed: boolean;
}

// How far each kind of evidence is believed. Judgement, not measured: no open corpus of stations with their edges is known to us.
const BELIEF = { announcement: 0.95, introduction: 0.9, restart: 0.85, afterSetup: 0.7, farewell: 0.85, debrief: 0.75, pause: 0.6, speech: 0.5 } as const;

/** Talk before a station is looked for in so many words from the start. */
const SETUP_WITHIN_WORDS = 250;
/** A greeting so soon after set-up talk opens the station. */
const OPENING_WITHIN_WORDS = 60;
/** Debrief so soon after a leave-taking shows that the leave-taking was the end. */
const DEBRIEF_WITHIN_WORDS = 80;
/** After a leave-taking so few words are its tail ("thanks, you too, bye"). */
const TAIL_WORDS = 15;
/** A farewell's tail goes on over sentences of at most so many words. */
const TAIL_CLAUSE_WORDS = 8;
/** Silence after a leave-taking, in seconds, that ends the station. */
const END_PAUSE = 8;
/** Words of station that must lie before a leave-taking or the stop. */
const LEAST_STATION_WORDS = 20;
/** Two phrases of feedback so close together are a debrief without a leave-taking before. */
const DEBRIEF_PAIR_WORDS = 60;

const THANKS = new Set(["thanks", "thank", "bye", "goodbye", "cheers", "welcome", "care", "too", "problem", "worries"]);

export function findStart(scene: Scene, run: Run): { edge: Edge; restarts: Restart[] } {
  let edge = firstStart(scene, run);
  const restarts = restartsIn(scene, edge.token, run.end);
  const last = restarts[restarts.length - 1];
  if (last !== undefined) edge = { token: last.token, reason: last.reason, confidence: last.certain ? BELIEF.restart : BELIEF.afterSetup, guessed: false };
  return { edge, restarts };
}

function firstStart(scene: Scene, run: Run): Edge {
  const marked = run.opener !== "speech";
  const from = skipAnnounced(scene, run.inside, run.end);
  const limit = Math.min(run.end, from + SETUP_WITHIN_WORDS);
  const introduction = introductionIn(scene, from, limit);
  const setup = cuesOf(scene, ["setup"], from, introduction?.intro ?? limit);
  const lastSetup = setup[setup.length - 1];
  const after = lastSetup === undefined ? from : clauseEnd(scene, lastSetup.end - 1) - lastSetup.end <= TAIL_WORDS ? clauseEnd(scene, lastSetup.end - 1) : lastSetup.end;

  if (lastSetup !== undefined) {
    const opening = cuesOf(scene, ["greeting", "introduction", "opening_question"], lastSetup.end, Math.min(run.end, lastSetup.end + OPENING_WITHIN_WORDS))[0];
    const talk = `after the talk before it, ${quote(scene, lastSetup)}`;
    if (opening !== undefined) return { token: opening.first, reason: `at ${quote(scene, { first: opening.first, end: opening.end + 3 })}, ${talk}`, confidence: BELIEF.introduction, guessed: false };
    return { token: skipAnnounced(scene, Math.min(after, run.end - 1), run.end), reason: talk, confidence: BELIEF.afterSetup, guessed: false };
  }
  if (run.opener === "announcement") return { token: from, reason: run.reason, confidence: BELIEF.announcement, guessed: false };
  if (introduction !== undefined) {
    const opened = introduction.first;
    const before = scene.roles.slice(from, opened);
    // What a patient says before the pharmacist's greeting belongs to the station; chat of others does not.
    const chat = before.some((role) => role !== "patient");
    const patientGreets = before.length > 0 && !chat;
    const token = patientGreets || before.length === 0 ? from : startOfGreetings(scene, from, opened);
    return { token, reason: `at the candidate's introduction ${quote(scene, { first: introduction.first, end: introduction.end })}`, confidence: BELIEF.introduction, guessed: false };
  }
  if (marked) return { token: from, reason: run.reason, confidence: BELIEF.announcement, guessed: false };
  const greeting = cuesOf(scene, ["greeting"], from, Math.min(run.end, from + TAIL_WORDS))[0];
  if (greeting !== undefined) return { token: from, reason: `at the greeting ${quote(scene, greeting)}`, confidence: BELIEF.afterSetup, guessed: false };
  return { token: from, reason: "at the start of speech: no announcement and no greeting was found", confidence: BELIEF.speech, guessed: true };
}

function skipAnnounced(scene: Scene, token: number, end: number): number {
  let at = token;
  while (at < end - 1 && announced(scene, at)) at++;
  return at;
}

/** The candidate says who they are, with the greeting before it. */
function introductionIn(scene: Scene, from: number, end: number): { first: number; intro: number; end: number } | undefined {
  const cue = cuesOf(scene, ["introduction"], from, end).find((each) => scene.roles[each.first] !== "patient" && scene.roles[each.first] !== "examiner");
  if (cue === undefined) return undefined;
  const greeting = cuesOf(scene, ["greeting"], Math.max(from, cue.first - TAIL_WORDS), cue.first)[0];
  return { first: greeting?.first ?? clauseStart(scene, cue.first), intro: cue.first, end: Math.min(end, cue.end + 2) };
}

/** Back over sentences of greeting ("Hi." "Good morning.") that lead up to the introduction. */
function startOfGreetings(scene: Scene, from: number, opened: number): number {
  let token = Math.max(from, opened);
  while (token > from) {
    const first = Math.max(from, clauseStart(scene, token - 1));
    if (cuesOf(scene, ["greeting"], first, token).length === 0 || token - first > TAIL_CLAUSE_WORDS) break;
    token = first;
  }
  return token;
}

export function findEnd(scene: Scene, run: Run, start: number): Edge {
  const stop = scene.announcements.find((span) => span.kinds.includes("stop") && span.first >= start + LEAST_STATION_WORDS && span.first < run.end);
  const debrief = debriefFrom(scene, start + LEAST_STATION_WORDS, Math.min(run.end, stop?.first ?? run.end));
  const limit = Math.min(run.end, stop?.first ?? run.end, debrief?.first ?? run.end);
  const closing = lastOfficialTalk(scene, start, limit);
  const farewell = farewellBefore(scene, start + LEAST_STATION_WORDS, limit, debrief !== undefined || stop !== undefined || limit < scene.tokens.length);
  if (farewell !== undefined && (stop === undefined || farewell.end <= stop.first)) {
    return { token: farewell.end, reason: `after the leave-taking ${quote(scene, farewell)}`, confidence: BELIEF.farewell, guessed: false };
  }
  if (debrief !== undefined) return { token: debrief.first, reason: `before the talk after it, ${quote(scene, debrief)}`, confidence: BELIEF.debrief, guessed: false };
  if (stop !== undefined) {
    const cue = cuesOf(scene, ["stop"], stop.first, stop.end)[0] ?? stop;
    return { token: stop.first, reason: `at the announcement ${quote(scene, cue)}`, confidence: BELIEF.announcement, guessed: false };
  }
  if (closing < limit) return { token: closing, reason: "where patient and candidate stop speaking", confidence: BELIEF.debrief, guessed: false };
  return { token: run.end, reason: run.end < scene.tokens.length ? "where the next station starts" : "at the end of speech: no leave-taking and no announcement was found", confidence: BELIEF.speech, guessed: true };
}

/** After the last word of candidate or patient (labels tell an examiner's). */
function lastOfficialTalk(scene: Scene, start: number, end: number): number {
  let at = end;
  while (at > start && scene.roles[at - 1] !== "candidate" && scene.roles[at - 1] !== "patient" && scene.roles[at - 1] !== "unknown") at--;
  return at;
}

function debriefFrom(scene: Scene, from: number, end: number): { first: number; end: number } | undefined {
  const cues = cuesOf(scene, ["examiner_question", "feedback"], from, end);
  for (const [at, cue] of cues.entries()) {
    const left = cuesOf(scene, ["leave_taking"], Math.max(from, cue.first - DEBRIEF_WITHIN_WORDS), cue.first).length > 0;
    const pair = cues.slice(at + 1).some((other) => other.phrase !== cue.phrase && other.first - cue.end <= DEBRIEF_PAIR_WORDS && other.first >= cue.end);
    const examiner = scene.roles[cue.first] === "examiner";
    // Without a leave-taking two phrases are needed, and no farewell may come later: feedback inside a consultation is about the patient.
    const later = cuesOf(scene, ["leave_taking"], cue.end, end).length > 0;
    if (left || examiner || (pair && !later)) return { first: clauseStart(scene, cue.first) > cue.first - TAIL_WORDS ? clauseStart(scene, cue.first) : cue.first, end: cue.end };
  }
  return undefined;
}

/** The leave-taking that ends the talk before `limit`, with its tail of thanks. */
function farewellBefore(scene: Scene, from: number, limit: number, limited: boolean): { first: number; end: number } | undefined {
  const cues = cuesOf(scene, ["leave_taking"], from, limit);
  // The last farewell counts, unless a long silence follows an earlier one.
  for (const [at, cue] of cues.entries()) {
    const end = tailEnd(scene, cue.end, limit);
    const next = cues[at + 1];
    const silent = end < limit && (pauseBefore(scene, end) ?? 0) >= END_PAUSE;
    if (silent) return { first: cue.first, end };
    if (next !== undefined && next.first >= end) {
      // Set-up talk or the next rehearsal's chat after this farewell: later farewells are not this station's.
      if (cuesOf(scene, ["setup"], end, Math.min(limit, end + DEBRIEF_WITHIN_WORDS)).length > 0) return { first: cue.first, end };
      continue;
    }
    if (next !== undefined) continue;
    const rest = limit - end;
    const chat = cuesOf(scene, ["setup", "feedback"], end, limit).length > 0;
    if (rest <= TAIL_WORDS || chat || (limited && rest <= DEBRIEF_WITHIN_WORDS)) return { first: cue.first, end: rest <= TAIL_WORDS && !limited && !chat ? limit : end };
  }
  return undefined;
}

function tailEnd(scene: Scene, token: number, limit: number): number {
  let end = Math.min(limit, clauseEnd(scene, token - 1) - token <= TAIL_WORDS ? clauseEnd(scene, token - 1) : token);
  while (end < limit) {
    const next = Math.min(limit, clauseEnd(scene, end));
    const polite = scene.tokens.slice(end, next).some((each) => THANKS.has(each.norm));
    const short = next - end <= TAIL_CLAUSE_WORDS;
    if (!short || !polite || (pauseBefore(scene, end) ?? 0) >= END_PAUSE) break;
    end = next;
  }
  return end;
}
