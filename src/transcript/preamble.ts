import type { Draft } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import { readPair } from "./front-matter.ts";
import { isFrontMatterKey, isSpeechOpening } from "./labels.ts";
import type { TextLine } from "./text-line.ts";

/** Most words of a line before the first speech that still reads as a title. */
const MOST_TITLE_WORDS = 12;

/**
 * Reads what stands before the first speech: `key: value` lines become front matter, short lines without the end of
 * a sentence become headings, if times or labels show below where the speech begins. Gives the place of the first
 * line of speech. What was taken for a title is a finding.
 */
export function readPreamble(lines: readonly TextLine[], draft: Draft, log: FindingLog): number {
  const timed = lines.some((line) => line.mark !== null);
  const first = lines.findIndex((line) => line.mark !== null || line.label !== null);
  // Without times and labels nothing shows where the speech begins: only well-known keys at the very top count.
  const system = first >= 0;
  for (let at = 0; at < lines.length; at += 1) {
    const line = lines[at] as TextLine;
    if (line.kind === "blank") continue;
    if (line.kind === "heading") {
      draft.headings.push({ text: line.heading, line: line.line, before: 0 });
      continue;
    }
    if (line.mark !== null || line.turn) return at;
    const pair = readPair(line.raw);
    if (pair !== null && isPairOfFile(pair, line, system, timed)) {
      if (line.label !== null) tellPair(line, log);
      draft.frontMatter[pair.key] = pair.value;
      continue;
    }
    if (line.label !== null || !system || !isTitle(line.raw)) return at;
    draft.headings.push({ text: line.raw.trim(), line: line.line, before: 0 });
    log.add({
      code: "SW-T17",
      severity: "info",
      line: line.line,
      kind: "title",
      message: `"${line.raw.trim().slice(0, 40)}", before the first time or label, was read as a title, not as speech`,
    });
  }
  return lines.length;
}

function isPairOfFile(pair: { key: string; value: string }, line: TextLine, system: boolean, timed: boolean): boolean {
  const token = /^(?=.*\d)[\w#/-]{1,12}$/.test(pair.value);
  // "Candidate: 14" above a text that has times names the candidate; with a sentence behind it somebody speaks.
  if (line.label !== null) return (timed && token) || (isFrontMatterKey(pair.key) && !/[.?!]$/.test(pair.value));
  if (isFrontMatterKey(pair.key)) return true;
  return system && timed && !isSpeechOpening(pair.key) && isTitle(pair.value);
}

function tellPair(line: TextLine, log: FindingLog): void {
  log.add({ code: "SW-T17", severity: "info", line: line.line, kind: "pair", message: `"${line.raw.trim()}", before the first time, was read as a note on the file, not as speech` });
}

function isTitle(text: string): boolean {
  const plain = text.trim();
  return !/[.?!,…]["'”’)\]]*$/.test(plain) && !/^[[(*<{].*[\])*>}]$/.test(plain) && plain.split(/\s+/).length <= MOST_TITLE_WORDS;
}
