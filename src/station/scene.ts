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

/** `'you may now begin' (line 4)`: the words of the file, for a reason on the sheet. */
export function quote(scene: Scene, { first, end }: TokenSpan): string {
  const from = scene.tokens[first]!.word;
  const to = scene.tokens[Math.min(end, first + QUOTED_WORDS) - 1]!.word;
  const text = scene.transcript.words.slice(from, to + 1).map((word) => word.text).join(" ");
  const bare = text.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, "");
  return `'${bare}${end - first > QUOTED_WORDS ? " ..." : ""}' (line ${scene.transcript.words[from]!.line})`;
}

/** Seconds between the end of one token and the start of the next; null where the file gives no times. */
export function pauseBefore(scene: Scene, token: number): number | null {
  if (token === 0) return null;
  const left = wordAt(scene, token - 1);
  const right = wordAt(scene, token);
  return left.end === null || right.start === null ? null : right.start - left.end;
}
