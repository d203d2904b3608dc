import { CLOCK, RANGE_SIGN, readClock } from "./clock.ts";
import { findLabel, isNameLike, isRoleLabel, isSpeechOpening, type LabelCandidate } from "./labels.ts";
import type { Seconds } from "./types.ts";

/** A time at the head of a line. */
export interface TimeMark {
  start: Seconds | null;
  end: Seconds | null;
  /** As written, for findings. */
  text: string;
  /**
   * `sure`: nobody writes it but to mark a time (in brackets, a range, with hours or a fraction, less than a
   * minute). `bare`: "8:30 ..." may be a clock or a ratio that somebody spoke of.
   */
  certainty: "sure" | "bare";
  /** In brackets, or beside a label. */
  setOff: boolean;
}

/** One line of a plain text, taken apart without knowledge of the others. */
export interface TextLine {
  line: number;
  raw: string;
  kind: "blank" | "heading" | "content";
  /** Of a heading, without its marks. */
  heading: string;
  mark: TimeMark | null;
  label: LabelCandidate | null;
  /** True when the label and the time stand alone on the line ("Speaker 1  0:12") and what they head follows. */
  header: boolean;
  /** Text behind the mark, label still in it. */
  afterMark: string;
  /** Text behind mark and label. */
  rest: string;
  /** A dialogue dash or bullet opens the line. */
  turn: boolean;
}

