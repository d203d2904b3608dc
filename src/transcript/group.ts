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
  /** True when words have times of their own, which a shared-out start would contradict. */
  wordsTimed: boolean;
  /** Where the last word that has an end of its own ends; no estimate cuts it off. */
  wordsEnd: Seconds;
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
      last.wordsTimed ||= hasTimedWords(segment);
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
      wordsTimed: hasTimedWords(segment),
      wordsEnd: 0,
    });
  }
  return groups;
}

function hasTimedWords(segment: DraftSegment): boolean {
  return segment.words.some((word) => word.start !== undefined || word.end !== undefined);
}

export function hasWords(group: Group): boolean {
  return group.segments.some((segment) => segment.words.length > 0);
}

/** Nobody speaks in it: a bell, a door, a silence. */
export function isNoise(group: Group): boolean {
  return hasWords(group) && group.segments.every((segment) => segment.words.every((word) => word.kind === "sound"));
}
