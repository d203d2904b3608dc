import { readTimingLine } from "./cue-block.ts";
import type { FindingLog } from "./finding-log.ts";
import type { TranscriptFormat } from "./types.ts";

/** Formats that look like text and hold no plain transcript: told by name rather than read as speech. */
const OTHERS: readonly (readonly [RegExp, string])[] = [
  [/^\s*\{\\rtf/, "a rich-text document"],
  [/^\s*(?:<\?xml|<tt[\s>:]|<smil|<eaf|<ANNOTATION_DOCUMENT)/i, "XML"],
  [/^\s*(?:<!doctype html|<html)/i, "a web page"],
  [/^\s*\[Script Info\]/i, "a subtitle script with styles"],
  [/^\s*"?(?:start|begin|from|speaker|text|id|index)[\w ]*"?\s*([,;\t])(?:[^\n]*\1)?\s*"?(?:text|end|speaker|transcript|start|utterance|words)/i, "a table (CSV)"],
];

/**
 * Tells the format by what the text holds; the file's name only decides what an empty or ambiguous text was meant to be.
 * Throws SW-T03 for a format of another kind.
 */
export function detectFormat(text: string, file: string, log: FindingLog): TranscriptFormat {
  const head = text.slice(0, 4096);
  if (/^\s*WEBVTT(?:\s|$)/.test(head)) return "webvtt";
  if (isTextGrid(head, log)) return "textgrid";
  if (/^\s*\{\s*(?:["}'/]|$)|^\s*\[\s*(?:[{["\]'/]|$)/.test(head)) return "json";
  for (const [pattern, name] of OTHERS) {
    if (pattern.test(head)) {
      throw log.refuse("SW-T03", `the file is ${name}, which is not one of the formats read`, {
        mend: "Export it as plain text, WebVTT, SubRip, TextGrid or JSON.",
      });
    }
  }
  const extension = /\.([A-Za-z0-9]+)$/.exec(file)?.[1]?.toLowerCase();
  if (extension === "json") return "json";
  if (extension === "textgrid") return "textgrid";
  if (hasCueTimes(text)) return extension === "vtt" ? "webvtt" : "subrip";
  if (extension === "vtt") return "webvtt";
  if (extension === "srt" && !/^\s*[[(]?\d{1,3}:\d{2}/m.test(text)) return "subrip";
  return "text";
}

function isTextGrid(head: string, log: FindingLog): boolean {
  if (/^\s*(?:File type\s*=\s*)?"ooTextFile/.test(head) || /^\s*Object class\s*=\s*"TextGrid/m.test(head)) return true;
  if (/^ooBinaryFile/.test(head) || /"Praat chronological TextGrid text file"/.test(head)) {
    throw log.refuse("SW-T03", "the file is a TextGrid in binary or chronological form, which is not read", {
      mend: "Open it in a TextGrid editor and save it as a text file or a short text file.",
    });
  }
  return false;
}

/** A line with two times and an arrow, and nothing else that could be speech: "[0:01 --> 0:04] hello" is plain text. */
function hasCueTimes(text: string): boolean {
  for (const match of text.matchAll(/^.*(?:-->|->|=>).*$/gm)) {
    const timing = readTimingLine(match[0]);
    if (timing !== null && timing.start !== null && timing.end !== null && timing.rest === "") return true;
  }
  return false;
}
