import type { Transcript, Word } from "../transcript/types.ts";
import type { Announcement } from "./announcements.ts";
import type { Clause, TokenSpan } from "./clauses.ts";
import type { CueKind, CueMatch } from "./cues.ts";
import type { Token } from "./token.ts";
import type { Role } from "./types.ts";

/** All that is known when the edges of the station are looked for. */
export interface Scene {
  transcript: Transcript;
  tokens: readonly Token[];
  clauses: readonly Clause[];
  /** Clause of every token. */
  clauseOf: Int32Array;
  cues: readonly CueMatch[];
  announcements: readonly Announcement[];
  /** Role of every token. */
  roles: readonly Role[];
}

export function cuesOf(scene: Scene, kinds: readonly CueKind[], first = 0, end = scene.tokens.length): CueMatch[] {
  return scene.cues.filter((cue) => kinds.includes(cue.kind) && cue.first >= first && cue.end <= end);
}

export function wordAt(scene: Scene, token: number): Word {
  return scene.transcript.words[scene.tokens[token]!.word]!;
}

export function announced(scene: Scene, token: number): boolean {
  return scene.announcements.some((span) => span.first <= token && token < span.end);
}

export function clauseStart(scene: Scene, token: number): number {
  return scene.clauses[scene.clauseOf[token]!]!.first;
}

export function clauseEnd(scene: Scene, token: number): number {
  return scene.clauses[scene.clauseOf[token]!]!.end;
}

/** Longest quotation in a reason. */
const QUOTED_WORDS = 8;

/** True where the examiner or an announcer speaks, by label or by the wording of an announcement. */
export function official(scene: Scene, token: number): boolean {
  return scene.roles[token] === "examiner" || scene.roles[token] === "announcer";
}

/** `'you may now begin' (line 4)`: the words of the file, of one speaker, for a reason on the sheet. */
export function quote(scene: Scene, span: TokenSpan): string {
  const { first } = span;
  let end = first + 1;
  while (end < Math.min(span.end, scene.tokens.length) && sameVoice(scene, end)) end++;
  const from = scene.tokens[first]!.word;
  const to = scene.tokens[Math.min(end, first + QUOTED_WORDS) - 1]!.word;
  const text = scene.transcript.words.slice(from, to + 1).map((word) => word.text).join(" ");
  const bare = text.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, "");
  return `'${bare}${end - first > QUOTED_WORDS ? " ..." : ""}' (line ${scene.transcript.words[from]!.line})`;
}

/** Whether the token is said by the speaker of the one before it, as far as the labels, or without labels the roles, tell. */
function sameVoice(scene: Scene, token: number): boolean {
  const a = scene.transcript.segments[wordAt(scene, token - 1).segment]!.speaker;
  const b = scene.transcript.segments[wordAt(scene, token).segment]!.speaker;
  return a === b && official(scene, token - 1) === official(scene, token) && (a !== null || scene.roles[token - 1] === scene.roles[token]);
}

/** Seconds between the end of one token and the start of the next; null where the file gives no times. */
export function pauseBefore(scene: Scene, token: number): number | null {
  if (token === 0) return null;
  const left = wordAt(scene, token - 1);
  const right = wordAt(scene, token);
  return left.end === null || right.start === null ? null : right.start - left.end;
}
