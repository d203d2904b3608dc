import type { DraftSegment } from "./draft.ts";
import { syllablesOf } from "./syllables.ts";
import type { Seconds } from "./types.ts";

/** Stretches that share one interval of the file: the voices of one cue, the speakers under one time mark. */
export interface Group {
  segments: DraftSegment[];
  start: Seconds | null;
  end: Seconds | null;
  line: number;
  /** True when the file gives the start as it stands here. */
  startGiven: boolean;
  endGiven: boolean;
  syllables: number;
}

/** Joins each stretch that has no time of its own to the one whose interval it lies in. */
export function toGroups(segments: readonly DraftSegment[]): Group[] {
  const groups: Group[] = [];
  for (const segment of segments) {
    const last = groups[groups.length - 1];
    const weight = segment.words.reduce((sum, word) => sum + syllablesOf(word), 0);
    if (segment.shares === true && last !== undefined) {
      last.segments.push(segment);
      last.syllables += weight;
      continue;
    }
    groups.push({
      segments: [segment],
      start: segment.start,
      end: segment.end,
      line: segment.line,
      startGiven: segment.start !== null,
      endGiven: segment.end !== null,
      syllables: weight,
    });
  }
  return groups;
}

export function hasWords(group: Group): boolean {
  return group.segments.some((segment) => segment.words.length > 0);
}
