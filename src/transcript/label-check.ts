import type { FindingLog } from "./finding-log.ts";

/** What a label file says under the key `saidwell`. */
export const LABEL_FILE = "labels@1";

/** The key under which a label file keeps what it was when it was written. */
export const CHECK_KEY = "check";

/*
 * FNV-1a (Fowler, Noll, Vo; IETF draft-eastlake-fnv), 32 bits, from its own basis and from another: a slip of one in 2^64
 * does no harm here. It tells of edits, not of forgery, and needs no library in a browser.
 */
const PRIME = 0x01000193;
const BASES = [0x811c9dc5, 0x5bd1e995] as const;

/** Sixteen hexadecimal digits over parts of a label file; blanks, line ends and control characters say nothing. */
export function checkOf(parts: readonly string[]): string {
  const states: number[] = [...BASES];
  const take = (code: number) => states.forEach((state, place) => (states[place] = Math.imul(state ^ code, PRIME)));
  for (const part of parts) {
    const bare = part.replace(/[\s\p{Cc}]+/gu, "");
    if (bare === "") continue;
    for (let place = 0; place < bare.length; place += 1) take(bare.charCodeAt(place));
    // Between two parts, so that moving words from one to the next is an edit.
    take(0x10ffff);
  }
  return states.map((state) => (state >>> 0).toString(16).padStart(8, "0")).join("");
}

/** A label file with the check of its lines in its head, in place of any that is there. @param text with front matter between lines of three dashes */
export function withCheck(text: string): string {
  const lines = text.split("\n");
  const close = lines.indexOf("---", 1);
  const head = lines.slice(0, close).filter((line) => !line.startsWith(`${CHECK_KEY}: `));
  const body = lines.slice(close + 1);
  return [...head, `${CHECK_KEY}: ${checkOf(body)}`, "---", ...body].join("\n");
}

/** Tells on the sheet that a person edited what 'saidwell label' wrote. @param written the check that the file gives; absent in files of earlier versions */
export function tellEdits(written: string | undefined, parts: readonly string[], log: FindingLog): void {
  if (written === undefined || written === checkOf(parts)) return;
  log.add({ code: "SW-T18", severity: "info", message: "the label file was edited by hand after 'saidwell label' wrote it: words, roles, times or edges are as a person left them" });
}
