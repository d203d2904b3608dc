import { ProblemError, type Finding } from "../problem/problem.ts";
import type { Transcript } from "../transcript/types.ts";
import { announcementsOf } from "./announcements.ts";
import { clauseIndex, clausesOf, type TokenSpan } from "./clauses.ts";
import { findCues, soundCues } from "./cues.ts";
import { firstSpoken, lastSpoken, type Edge } from "./edges.ts";
import { findEnd } from "./end.ts";
import { findStart } from "./start.ts";
import { reviseOutside } from "./outside.ts";
import { placeOf, runsOf, type Run } from "./runs.ts";
import { wordAt, type Scene } from "./scene.ts";
import { sentencesOf, turnsFrom } from "./sentences.ts";
import { tokenise, type Token } from "./token.ts";
import type { Boundary, Station, StationOptions, WordSpan } from "./types.ts";
import { assignVoices } from "./voices.ts";

/** Below this mean confidence, by words, the person is told to check the roles. */
const SURE_ENOUGH = 0.8;

/**
 * Finds when the station ran and who spoke each stretch.
 *
 * Throws `ProblemError`: SW-S01 several stations, SW-S02 nothing between the times asked for,
 * SW-S03 times asked for of a transcript without times, SW-S04 no such label.
 */
export function findStation(transcript: Transcript, options: StationOptions = {}): Station {
  const tokens = tokenise(transcript);
  const clauses = clausesOf(transcript, tokens);
  const range = rangeAsked(transcript, tokens, options);
  const cues = soundCues(findCues(tokens), clauses, tokens);
  const announcements = announcementsOf(transcript, tokens, cues, clauses);
  const voices = assignVoices(transcript, tokens, announcements, cues, options);
  const scene: Scene = { transcript, tokens, clauses, clauseOf: clauseIndex(clauses), cues, announcements, roles: voices.roles };
  const findings = [...voices.findings];

  const { start, end, restarts } = edgesOf(scene, range, options, findings);
  const revised = reviseOutside(scene, voices, end.token);
  const excludedTokens = interruptions(revised.roles, start.token, end.token);
  const excluded = excludedTokens.map((span) => ({ first: wordFrom(scene, span.first), end: wordFrom(scene, span.end) }));
  const firstWord = start.token === 0 ? 0 : wordFrom(scene, start.token);
  const endWord = wordFrom(scene, end.token);
  const inStation = (word: number): boolean => word >= firstWord && word < endWord && !excluded.some((span) => span.first <= word && word < span.end);
  const sentences = sentencesOf(transcript, tokens, revised, inStation);
  // A noise before the first word belongs to its sentence, so the edge stands before the noise.
  const sentenceStart = (word: number): number => sentences.find((sentence) => word < sentence.end)?.first ?? word;
  tellRoles(scene, sentences, findings);
  return {
    transcript,
    sentences,
    turns: turnsFrom(sentences),
    start: boundary(transcript, start, sentenceStart(firstWord), "start"),
    end: boundary(transcript, end, sentenceStart(endWord), "end"),
    restarts,
    excluded,
    roleSource: voices.source,
    labelRoles: voices.labels.map(({ label, role, confidence }) => ({ label, role, confidence })),
    findings,
  };
}

/** First word position of a token; the number of words for the place after the last. */
function wordFrom(scene: Scene, token: number): number {
  return scene.tokens[token]?.word ?? scene.transcript.words.length;
}

function boundary(transcript: Transcript, edge: Edge, word: number, side: "start" | "end"): Boundary {
  const { words } = transcript;
  const here = words[firstSpoken(words, word)]?.start ?? null;
  const before = words[lastSpoken(words, word)]?.end ?? null;
  return { word, time: side === "start" ? here : (before ?? here), reason: edge.reason, confidence: edge.confidence };
}

/** The tokens between the times asked for. */
function rangeAsked(transcript: Transcript, tokens: readonly Token[], { from, to }: StationOptions): TokenSpan {
  if (from === undefined && to === undefined) return { first: 0, end: tokens.length };
  if (transcript.timing === "none") {
    throw new ProblemError([{ code: "SW-S03", severity: "error", file: transcript.file, message: "the transcript has no times, so no stretch of it can be named by times", mend: "cut the text by hand, or leave --from and --to out" }]);
  }
  let last: number | null = null;
  const starts = tokens.map((token) => (last = transcript.words[token.word]!.start ?? last));
  const first = from === undefined ? 0 : starts.findIndex((start) => start !== null && start >= from);
  const after = to === undefined ? -1 : starts.findIndex((start) => start !== null && start >= to);
  const end = after < 0 ? tokens.length : after;
  if (first < 0 || first >= end) {
    const length = transcript.duration === null ? "" : `; the transcript ends at ${transcript.duration.toFixed(1)} s`;
    throw new ProblemError([{ code: "SW-S02", severity: "error", file: transcript.file, message: `no word starts between ${from ?? 0} s and ${to ?? "the end"}${to === undefined ? "" : " s"}${length}`, mend: "give times inside the recording, the earlier one with --from" }]);
  }
  return { first, end };
}

