import { readLooseClock } from "./clock.ts";
import { isTimingLine, makeBlock, readTimingLine, type CueBlock } from "./cue-block.ts";
import { readCueVoices } from "./cue-voices.ts";
import { splitLines } from "./decode.ts";
import type { Draft } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import { dropRolledWords } from "./rolling.ts";

/** `{\an8}`, `{\i1}`: settings of place and type that some editors leave in the text. */
const OVERRIDE = /\{\\[^{}]*\}/g;

/** A time as programs that write SubRip have it. */
const STRICT_TIME = /^\d{2,}:[0-5]\d:[0-5]\d,\d{3}$/;

/**
 * Reads SubRip as found in the wild: no published text defines it, so a cue is what follows a line of times up to the
 * next, whatever is missing around it (index, blank line, hours, comma). Throws SW-T08 when there is no line of times.
 */
export function readSubRip(text: string, log: FindingLog): Draft {
  const lines = splitLines(text);
  const places = lines.flatMap((line, at) => (isTimingLine(line) ? [at] : []));
  if (places.length === 0) {
    throw log.refuse("SW-T08", "the SubRip file has no line with times (00:00:01,000 --> 00:00:04,000)", {
      line: 1,
      mend: "Export the captions again, or hand in the text as a plain text file.",
    });
  }
  tellLead(lines.slice(0, places[0]), log);
  const blocks = places.map((at, place) => readCue(lines, at, places[place + 1] ?? lines.length, place, log));
  const voices = readCueVoices(blocks, log);
  dropRolledWords(blocks, voices, log);
  return { segments: voices.flat(), headings: [], frontMatter: {}, endsGiven: true, outOfOrder: "sort" };
}

function readCue(lines: readonly string[], at: number, next: number, ordinal: number, log: FindingLog): CueBlock {
  const timing = readTimingLine(lines[at] as string);
  const start = timing?.start == null ? null : readLooseClock(timing.start);
  const end = timing?.end == null ? null : readLooseClock(timing.end);
  if (start === null || (timing?.end != null && end === null)) {
    log.add({
      code: "SW-T13",
      severity: "warning",
      line: at + 1,
      kind: "cue time",
      message: `the time in "${(lines[at] as string).trim()}" cannot be read; the words of the cue were kept`,
      mend: "Write times as 00:00:01,000 --> 00:00:04,000.",
    });
  }
  if (start !== null && !(STRICT_TIME.test(timing?.start ?? "") && (timing?.end == null || STRICT_TIME.test(timing.end)))) {
    log.add({ code: "SW-T16", severity: "info", line: at + 1, kind: "loose time", message: "the time is not written as SubRip has it (00:00:01,000) and was read all the same" });
  }
  if (!/^\s*\d+\s*$/.test(lines[at - 1] ?? "")) {
    log.add({ code: "SW-T16", severity: "info", line: at + 1, kind: "index", message: "the number above this cue is missing" });
  }
  let to = withoutIndex(lines, at, next, ordinal, log);
  while (to > at + 1 && !/\S/.test(lines[to - 1] as string)) to -= 1;
  const blank = lines.slice(at + 1, to).findIndex((line) => !/\S/.test(line));
  if (blank > 0) {
    log.add({ code: "SW-T16", severity: "info", line: at + 2 + blank, kind: "blank", message: "a blank line inside a cue was passed over" });
  }
  const block = makeBlock(lines, at, to, { start, end }, log);
  block.text = block.text.replace(OVERRIDE, "").replace(/\\[Nh]/g, " ");
  return block;
}

/**
 * Place behind the cue's text: the index of the next cue is no speech. A lone number is that index when a blank line
 * stands before it or it is the very number that comes next; else somebody said it.
 */
function withoutIndex(lines: readonly string[], at: number, next: number, ordinal: number, log: FindingLog): number {
  if (next === lines.length) return next;
  const place = next - 1;
  if (place <= at || !/^\s*\d+\s*$/.test(lines[place] as string)) return next;
  const expected = [ordinal + 1, ordinal + 2].includes(Number(lines[place]));
  const afterBlank = !/\S/.test(lines[place - 1] as string);
  if (!afterBlank && expected) {
    log.add({ code: "SW-T16", severity: "info", line: place + 1, kind: "blank line", message: "the blank line before this cue is missing" });
  }
  return afterBlank || expected ? place : next;
}

function tellLead(lines: readonly string[], log: FindingLog): void {
  lines.forEach((line, at) => {
    if (/\S/.test(line) && !/^\s*\d+\s*$/.test(line)) {
      log.add({ code: "SW-T14", severity: "warning", line: at + 1, kind: "lead", message: `text before the first cue was left out ("${line.trim().slice(0, 40)}")` });
    }
  });
}
