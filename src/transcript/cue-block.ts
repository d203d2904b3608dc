import type { FindingLog } from "./finding-log.ts";
import type { Seconds } from "./types.ts";

/** One cue as the scanners of WebVTT and SubRip find it, before its text is read. */
export interface CueBlock {
  /** Line of its times. */
  line: number;
  /** Line of its first line of text. */
  textLine: number;
  start: Seconds | null;
  end: Seconds | null;
  text: string;
  /** The line before the times, where the format has one. */
  identifier?: string;
  /** The recogniser's confidence in the whole cue, 0 to 1. */
  confidence?: number;
}

/** A time of a caption in any of the spellings found in the wild; what it says is for `readLooseClock`. */
const TIME = "\\d{1,9}(?:\\s?[:;.,]\\s?\\d{1,9}){1,3}";
const TIMING = new RegExp(`^\\s*(${TIME})?\\s*(-{1,3}\\s?>|[–—]>|→|=>)\\s*(${TIME})?(.*)$`);

const ARROW = "-->";

export interface TimingLine {
  start: string | null;
  end: string | null;
  /** What stands between the two times; "-->" in both formats. */
  sign: string;
  /** Words on the line of the times, where a line end is missing; empty when only cue settings or coordinates follow. */
  rest: string;
}

const SETTINGS = /^(?:[A-Za-z]\w*\s*[:=]\s*\S+\s*)*$/;

/** Reads a line as the times of a cue, or gives null. At least one of the two times must be there. */
export function readTimingLine(line: string): TimingLine | null {
  if (!/[>→]/.test(line)) return null;
  const match = TIMING.exec(line);
  if (match === null || (match[1] === undefined && match[3] === undefined)) return null;
  const rest = (match[4] ?? "").trim();
  return { start: match[1] ?? null, end: match[3] ?? null, sign: match[2] ?? "", rest: SETTINGS.test(rest) ? "" : rest };
}

/** True for a line that is meant for times, whether or not they can be read. */
export function isTimingLine(line: string): boolean {
  return readTimingLine(line) !== null || /^\s*\S{0,20}\d\S{0,20}\s*-->|-->\s*\S{0,8}\d[:.,]\d/.test(line);
}

/** The block of a cue whose times stand at place `at` of the lines and whose text fills the lines up to `to`. */
export function makeBlock(lines: readonly string[], at: number, to: number, times: Pick<CueBlock, "start" | "end">, log: FindingLog): CueBlock {
  const timing = readTimingLine(lines[at] as string);
  if (timing !== null && timing.sign !== ARROW) {
    log.add({ code: "SW-T16", severity: "info", line: at + 1, kind: "arrow", message: `"${timing.sign}" between two times was read as "${ARROW}"` });
  }
  const rest = timing?.rest ?? "";
  const own = lines.slice(at + 1, to);
  if (rest === "") return { line: at + 1, textLine: at + 2, ...times, text: own.join("\n") };
  log.add({ code: "SW-T16", severity: "info", line: at + 1, kind: "same line", message: "text on the line of the times was read as speech" });
  return { line: at + 1, textLine: at + 1, ...times, text: [rest, ...own].join("\n") };
}