function edgesOf(scene: Scene, range: TokenSpan, options: StationOptions, findings: Finding[]): { start: Edge; end: Edge; restarts: number[] } {
  const { transcript, tokens } = scene;
  const told = (token: number, reason: string): Edge => ({ token, reason, confidence: 1, guessed: false });
  if (options.from !== undefined && options.to !== undefined) return { start: told(range.first, `as told: from ${options.from} s`), end: told(range.end, `as told: to ${options.to} s`), restarts: [] };
  const marked = tokens.map((token) => transcript.segments[transcript.words[token.word]!.segment]!.inStation);
  if (options.from === undefined && options.to === undefined && marked.some((inside) => inside !== undefined)) {
    const first = marked.findIndex((inside) => inside !== false);
    const last = marked.findLastIndex((inside) => inside !== false);
    return { start: told(Math.max(0, first), "as the label file says"), end: told(last + 1, "as the label file says"), restarts: [] };
  }
  const runs = runsOf(scene, range);
  const run = runs[0];
  if (run === undefined || tokens.length === 0) return { start: told(0, "there is no speech"), end: told(0, "there is no speech"), restarts: [] };
  if (runs.length > 1) throw severalStations(scene, runs.map((each) => placeIn(scene, each)));
  const found = findStart(scene, run);
  const start = options.from === undefined ? found.edge : told(range.first, `as told: from ${options.from} s`);
  const restarts = options.from === undefined ? found.restarts : [];
  const end = options.to === undefined ? findEnd(scene, run, start.token) : told(range.end, `as told: to ${options.to} s`);
  for (const restart of restarts) {
    const { line } = wordAt(scene, restart.saidAt);
    findings.push({ code: "SW-S08", severity: "info", file: transcript.file, line, message: `the candidate started anew here; what was said before is not marked`, mend: "if it is one station, give its first second with --from" });
  }
  for (const [edge, name] of [[start, "start"], [end, "end"]] as const) {
    if (edge.guessed) findings.push({ code: "SW-S09", severity: "info", file: transcript.file, message: `the station's ${name} was taken ${edge.reason}`, mend: name === "start" ? "give it with --from if that is wrong" : "give it with --to if that is wrong" });
  }
  return { start, end, restarts: restarts.map((restart) => wordFrom(scene, restart.token)) };
}

/** Where a station of several starts and ends, and why: the talk after one and before the next is neither's. */
function placeIn(scene: Scene, run: Run): string {
  const start = findStart(scene, run).edge;
  const end = findEnd(scene, run, start.token);
  return `${placeOf(scene, { first: start.token, end: Math.max(end.token, start.token + 1) })}, ${run.opener === "heading" ? run.reason : start.reason}`;
}

function severalStations(scene: Scene, places: string[]): ProblemError {
  const timed = scene.transcript.timing !== "none";
  return new ProblemError([
    {
      code: "SW-S01",
      severity: "error",
      file: scene.transcript.file,
      message: `the recording holds ${places.length} stations: ${places.map((place, at) => `(${at + 1}) ${place}`).join("; ")}`,
      mend: timed ? "say which one with --from and --to" : "the transcript has no times: put each station into a file of its own",
    },
  ]);
}

/** Stretches inside the station by an announcer or an examiner. */
function interruptions(roles: readonly string[], start: number, end: number): WordSpan[] {
  const spans: WordSpan[] = [];
  for (let at = start; at < end; at++) {
    if (roles[at] !== "announcer" && roles[at] !== "examiner") continue;
    const last = spans[spans.length - 1];
    if (last !== undefined && last.end === at) last.end = at + 1;
    else spans.push({ first: at, end: at + 1 });
  }
  return spans;
}

function tellRoles(scene: Scene, sentences: Station["sentences"], findings: Finding[]): void {
  const { file } = scene.transcript;
  const inside = sentences.filter((sentence) => sentence.inStation);
  const words = (list: Station["sentences"]): number => list.reduce((sum, each) => sum + each.end - each.first, 0);
  for (const role of ["candidate", "patient"] as const) {
    if (inside.length > 0 && !inside.some((sentence) => sentence.role === role)) findings.push({ code: "SW-S10", severity: "warning", file, message: `nothing in the station was taken as said by the ${role}`, mend: "check the roles with `saidwell label`" });
  }
  const mean = inside.reduce((sum, each) => sum + each.confidence * (each.end - each.first), 0) / Math.max(1, words(inside));
  if (inside.length > 0 && mean < SURE_ENOUGH) findings.push({ code: "SW-S07", severity: "warning", file, message: `who spoke is not sure: mean confidence ${mean.toFixed(2)}`, mend: "write a label file with `saidwell label`, correct it and mark that" });
}
