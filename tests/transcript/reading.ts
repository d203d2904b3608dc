import { readTranscript, type ReadOptions } from "../../src/transcript/read.ts";
import { ProblemError, type Finding } from "../../src/problem/problem.ts";
import type { Transcript } from "../../src/transcript/types.ts";

export function read(text: string | Uint8Array, file = "rehearsal.txt", format?: ReadOptions["format"]): Transcript {
  return readTranscript(text, format === undefined ? { file } : { file, format });
}

/** Each stretch as "speaker: words", null as a question mark. */
export function spoken(transcript: Transcript): string[] {
  return transcript.segments.map((segment) => {
    const words = transcript.words.slice(segment.firstWord, segment.endWord).map((word) => word.text);
    return `${segment.speaker ?? "?"}: ${words.join(" ")}`;
  });
}

/** Each stretch as [start, end], to the millisecond. */
export function intervals(transcript: Transcript): (number | null)[][] {
  const rounded = (time: number | null): number | null => (time === null ? null : Math.round(time * 1000) / 1000);
  return transcript.segments.map((segment) => [rounded(segment.start), rounded(segment.end)]);
}

export function codes(transcript: Transcript): string[] {
  return transcript.findings.map((finding) => finding.code);
}

/** The findings of a refused file; fails the test when it was not refused, or by another kind of error. */
export function refusal(text: string | Uint8Array, file = "rehearsal.txt", format?: ReadOptions["format"]): readonly Finding[] {
  try {
    read(text, file, format);
  } catch (error) {
    if (error instanceof ProblemError) return error.findings;
    throw error;
  }
  throw new Error("the file was read, not refused");
}
