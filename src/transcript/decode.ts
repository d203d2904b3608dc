import type { FindingLog } from "./finding-log.ts";
import { MAX_BYTES } from "./limits.ts";

/** First bytes of what people hand in by mistake, with a name for it. Source: the formats' own registered signatures. */
const SIGNATURES: readonly (readonly [readonly number[], string])[] = [
  [[0x50, 0x4b, 0x03, 0x04], "a zip archive, as word processors save"],
  [[0x25, 0x50, 0x44, 0x46], "a PDF"],
  [[0xd0, 0xcf, 0x11, 0xe0], "an old word-processor document"],
  [[0x52, 0x49, 0x46, 0x46], "a sound or film recording"],
  [[0x49, 0x44, 0x33], "a sound recording"],
  [[0x4f, 0x67, 0x67, 0x53], "a sound recording"],
  [[0x1f, 0x8b], "a compressed file"],
];

/**
 * The text of a file: UTF-8, or UTF-8 and UTF-16 (either byte order) with a byte-order mark, which is taken off.
 * UTF-16 without the mark is read too and noted. Throws SW-T04 (another encoding) and SW-T07 (too large).
 */
export function decodeText(input: Uint8Array | string, log: FindingLog): string {
  if (input.length > MAX_BYTES) {
    throw log.refuse("SW-T07", `the file holds ${input.length} bytes and the limit is ${MAX_BYTES}`, {
      mend: "Cut the recording into stations and hand in one at a time.",
    });
  }
  if (typeof input === "string") return withoutZeros(input.replace(/^\uFEFF/, ""), log);

  for (const [bytes, name] of SIGNATURES) {
    if (bytes.every((byte, at) => input[at] === byte)) {
      throw log.refuse("SW-T04", `the file is ${name}, not text`, { mend: "Save or export the transcript as plain text (UTF-8)." });
    }
  }
  const marked = encodingOfMark(input);
  const guessed = marked ?? guessUtf16(input);
  if (marked === null && guessed !== null) {
    log.add({ code: "SW-T16", severity: "info", message: `the file has no byte-order mark and was read as ${guessed.toUpperCase()}` });
  }
  try {
    return withoutZeros(new TextDecoder(guessed ?? "utf-8", { fatal: true }).decode(input), log);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw log.refuse("SW-T04", "the file is not text in UTF-8 or UTF-16", {
      line: lineOfFault(input),
      mend: "Save it again with the encoding UTF-8.",
    });
  }
}

/** A share of zero characters above which a file is data, not text with a few damaged places. */
const MOST_ZEROS = 0.01;

/** Zero characters become U+FFFD, as the WebVTT text (section 6.1, step 1) and HTML do. */
function withoutZeros(text: string, log: FindingLog): string {
  const zeros = text.split("\0").length - 1;
  if (zeros === 0) return text;
  if (zeros > text.length * MOST_ZEROS) {
    throw log.refuse("SW-T04", "the file holds binary data, not text", { mend: "Save or export the transcript as plain text (UTF-8)." });
  }
  const line = splitLines(text.slice(0, text.indexOf("\0"))).length;
  log.add({ code: "SW-T16", severity: "warning", line, message: `${zeros} damaged character${zeros > 1 ? "s were" : " was"} replaced` });
  return text.replaceAll("\0", "\uFFFD");
}

function encodingOfMark(bytes: Uint8Array): "utf-8" | "utf-16le" | "utf-16be" | null {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return "utf-8";
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  return null;
}

/** Latin text in UTF-16 has a zero in every second byte; UTF-8 text has none. */
function guessUtf16(bytes: Uint8Array): "utf-16le" | "utf-16be" | null {
  const sample = Math.min(bytes.length - (bytes.length % 2), 1024);
  let even = 0;
  let odd = 0;
  for (let at = 0; at < sample; at += 2) {
    if (bytes[at] === 0) even += 1;
    if (bytes[at + 1] === 0) odd += 1;
  }
  const most = (sample / 2) * 0.7;
  if (sample < 4) return null;
  if (odd > most && even === 0) return "utf-16le";
  if (even > most && odd === 0) return "utf-16be";
  return null;
}

/** The line on which the bytes stop being UTF-8: the largest valid prefix, by bisection. */
function lineOfFault(bytes: Uint8Array): number {
  let good = 0;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    try {
      // `stream` forgives a character cut off at the end of the prefix.
      new TextDecoder("utf-8", { fatal: true }).decode(bytes.subarray(0, middle), { stream: true });
      good = middle;
    } catch {
      bad = middle;
    }
  }
  let line = 1;
  for (let at = 0; at < good; at += 1) {
    if (bytes[at] === 0x0a || (bytes[at] === 0x0d && bytes[at + 1] !== 0x0a)) line += 1;
  }
  return line;
}

/** The lines of a text, whatever ends them (LF, CRLF, CR). `lines[0]` is line 1. */
export function splitLines(text: string): string[] {
  return text.split(/\r\n|\n|\r/);
}
