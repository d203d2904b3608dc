import { OPENINGS_OF_TALK } from "./cues.ts";
import { BELIEF, edgeAt, TAIL_CLAUSE_WORDS, TAIL_WORDS, type Edge } from "./edges.ts";
import { restartsIn, type Restart } from "./restart.ts";
import type { Run } from "./runs.ts";
import { announced, clauseEnd, clauseStart, cuesOf, official, quote, type Scene } from "./scene.ts";

/** Talk before a station is looked for in so many words from the start. */
const SETUP_WITHIN_WORDS = 250;
/** A greeting so soon after set-up talk opens the station. */
const OPENING_WITHIN_WORDS = 60;
/** Set-up talk that no greeting follows is believed in so many first words only: "shall we start" is said in a consultation too. */
const SETUP_ALONE_WITHIN_WORDS = 80;

export function findStart(scene: Scene, run: Run): { edge: Edge; restarts: Restart[] } {
  let edge = firstStart(scene, run);
  const restarts = restartsIn(scene, edge.token, run.end);
  const last = restarts[restarts.length - 1];
  if (last !== undefined) edge = edgeAt(last.token, last.reason, last.certain ? BELIEF.restart : BELIEF.afterSetup);
  return { edge, restarts };
}

function firstStart(scene: Scene, run: Run): Edge {
  const handed = handedOver(scene, run);
  const from = handed?.token ?? skipAnnounced(scene, run.inside, run.end);
  const introduction = introductionIn(scene, from, Math.min(run.end, from + SETUP_WITHIN_WORDS));
  const setup = afterSetup(scene, run, from, introduction?.intro);
  if (setup !== undefined) return setup;
  if (handed !== undefined) return handed;
  if (run.opener === "announcement") return edgeAt(from, run.reason, BELIEF.announcement);
  if (introduction !== undefined) return atIntroduction(scene, from, introduction);
  if (run.opener !== "speech") return edgeAt(from, run.reason, BELIEF.announcement);
  const greeting = cuesOf(scene, ["greeting"], from, Math.min(run.end, from + TAIL_WORDS))[0];
  if (greeting !== undefined) return edgeAt(from, `at the greeting ${quote(scene, greeting)}`, BELIEF.afterSetup);
  return { token: from, reason: "at the start of speech: no announcement and no greeting was found", confidence: BELIEF.speech, guessed: true };
}

/**
 * After the last words of a labelled examiner or announcer that stand before the patient's first: what the candidate
 * says to the examiner ("I'm the next one, is that right?") is not yet the station, though it may hold a greeting.
 */
function handedOver(scene: Scene, run: Run): Edge | undefined {
  const limit = Math.min(run.end, run.inside + SETUP_WITHIN_WORDS);
  let patient = run.inside;
  while (patient < limit && scene.roles[patient] !== "patient") patient++;
  if (patient === limit) return undefined;
  let last = patient - 1;
  while (last >= run.inside && scene.roles[last] !== "examiner") last--;
  if (last < run.inside) return undefined;
  let first = last;
  while (first > run.inside && official(scene, first - 1)) first--;
  const token = skipAnnounced(scene, last + 1, run.end);
  return edgeAt(token, `after the examiner's words ${quote(scene, { first: Math.max(first, clauseStart(scene, last)), end: last + 1 })}`, BELIEF.examiner);
}

/** After talk of who plays whom, whether the recorder runs, "go ahead when you're ready". */
function afterSetup(scene: Scene, run: Run, from: number, introduced: number | undefined): Edge | undefined {
  const setup = cuesOf(scene, ["setup"], from, introduced ?? Math.min(run.end, from + SETUP_WITHIN_WORDS));
  const whole = setup.filter((cue) => !setup.some((other) => other.first < cue.first && cue.end <= other.end));
  for (const cue of whole.reverse()) {
    const opening = cuesOf(scene, OPENINGS_OF_TALK, cue.end, Math.min(run.end, cue.end + OPENING_WITHIN_WORDS))[0];
    const talk = `after the talk before it, ${quote(scene, cue)}`;
    if (opening !== undefined) return edgeAt(opening.first, `at ${quote(scene, { first: opening.first, end: Math.min(run.end, opening.end + 3) })}, ${talk}`, BELIEF.introduction);
    if (cue.first - from > SETUP_ALONE_WITHIN_WORDS) continue;
    const clause = clauseEnd(scene, cue.end - 1);
    const after = clause - cue.end <= TAIL_WORDS ? clause : cue.end;
    return edgeAt(skipAnnounced(scene, Math.min(after, run.end - 1), run.end), talk, BELIEF.afterSetup);
  }
  return undefined;
}

function skipAnnounced(scene: Scene, token: number, end: number): number {
  let at = token;
  while (at < end - 1 && announced(scene, at)) at++;
  return at;
}

interface Introduction {
  first: number;
  intro: number;
  end: number;
}

/** The candidate says who they are, with the greeting before it. */
function introductionIn(scene: Scene, from: number, end: number): Introduction | undefined {
  const cue = cuesOf(scene, ["introduction"], from, end).find((each) => scene.roles[each.first] !== "patient" && scene.roles[each.first] !== "examiner");
  if (cue === undefined) return undefined;
  const greeting = cuesOf(scene, ["greeting"], Math.max(from, cue.first - TAIL_WORDS), cue.first)[0];
  return { first: greeting?.first ?? clauseStart(scene, cue.first), intro: cue.first, end: Math.min(end, cue.end + 2) };
}

function atIntroduction(scene: Scene, from: number, introduction: Introduction): Edge {
  const opened = Math.max(from, sentenceOf(scene, introduction.first));
  const before = scene.roles.slice(from, opened);
  const said = `the candidate's introduction ${quote(scene, introduction)}`;
  // What a patient says before the pharmacist's greeting belongs to the station; chat of others does not.
  if (before.length > 0 && before.every((role) => role === "patient")) return edgeAt(from, `at the patient's words ${quote(scene, { first: from, end: opened })}, before ${said}`, BELIEF.introduction);
  return edgeAt(before.length === 0 ? from : startOfGreetings(scene, from, opened), `at ${said}`, BELIEF.introduction);
}

/** The first word of the greeting's own sentence ("Yes, hello"), where full stops tell it. */
function sentenceOf(scene: Scene, token: number): number {
  const clause = scene.clauses[scene.clauseOf[token]!]!;
  return clause.closed && token - clause.first <= TAIL_CLAUSE_WORDS ? clause.first : token;
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
