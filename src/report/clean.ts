/*
 * The one place where text from outside (transcripts, rubrics, file names) is made harmless for a terminal.
 * Everything the text report prints passes here first; the JSON report escapes the same characters instead.
 */

/** An escape sequence as ECMA-48 (1991) writes them: CSI, the string controls (OSC, DCS, SOS, PM, APC), and two-byte escapes. */
const ESCAPE_SEQUENCE =
  /(?:\u001b\[|\u009b)[0-?]*[ -/]*[@-~]?|(?:\u001b[\]PX^_]|[\u009d\u0090\u0098\u009e\u009f])[^\u0007\u001b\u009c]*(?:\u0007|\u001b\\|\u009c)?|\u001b[ -/]*[0-~]/g;

/** C0 and C1 controls and DEL; the separators that some terminals treat as line ends. */
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g;

/** Characters without width that reorder or hide what is shown (Unicode TR 36, section 2.3 and TR 9). */
const INVISIBLE = /[\u00ad\u061c\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|[\u{e0000}-\u{e007f}]/gu;

/** Text that can only be read: no escape sequence, no control, nothing invisible; white space becomes single blanks. */
export function clean(text: string): string {
  if (/^[!-~]+( [!-~]+)*$/.test(text)) return text;
  return text.replace(ESCAPE_SEQUENCE, " ").replace(CONTROL, " ").replace(INVISIBLE, "").replace(/\s+/g, " ").trim();
}

/** Many lines without escape sequences and controls, otherwise letter for letter as they were. */
export function withoutControls(text: string): string {
  return text.replace(ESCAPE_SEQUENCE, "").replace(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/g, "");
}

/** A copy of plain data with every string in it cleaned. */
export function cleanDeep<T>(data: T): T {
  return withStrings(data, clean);
}

/** A copy of plain data with every string in it changed; the names of its fields stay. */
export function withStrings<T>(data: T, change: (text: string) => string): T {
  if (typeof data === "string") return change(data) as T;
  if (Array.isArray(data)) return data.map((part) => withStrings(part, change)) as T;
  if (data === null || typeof data !== "object") return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, withStrings(value, change)])) as T;
}

/** What ASCII has for the typographic characters that turn up in speech-to-text. */
const ASCII_FOR: Record<string, string> = {
  "\u2018": "'", "\u2019": "'", "\u201a": "'", "\u201b": "'", "\u201c": '"', "\u201d": '"', "\u201e": '"',
  "\u2010": "-", "\u2011": "-", "\u2012": "-", "\u2013": "-", "\u2014": "-", "\u2015": "-", "\u2212": "-",
  "\u2026": "...", "\u00b7": "-", "\u2022": "-", "\u00d7": "x", "\u00b5": "u", "\u03bc": "u", "\u00bd": "1/2", "\u00bc": "1/4", "\u00be": "3/4",
  "\u00df": "ss", "\u00e6": "ae", "\u00f8": "o", "\u0153": "oe", "\u00b0": " degrees ",
};

/** For a terminal whose locale is not UTF-8: accents off, typographic marks in plain form, the rest as `?`. */
export function toAscii(text: string): string {
  if (/^[\n -~]*$/.test(text)) return text;
  return text
    .replace(/[^\n -~]/gu, (character) => ASCII_FOR[character] ?? character)
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .replace(/[^\n -~]/gu, "?");
}
