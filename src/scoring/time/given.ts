import { hasGivenEnd, hasGivenStart } from "../../transcript/given-times.ts";
import type { Transcript } from "../../transcript/types.ts";

/*
 * Which times the file itself gives. Times of single words inside a caption are interpolated, but a caption's own start
 * and end are exact, also where several voices share it.
 */

/** Whether the file says when this word starts. */
export function startGiven({ words, segments }: Transcript, place: number): boolean {
  const word = words[place];
  if (word === undefined || word.timing === "measured") return word !== undefined;
  const segment = segments[word.segment];
  return segment?.firstWord === place && segment.start === word.start && hasGivenStart(segment);
}

/** Whether the file says when this word ends. */
export function endGiven({ words, segments }: Transcript, place: number): boolean {
  const word = words[place];
  if (word === undefined || word.timing === "measured") return word !== undefined;
  const segment = segments[word.segment];
  return segment?.endWord === place + 1 && segment.end === word.end && hasGivenEnd(segment);
}
