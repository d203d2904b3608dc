import type { Finding } from "../problem/problem.ts";

/** Seconds from the start of the recording. */
export type Seconds = number;

export type TranscriptFormat = "text" | "webvtt" | "subrip" | "textgrid" | "json";

/**
 * Where a time comes from. `measured`: the file gives it for this very word or segment.
 * `estimated`: interpolated (by syllables) or repaired. `none`: the file has no time here.
 */
export type Timing = "measured" | "estimated" | "none";

/**
 * One written word. Its place in `Transcript.words` is the coordinate of all evidence:
 * later layers speak of word positions and never of characters.
 */
export interface Word {
  /** Its own place in `Transcript.words`. */
  index: number;
  /** As written, with the punctuation that touches it ("inhaler," or "don't"), never with white space. */
  text: string;
  start: Seconds | null;
  end: Seconds | null;
  timing: Timing;
  /** Place in `Transcript.segments`. */
  segment: number;
  /** 1-based line of the file. */
  line: number;
  /** The recogniser's own confidence, 0 to 1, where the file gives one. */
  confidence?: number;
  /**
   * `word`: speech. `unintelligible`: the transcriber could not hear it ("[inaudible]", "<UNIN/>").
   * `sound`: a noise or an action, not speech ("[laughs]", "(pause)"). A mark of several written words is one Word.
   */
  kind: "word" | "unintelligible" | "sound";
  /** True inside a mark of doubt ("<UNSURE>...</UNSURE>", "(? ... ?)"). */
  doubtful?: boolean;
}

/** One stretch that the file itself sets apart: a cue, an interval, a timed line or paragraph. */
export interface Segment {
  index: number;
  /** The label as written, without its colon ("Speaker 1", "Candidate"), or null. A voice change starts a new segment. */
  speaker: string | null;
  start: Seconds | null;
  end: Seconds | null;
  timing: Timing;
  /** Of an estimated stretch: the edge that the file gives all the same, where several voices share one cue and this is its first or last. */
  edgeGiven?: "start" | "end";
  /** Of an estimated stretch that has its interval for itself: the file gives its start, not its end. */
  startGiven?: true;
  /** It lies in the interval of the stretch before it: another voice of one cue, or under one time mark. */
  shares?: true;
  /** Words `firstWord` up to, not including, `endWord`. Never empty. */
  firstWord: number;
  endWord: number;
  /** 1-based line of its first word. */
  line: number;
  /** Set by a hand-corrected label file only: whether this stretch belongs to the marked station. */
  inStation?: boolean;
}

/** A heading or a divider of the file ("# Station 3", "--- debrief ---"): not speech, but it may say where a station starts. */
export interface Heading {
  text: string;
  line: number;
  /** The heading stands before this word position (which may equal `words.length`). */
  beforeWord: number;
}

export interface Transcript {
  /** The file as the person named it, or `<stdin>`. */
  file: string;
  format: TranscriptFormat;
  words: Word[];
  /** In order of speech: by start where known, else by file order. */
  segments: Segment[];
  headings: Heading[];
  /** `key: value` lines of front matter, keys in lower case. */
  frontMatter: Record<string, string>;
  /** The finest times that the file itself gives. */
  timing: "word" | "segment" | "none";
  /** The last known end, in seconds; null without times. */
  duration: Seconds | null;
  /** Repairs, losses and guesses, in file order. Listed on the sheet. */
  findings: Finding[];
}
