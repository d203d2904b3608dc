import { showClock } from "./clock.ts";
import type { FindingLog } from "./finding-log.ts";
import type { Group } from "./group.ts";

/** Word times may leave the interval of their stretch by this much, in seconds, without a finding: machines round. */
const EDGE_TOLERANCE = 0.5;

/**
 * Makes a group's word times usable: an end before its start goes (SW-T12), a start before an earlier word's start
 * goes (SW-T10), and the group's interval grows to hold the words that are left.
 */
export function settleWordTimes(group: Group, log: FindingLog): void {
  let latest = -1;
  let first: number | null = null;
  let last: number | null = null;
  for (const word of group.segments.flatMap((segment) => segment.words)) {
    if (word.start !== undefined && word.start < latest) {
      log.add({
        code: "SW-T10",
        severity: "warning",
        line: word.line,
        kind: "word",
        message: `the word "${word.text}" has the time ${showClock(word.start)}, earlier than the word before it; its time was estimated`,
      });
      delete word.start;
      delete word.end;
    }
    if (word.end !== undefined && word.end < (word.start ?? Math.max(latest, last ?? 0))) {
      log.add({
        code: "SW-T12",
        severity: "warning",
        line: word.line,
        kind: "word",
        message: `the word "${word.text}" ends before it starts; its end was estimated`,
      });
      delete word.end;
    }
    latest = Math.max(latest, word.start ?? word.end ?? latest);
    first ??= word.start ?? word.end ?? null;
    if (word.end !== undefined) {
      last = Math.max(last ?? 0, word.end);
    }
  }
  group.wordsEnd = last ?? 0;
  widen(group, first, last, log);
}

function widen(group: Group, first: number | null, last: number | null, log: FindingLog): void {
  const before = group.start !== null && first !== null ? group.start - first : 0;
  const after = group.end !== null && last !== null ? last - group.end : 0;
  if (Math.max(before, after) > EDGE_TOLERANCE) {
    log.add({
      code: "SW-T16",
      severity: "info",
      line: group.line,
      kind: "edge",
      message: `words lie outside the stretch at ${showClock(group.start ?? 0)} that holds them; the stretch was widened`,
    });
  }
  if (first !== null && (group.start === null || before > 0)) {
    // A start that only the words give is the file's own when the very first word has it.
    const head = group.segments.find((segment) => segment.words.length > 0)?.words[0];
    group.startGiven = head?.start !== undefined;
    group.start = first;
  }
  if (last !== null && (group.end === null || after > 0)) {
    const tail = group.segments.filter((segment) => segment.words.length > 0).at(-1)?.words.at(-1);
    // Words after the last known end still need room: then the end stays open.
    if (tail?.end !== undefined || group.end !== null) {
      group.end = last;
      group.endGiven = tail?.end !== undefined;
    }
  }
}
