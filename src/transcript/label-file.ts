import type { Draft } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import { CHECK_KEY, tellEdits } from "./label-check.ts";
import { isSpeechOpening } from "./labels.ts";
import { TextBuilder } from "./text-builder.ts";
import { readMark } from "./text-line.ts";

/** Headings of a label file and what they say of the words below. */
const PARTS: Readonly<Record<string, boolean>> = { "before the station": false, station: true, "after the station": false };

/** A time that was estimated: for the eye only. The line lies in the interval of the line before it. */
const ESTIMATED = /^\s*\[\s*~[^\]]*\]\s*/;

const LABEL = /^\s*([^\s:][^:]{0,60}?):(?:\s+|$)/;

/**
 * Reads the lines of a label file that a person may have corrected: `[0:12.300 - 0:19.950] Candidate: words ...`, or
 * without the times, under the headings `# Before the station`, `# Station`, `# After the station`. Here a label is
 * whatever stands before the first colon, and a time within the words is a word, so that what was written comes back
 * word for word. A line without a label goes on with the line before it; one with an estimated time, `[~0:14.200]`,
 * shares the interval of the line before it.
 */
export function readLabelFile(lines: readonly string[], from: number, draft: Draft, log: FindingLog): void {
  tellEdits(draft.frontMatter[CHECK_KEY], lines.slice(from), log);
  const builder = new TextBuilder(draft, log);
  let inStation: boolean | undefined;
  lines.slice(from).forEach((raw, place) => {
    const line = from + place + 1;
    if (!/\S/.test(raw)) return;
    const heading = /^#{1,6}\s+(.*?)\s*$/.exec(raw)?.[1];
    if (heading !== undefined) {
      builder.heading(heading, line);
      const part = PARTS[heading.toLowerCase()];
      if (part !== undefined) inStation = part;
      else log.add({ code: "SW-T16", severity: "info", line, kind: "part", message: `the heading "${heading}" is none of a label file's; the words below it stay in the part above` });
      return;
    }
    const estimated = ESTIMATED.exec(raw)?.[0].length ?? 0;
    const found = estimated === 0 && /^\s*\[/.test(raw) ? readMark(raw) : null;
    const body = raw.slice(found === null ? estimated : found.length);
    const label = LABEL.exec(body);
    const named = label !== null && (found !== null || estimated > 0 || !isSpeechOpening(label[1] ?? ""));
    if (found?.mark.start === null) {
      log.add({ code: "SW-T13", severity: "warning", line, kind: "mark", message: `the time "${found.mark.text}" cannot be read; the words were kept` });
    }
    if (found === null && !named && builder.isOpen) {
      builder.add(body.trim(), line);
      return;
    }
    const speaker = named ? (label?.[1] ?? "").trim() : null;
    builder.open({
      speaker,
      line,
      start: found?.mark.start ?? null,
      end: found?.mark.end ?? null,
      shares: estimated > 0,
      ...(inStation === undefined ? {} : { inStation }),
    });
    builder.add((named ? body.slice(label?.[0].length ?? 0) : body).trim(), line);
  });
  builder.close();
}
