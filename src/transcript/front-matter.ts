import type { Draft } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";

/** A fence of front matter stands within so many lines, or the three dashes on line 1 were a divider. */
const LONGEST_FRONT_MATTER = 100;

/**
 * Reads a block between lines of three dashes at the head of the file into `draft.frontMatter` and gives the place of
 * the first line behind it; 0 when there is none. A small part of YAML: `key: value` lines, quotes taken off, and
 * `- item` lines joined to the key above with a comma.
 */
export function readFrontMatter(lines: readonly string[], draft: Draft, log: FindingLog): number {
  let first = 0;
  while (first < lines.length && !/\S/.test(lines[first] as string)) first += 1;
  if (!/^---\s*$/.test(lines[first] ?? "")) return 0;
  const close = lines.findIndex((line, at) => at > first && /^(?:---|\.\.\.)\s*$/.test(line));
  const inside = lines.slice(first + 1, close);
  // Front matter opens with a key; speech between two dividers does not.
  if (close < 0 || close - first > LONGEST_FRONT_MATTER || !inside.every((line) => !/\S/.test(line) || PAIR.test(line) || /^\s*(?:-\s|#|\s\S)/.test(line))) return 0;
  let key: string | null = null;
  inside.forEach((line, at) => {
    const pair = PAIR.exec(line);
    if (pair !== null) {
      key = (pair[1] ?? "").toLowerCase();
      draft.frontMatter[key] = unquote(pair[2] ?? "");
    } else if (/\S/.test(line) && !/^\s*#/.test(line)) {
      const item = unquote(line.replace(/^\s*-\s+/, "").trim());
      if (key === null) log.add({ code: "SW-T14", severity: "info", line: first + 2 + at, kind: "front matter", message: "a line of the front matter was left out" });
      else draft.frontMatter[key] = draft.frontMatter[key] === "" ? item : `${draft.frontMatter[key]}, ${item}`;
    }
  });
  return close + 1;
}

const PAIR = /^([A-Za-z][\w .-]{0,40}?)\s*:(?:\s+(.*))?$/;

/** `key: value` on a line of its own before the first speech, or null. */
export function readPair(line: string): { key: string; value: string } | null {
  const pair = PAIR.exec(line.replace(/\*\*|__/g, "").trim());
  return pair === null ? null : { key: (pair[1] ?? "").toLowerCase(), value: unquote(pair[2] ?? "") };
}

function unquote(value: string): string {
  const plain = value.trim();
  return /^"[^"]*"$|^'[^']*'$/.test(plain) ? plain.slice(1, -1) : plain;
}