const RANGE = `${CLOCK}(?:\\s*${RANGE_SIGN}\\s*${CLOCK})?`;
const BRACKET_MARK = new RegExp(`^\\s*[\\[(<{]\\s*(${RANGE})\\s*[\\])>}]\\s*(?:[-–—|:]+(?=\\s|$)\\s*)?`);
const BARE_MARK = new RegExp(`^\\s*(${RANGE})(?=\\s|$|\\s*[-–—|:](?:\\s|$))\\s*(?:[-–—|:]+(?=\\s|$)\\s*)?`);
/** Meant for a time and none: "[9:99]", "(0:1x)" is not. */
const BROKEN_MARK = /^\s*[[(]\s*(\d{1,4}(?:[:.,;]\d{1,4}){1,4}(?:\s*[-–—>]+\s*\d{1,4}(?:[:.,;]\d{1,4}){1,4})?)\s*[\])]\s*/;
const NAME = "[\\p{L}\\p{N}][\\p{L}\\p{N}\\p{M} .'’_#&/-]{0,39}?";
/** "Anna [0:12]: text", "**Anna** (0:12) text", "Speaker 1  0:12", "Speaker 1 | 0:12". */
const NAME_THEN_TIME = new RegExp(`^\\s*(${NAME})\\s*(?:[,|–—-]\\s*)?(?:[\\[(]\\s*(${RANGE})\\s*[\\])]|(${RANGE}))\\s*(:?)\\s*(?=(.?))`, "u");
const COLUMN_TIME = `(?:${CLOCK}|\\d+\\.\\d+)`;
/** Meant for a time by the letters between its numbers: "[2h00]", "[1m20s]", "[2'30]". Not read: it may be hours or minutes. */
const LETTERED_MARK = /^\s*\[\s*(\d{1,3}\s*(?:h|hrs?|m|mins?|['′])\s*\d{1,2}\s*(?:m|mins?|s|secs?|["″])?)\s*\]\s*/i;
/** Columns parted by tabs, as tables and labelling programs give them: label, start, end, text; the label may come after the times. */
const COLUMNS = new RegExp(`^(?:(?=[^\\t]*\\p{L})(${NAME})\\t+)?(${COLUMN_TIME})\\t+(?:(${COLUMN_TIME})\\t+)?(?:(${NAME})\\t+)?(?=\\S)`, "u");
/** Words behind a bare time that make it a time of day. */
const TIME_OF_DAY = /^\s*(?:a\.?m\b|p\.?m\b|o['’]?\s?clock|in the (?:morning|afternoon|evening)|at night|every (?:day|morning|night|evening)|hours\b)/i;

export function readTextLine(raw: string, line: number): TextLine {
  const none: TextLine = { line, raw, kind: "content", heading: "", mark: null, label: null, header: false, afterMark: raw, rest: raw, turn: false };
  if (!/\S/.test(raw)) return { ...none, kind: "blank" };
  const heading = readHeading(raw);
  if (heading !== null) return { ...none, kind: "heading", heading };

  const turn = TURN.exec(raw)?.[0] ?? "";
  const body = raw.slice(turn.length);
  const open = { ...none, afterMark: body, rest: body, turn: turn !== "" };
  return readColumns(open, body) ?? readTimeFirst(open, body) ?? readNameFirst(open, body) ?? withLabel(open, body);
}

/** A long dash before a small letter only carries a sentence on. */
const TURN = /^\s*(?:[-•*]\s+(?=\S)|[–—]\s+(?=["'“‘([¿¡]*[\p{Lu}\p{Lo}])|[-–—](?=\p{Lu})|>{1,3}\s*(?=\S))/u;

/** `# Title`, a line wholly in bold, `=== Title ===`, `--- debrief ---`, or a bare rule. */
function readHeading(raw: string): string | null {
  const text = raw.trim();
  const hash = /^#{1,6}\s+(.*?)\s*#*$/.exec(text)?.[1];
  if (hash !== undefined) return hash;
  if (/^(?:[-–—=_*~]\s?){3,}$/.test(text)) return text;
  const ruled = /^([-–—=_*~#])\1{1,}\s*([^-–—=_*~#].*?)\s*\1{2,}$/.exec(text);
  if (ruled !== null) {
    const inner = (ruled[2] ?? "").trim();
    return readMark(inner) === null && findLabel(text) === null ? inner : null;
  }
  return null;
}

function readColumns(open: TextLine, body: string): TextLine | null {
  const match = COLUMNS.exec(body);
  if (match === null) return null;
  const [, before, from, to, behind] = match;
  const seconds = (text: string): Seconds | null => (text.includes(":") ? readClock(text) : Number(text));
  const start = seconds(from ?? "");
  const end = to === undefined ? null : seconds(to);
  // One number without a colon may be a dose; two of them are a start and an end.
  if (start === null || (to === undefined && !(from ?? "").includes(":"))) return null;
  const name = before ?? behind;
  const label = name !== undefined && /\p{L}/u.test(name) ? { label: name.trim(), restAt: 0, strong: true } : null;
  const rest = body.slice(match[0].length);
  return { ...open, mark: { start, end, text: from ?? "", certainty: "sure", setOff: true }, label, afterMark: rest, rest };
}

function readTimeFirst(open: TextLine, body: string): TextLine | null {
  const bold = /^\s*(\*\*|__)\s*(.+?)\s*\1/.exec(body);
  const inner = bold?.[2] ?? "";
  // "**[0:12] Anna:** text": the bold sign ends behind the label; without it the line reads as ever.
  const plain = bold !== null && readMark(inner) !== null ? inner + body.slice(bold[0].length).replace(/^(?=\S)/, " ") : body;
  const found = readMark(plain);
  if (found === null) return null;
  const { mark, length } = found;
  const after = plain.slice(length);
  if (mark.certainty === "bare" && TIME_OF_DAY.test(after)) return null;
  const line = withLabel({ ...open, mark, afterMark: after }, after);
  if (line.label === null && /\S/.test(after) && isHeaderName(after.trim())) {
    line.label = { label: after.trim(), restAt: after.length, strong: false };
    line.header = true;
    line.rest = "";
  }
  if (line.label?.strong === true) mark.certainty = "sure";
  return line;
}

function readNameFirst(open: TextLine, body: string): TextLine | null {
  const plain = body.replace(/^\s*(\*\*|__)\s*(.+?)\s*\1/, "$2");
  const match = NAME_THEN_TIME.exec(plain);
  const name = match?.[1]?.trim() ?? "";
  if (match === null || !/\p{L}/u.test(name) || !isNameLike(name) || isSpeechOpening(name)) return null;
  const bracketed = match[2] !== undefined;
  const rest = plain.slice(match[0].length);
  const header = !/\S/.test(rest);
  // Without brackets the time must end the line, or a colon must follow: "Anna 0:12: hello".
  if (!bracketed && !header && match[4] !== ":") return null;
  if (bracketed && !header && match[4] !== ":" && !isRoleLabel(name)) return null;
  const mark = toMark(match[2] ?? match[3] ?? "");
  if (mark === null) return null;
  mark.certainty = "sure";
  return { ...open, mark, label: { label: name, restAt: 0, strong: bracketed || match[4] === ":" || isRoleLabel(name) }, header, afterMark: rest, rest };
}

function withLabel(line: TextLine, text: string): TextLine {
  const label = findLabel(text);
  if (label === null) return { ...line, rest: text };
  return { ...line, label, rest: text.slice(label.restAt) };
}

/** "[0:12] Speaker 2" on a line of its own: a few capitalised words and no end of a sentence. */
function isHeaderName(text: string): boolean {
  return isRoleLabel(text) || (isNameLike(text) && text.split(/\s+/).length <= 3 && !/[.,?!…]$/.test(text) && !isSpeechOpening(text) && text.length <= 40);
}

export interface FoundMark {
  mark: TimeMark;
  /** Of the mark in the text, with the white space and the sign behind it. */
  length: number;
}

/** The time mark at the head of a text. A broken one has no start. */
export function readMark(text: string): FoundMark | null {
  const bracketed = BRACKET_MARK.exec(text);
  if (bracketed !== null) {
    const mark = toMark(bracketed[1] ?? "");
    return { mark: mark ?? { start: null, end: null, text: bracketed[1] ?? "", certainty: "sure", setOff: true }, length: bracketed[0].length };
  }
  const broken = BROKEN_MARK.exec(text);
  if (broken !== null && /[:;]/.test(broken[1] ?? "")) {
    return { mark: { start: null, end: null, text: broken[1] ?? "", certainty: "sure", setOff: true }, length: broken[0].length };
  }
  const lettered = LETTERED_MARK.exec(text);
  if (lettered !== null) return { mark: { start: null, end: null, text: lettered[1] ?? "", certainty: "sure", setOff: true }, length: lettered[0].length };
  const bare = BARE_MARK.exec(text);
  const mark = bare === null ? null : toMark(bare[1] ?? "");
  if (bare === null || mark === null) return null;
  mark.certainty = isBare(bare[1] ?? "") ? "bare" : "sure";
  mark.setOff = false;
  return { mark, length: bare[0].length };
}

/** One time of minutes and seconds, a minute or more: what a clock on the wall would say too. */
function isBare(text: string): boolean {
  return /^[1-9]\d?:\d{2}$|^0[1-9]:\d{2}$/.test(text);
}

function toMark(text: string): TimeMark | null {
  const [from, to] = text.split(new RegExp(`\\s*${RANGE_SIGN}\\s*`));
  const start = readClock(from ?? "");
  const end = to === undefined ? null : readClock(to);
  if (start === null || (to !== undefined && end === null)) return null;
  return { start, end, text, certainty: "sure", setOff: true };
}

/** A mark in square or round brackets within a line. */
export const MARK_WITHIN = new RegExp(`\\[\\s*(${RANGE})\\s*\\]|\\(\\s*(${RANGE})\\s*\\)`, "g");
export { toMark as readRange };
