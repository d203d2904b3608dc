// Shared by the tests of this folder.
import { findStation } from "../../src/station/find.ts";
import type { Role, Station, StationOptions } from "../../src/station/types.ts";
import { readTranscript } from "../../src/transcript/read.ts";

/** Finds the station in text of any format that the reader knows. */
export function stationIn(text: string, options: StationOptions = {}, file = "rehearsal.txt"): Station {
  return findStation(readTranscript(new TextEncoder().encode(text), { file }), options);
}

export function textOf(station: Station, first: number, end: number): string {
  return station.transcript.words.slice(first, end).map((word) => word.text).join(" ");
}

/** The words inside start..end. */
export function inside(station: Station): string {
  return textOf(station, station.start.word, station.end.word);
}

/** Role of the sentence that holds these words. */
export function roleOf(station: Station, words: string): Role {
  const all = station.transcript.words.map((word) => word.text);
  const wanted = words.split(" ");
  const at = all.findIndex((_, from) => wanted.every((word, place) => all[from + place] === word));
  if (at < 0) throw new Error(`"${words}" is not in the transcript`);
  const found = station.sentences.find((sentence) => sentence.first <= at && at < sentence.end);
  return found!.role;
}

/** Words given to the right role, as a share; `truth` holds lines `C: words` and `P: words` that join to the transcript's words. */
export function shareRight(station: Station, truth: string): number {
  const gold = truth
    .trim()
    .split("\n")
    .flatMap((line) => line.trim().slice(3).split(/\s+/).map(() => (line.trim().startsWith("C:") ? "candidate" : "patient")));
  if (gold.length !== station.transcript.words.length) throw new Error(`the truth has ${gold.length} words, the transcript ${station.transcript.words.length}`);
  const found = station.sentences.flatMap((sentence) => new Array<Role>(sentence.end - sentence.first).fill(sentence.role));
  return gold.filter((role, at) => role === found[at]).length / gold.length;
}

/** The lines of `truth` without their labels, merged into one paragraph. */
export function merged(truth: string): string {
  return truth
    .trim()
    .split("\n")
    .map((line) => line.trim().slice(3))
    .join(" ");
}

export function bare(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}'\s-]+/gu, "")
    .replace(/\s+/g, " ");
}
