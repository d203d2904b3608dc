import { assemble } from "./assemble.ts";
import { decodeText } from "./decode.ts";
import { detectFormat } from "./detect.ts";
import type { Draft } from "./draft.ts";
import { FindingLog } from "./finding-log.ts";
import { readJson } from "./json.ts";
import { readSubRip } from "./subrip.ts";
import { readText } from "./text.ts";
import { readTextGrid } from "./textgrid.ts";
import type { Transcript, TranscriptFormat } from "./types.ts";
import { readWebVtt } from "./webvtt.ts";

export interface ReadOptions {
  /** The file as the person named it, or `<stdin>`: for findings, and where the text itself leaves the format open. */
  file: string;
  /** States the format instead of having it told from the text. */
  format?: TranscriptFormat;
}

const READERS: Readonly<Record<TranscriptFormat, (text: string, log: FindingLog) => Draft>> = {
  text: readText,
  webvtt: readWebVtt,
  subrip: readSubRip,
  textgrid: readTextGrid,
  json: readJson,
};

/**
 * Reads one transcript: plain text, WebVTT, SubRip, Praat TextGrid or JSON, in UTF-8 or UTF-16, with any line ends.
 * What was repaired, lost or guessed is in `findings`. Pure: no file is opened.
 * Throws ProblemError: SW-T02 no words, SW-T03 format not read, SW-T04 not text, SW-T05 JSON, SW-T06 TextGrid,
 * SW-T07 too large, SW-T08 captions.
 */
export function readTranscript(bytes: Uint8Array | string, options: ReadOptions): Transcript {
  const log = new FindingLog(options.file);
  const text = decodeText(bytes, log);
  if (!/\S/.test(text)) throw log.refuse("SW-T02", "the file is empty", { mend: "Check that the right file was handed in." });
  const format = options.format ?? detectFormat(text, options.file, log);
  return assemble(READERS[format](text, log), format, log);
}
