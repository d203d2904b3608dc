import { readLooseClock } from "./clock.ts";
import { isTimingLine, makeBlock, readTimingLine, type CueBlock } from "./cue-block.ts";
import { readCueVoices } from "./cue-voices.ts";
import { splitLines } from "./decode.ts";
import type { Draft } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import { dropRolledWords } from "./rolling.ts";

/** A time as the WebVTT text writes it (section 4.3, "WebVTT timestamp"). */
const STRICT_TIME = /^(?:\d{2,}:)?[0-5]\d:[0-5]\d\.\d{3}$/;

/**
 * Reads WebVTT. Source: W3C, WebVTT: The Web Video Text Tracks Format, Candidate Recommendation 4 April 2019,
 * sections 4 (syntax) and 6 (parsing). Blocks are found as section 6.1 does, but what that parser drops (a cue whose
 * times cannot be read, text outside a cue) is kept with a finding. Throws SW-T08 when there is no cue at all.
 */
export function readWebVtt(text: string, log: FindingLog): Draft {
  const lines = splitLines(text);
  const draft: Draft = { segments: [], headings: [], frontMatter: {}, endsGiven: true, outOfOrder: "sort" };
  const from = readHeader(lines, draft, log);
  const blocks = readBlocks(lines, from, draft, log);
  if (blocks.length === 0 && lines.slice(from).some((line) => /\S/.test(line) && !/^(NOTE|STYLE|REGION)\b/.test(line))) {
    throw log.refuse("SW-T08", "the WebVTT file has text but no line with times (00:01.000 --> 00:04.000)", {
      line: from + 1,
      mend: "Export the captions again, or hand in the text as a plain text file.",
    });
  }
  tellIdentifiers(blocks, log);
  const voices = readCueVoices(blocks, log);
  dropRolledWords(blocks, voices, log);
  draft.segments = voices.flat();
  return draft;
}

/** The signature, the text behind it, and lines up to the first blank one. Gives the place of the first line after. */
function readHeader(lines: readonly string[], draft: Draft, log: FindingLog): number {
  const first = lines[0] ?? "";
  if (!/^WEBVTT(?:[ \t]|$)/.test(first)) {
    log.add({ code: "SW-T16", severity: "warning", line: 1, message: "the file does not begin with WEBVTT, and was read as WebVTT all the same" });
    if (!/^\s*WEBVTT/i.test(first)) return 0;
  }
  const title = first.replace(/^\s*WEBVTT[ \t]*(?:[-–:][ \t]*)?/i, "").trim();
  if (title !== "") draft.headings.push({ text: title, line: 1, before: 0 });
  let at = 1;
  for (; at < lines.length && lines[at] !== ""; at += 1) {
    const line = lines[at] as string;
    // A missing blank line: the first cue begins here (or its identifier on the line before).
    if (readTimingLine(line) !== null) return at;
    const pair = /^([\w -]+?)\s*[:=]\s*(.*)$/.exec(line);
    if (pair !== null) draft.frontMatter[(pair[1] ?? "").toLowerCase()] = pair[2] ?? "";
    else if (readTimingLine(lines[at + 1] ?? "") === null) {
      log.add({ code: "SW-T14", severity: "info", line: at + 1, kind: "header", message: `the header line "${line}" was left out` });
    }
  }
  return at;
}

function readBlocks(lines: readonly string[], from: number, draft: Draft, log: FindingLog): CueBlock[] {
  const blocks: CueBlock[] = [];
  let confidence: number | undefined;
  let end = from;
  for (let at = from; at < lines.length; ) {
    if (lines[at] === "") {
      at += 1;
      continue;
    }
    // Several cues may stand in one block: its end is looked for once.
    if (at >= end) end = endOfBlock(lines, at);
    const next = nextTiming(lines, at, end);
    const kind = blockKind(lines, at, end);
    if (kind === "NOTE") confidence = readNote(lines, at, next, log) ?? confidence;
    else if (kind === "ATTRIBUTES") readAttributes(lines.slice(at + 1, next), draft);
    else if (kind === "cue") {
      const cue = readCue(lines, at, end, blocks, log);
      if (cue !== null) {
        if (confidence !== undefined) cue.confidence = confidence;
        confidence = undefined;
        blocks.push(cue);
      }
    }
    // A further line of times inside the block starts a cue of its own: the blank line is missing.
    if (next < end) {
      log.add({ code: "SW-T16", severity: "info", line: next + 1, kind: "blank line", message: "the blank line before this cue is missing" });
    }
    at = next;
  }
  return blocks;
}

/** A comment or style block whose second line holds times is a cue by section 6.1, and is one here. */
function blockKind(lines: readonly string[], at: number, end: number): string {
  const cue = isTimingLine(lines[at] as string) || (at + 1 < end && isTimingLine(lines[at + 1] as string));
  return cue ? "cue" : (/^(NOTE|STYLE|REGION|ATTRIBUTES)(?=[ \t:]|$)/.exec(lines[at] as string)?.[1] ?? "cue");
}

function endOfBlock(lines: readonly string[], at: number): number {
  let end = at;
  while (end < lines.length && lines[end] !== "") end += 1;
  return end;
}

