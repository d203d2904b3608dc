import type { Seconds, Word } from "./types.ts";

/** A word as a format's reader hands it on: times only where the file gives them for this very word. */
export interface DraftWord {
  text: string;
  line: number;
  kind: Word["kind"];
  doubtful?: boolean;
  confidence?: number;
  start?: Seconds;
  end?: Seconds;
}

/** A stretch as a format's reader hands it on, in file order. Without words it is only a time mark. */
export interface DraftSegment {
  speaker: string | null;
  start: Seconds | null;
  end: Seconds | null;
  line: number;
  words: DraftWord[];
  /** True when it has no time of its own and lies within the interval of the segment before it (a second voice in one cue). */
  shares?: boolean;
  inStation?: boolean;
}

export interface DraftHeading {
  text: string;
  line: number;
  /** It stands before this place in `Draft.segments` (which may equal their number). */
  before: number;
}

export interface Draft {
  segments: DraftSegment[];
  headings: DraftHeading[];
  frontMatter: Record<string, string>;
  /** True when the format gives every stretch an end, so that a missing one is worth a finding. */
  endsGiven: boolean;
  /** The end of the recording where the file gives it: no estimate goes beyond. */
  latest?: Seconds;
  /**
   * What a time that runs backwards means. `sort`: the times are a machine's, so the order of the file is not the
   * order of speech. `distrust`: a person typed it, so the text stands where it stands and the time is wrong.
   */
  outOfOrder: "sort" | "distrust";
}
