import type { Finding } from "../problem/problem.ts";
import type { Seconds, Transcript } from "../transcript/types.ts";

export type Role = "candidate" | "patient" | "examiner" | "announcer" | "unknown";

/** Words `first` up to, not including, `end` of `Transcript.words`. */
export interface WordSpan {
  first: number;
  end: number;
}

/** A sentence, or the part of one that a single person spoke. Sentences tile all words of the transcript in order. */
export interface Sentence extends WordSpan {
  role: Role;
  /** Of the role, 0 to 1, calibrated on held-out consultations. */
  confidence: number;
  inStation: boolean;
}

/** A run of sentences by one role. Turns tile all words too. */
export interface Turn extends WordSpan {
  role: Role;
  confidence: number;
}

/** One edge of the station. */
export interface Boundary {
  /** First word inside (start), or first word after (end; may equal `words.length`). */
  word: number;
  /** Seconds, null without times: of the first (last) word spoken inside, whatever noise stands beside it. */
  time: Seconds | null;
  /** A short clause for the sheet: "after the announcement 'you may begin' (line 4)". */
  reason: string;
  confidence: number;
}

export interface Station {
  transcript: Transcript;
  sentences: Sentence[];
  turns: Turn[];
  start: Boundary;
  end: Boundary;
  /** Word positions where the candidate started the station anew; `start.word` is already the last of them. */
  restarts: number[];
  /** Stretches inside start..end that are not marked: announcements, an examiner's interruption. */
  excluded: WordSpan[];
  /** How the roles came about. */
  roleSource: "labels" | "model" | "told" | "mixed";
  /** Each label of the file and the role it was given. */
  labelRoles: { label: string; role: Role; confidence: number }[];
  findings: Finding[];
}

/** What the person at the terminal may state instead of having it found. */
export interface StationOptions {
  /** Seconds; words that start before are outside. */
  from?: Seconds;
  /** Seconds; words that start at or after are outside. */
  to?: Seconds;
  /** Label of the candidate, as written in the transcript. */
  candidate?: string;
}