/** Place of the second line of times in a block, or its end. */
function nextTiming(lines: readonly string[], at: number, end: number): number {
  const first = readTimingLine(lines[at] ?? "") !== null ? at : at + 1;
  for (let place = first + 1; place < end; place += 1) if (isTimingLine(lines[place] as string)) return place;
  return end;
}

function readCue(lines: readonly string[], at: number, end: number, blocks: CueBlock[], log: FindingLog): CueBlock | null {
  const timingAt = isTimingLine(lines[at] as string) ? at : isTimingLine(lines[at + 1] ?? "") && at + 1 < end ? at + 1 : -1;
  if (timingAt < 0) {
    const to = nextTiming(lines, at, end);
    const number = to < end && to - 1 > at && /^\d+$/.test((lines[to - 1] as string).trim());
    addLooseText(lines.slice(at, number ? to - 1 : to), at, blocks, log);
    return null;
  }
  const timing = readTimingLine(lines[timingAt] as string);
  const start = timing?.start == null ? null : readLooseClock(timing.start);
  const stop = timing?.end == null ? null : readLooseClock(timing.end);
  tellTimes(timing?.start ?? null, timing?.end ?? null, start, stop, timingAt + 1, lines[timingAt] as string, log);
  let textEnd = nextTiming(lines, timingAt, end);
  // The identifier of a cue that follows without a blank line: a number stands alone before its times.
  if (textEnd < end && textEnd - 1 > timingAt && /^\d+$/.test((lines[textEnd - 1] as string).trim())) textEnd -= 1;
  const block = makeBlock(lines, timingAt, textEnd, { start, end: stop }, log);
  return timingAt > at ? { ...block, identifier: lines[at] as string } : block;
}

function tellTimes(
  startText: string | null,
  endText: string | null,
  start: number | null,
  end: number | null,
  line: number,
  raw: string,
  log: FindingLog,
): void {
  if (start === null || (endText !== null && end === null)) {
    log.add({
      code: "SW-T13",
      severity: "warning",
      line,
      kind: "cue time",
      message: `the time in "${raw.trim()}" cannot be read; the words of the cue were kept`,
      mend: "Write times as 00:01.000 --> 00:04.000.",
    });
    return;
  }
  const strict = STRICT_TIME.test(startText ?? "") && (endText === null || STRICT_TIME.test(endText));
  if (!strict) {
    log.add({ code: "SW-T16", severity: "info", line, kind: "loose time", message: "the time is not written as WebVTT has it (00:01.000) and was read all the same" });
  }
}

/** Where only some cues have an identifier, it may be speech that lost its cue. */
function tellIdentifiers(blocks: readonly CueBlock[], log: FindingLog): void {
  const named = blocks.filter((block) => /\p{L}/u.test(block.identifier ?? ""));
  if (named.length === blocks.length) return;
  for (const { identifier, line } of named) {
    log.add({ code: "SW-T14", severity: "info", line: line - 1, kind: "identifier", message: `"${identifier}", the identifier of a cue, is not speech and was left out` });
  }
}

/** Text between cues: a blank line inside a cue's text, most likely, so it goes on with the cue before. */
function addLooseText(lines: readonly string[], at: number, blocks: readonly CueBlock[], log: FindingLog): void {
  const last = blocks[blocks.length - 1];
  const text = lines.join("\n");
  if (last === undefined || /^\s*\d+\s*$/.test(text)) {
    log.add({
      code: "SW-T14",
      severity: last === undefined ? "warning" : "info",
      line: at + 1,
      kind: last === undefined ? "loose" : "number",
      message: last === undefined ? `text before the first cue was left out ("${text.slice(0, 40)}")` : `a number without a cue was left out (${text.trim()})`,
    });
    return;
  }
  log.add({ code: "SW-T16", severity: "info", line: at + 1, kind: "loose text", message: "text without times was read as part of the cue before it" });
  // The line numbers of the words stay right: as many line ends as lie between the two places.
  const gap = at + 1 - last.textLine - (last.text === "" ? 0 : last.text.split("\n").length - 1);
  last.text += "\n".repeat(Math.max(gap, 1)) + text;
}

/** Comments are not speech. One that holds a confidence, as recognisers write before a cue, is read; others are told. */
function readNote(lines: readonly string[], at: number, end: number, log: FindingLog): number | undefined {
  const text = lines.slice(at, end).join(" ");
  const confidence = /^NOTE\s+confidence\s*[:=]\s*([01]?\.?\d+)\s*$/i.exec(text)?.[1];
  const value = confidence === undefined ? Number.NaN : Number(confidence);
  if (value >= 0 && value <= 1) return value;
  log.add({ code: "SW-T14", severity: "info", line: at + 1, kind: "comment", message: "a comment (NOTE) is not speech and was left out" });
  return undefined;
}

function readAttributes(lines: readonly string[], draft: Draft): void {
  for (const line of lines) {
    const pair = /^([\w -]+?)\s*:\s*(.*)$/.exec(line.trim());
    if (pair !== null) draft.frontMatter[(pair[1] ?? "").toLowerCase()] = pair[2] ?? "";
  }
}
