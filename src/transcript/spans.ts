import { showClock, toMillisecond } from "./clock.ts";
import type { FindingLog } from "./finding-log.ts";
import { hasWords, isNoise, type Group } from "./group.ts";
import { USUAL_PACE } from "./syllables.ts";
import type { Seconds } from "./types.ts";

/** Paces, in syllables a second, between which a stretch is believed when the file's own pace is measured. */
const SLOWEST = 0.5;
const FASTEST = 10;
/** A stretch without an end that would last longer than this, in seconds, at below the slowest pace, holds a long silence. */
const LONGEST_STRETCH = 300;
/** Two stretches of one speaker that overlap by less than this, in seconds, only round their times. */
const OVERLAP_TOLERANCE = 0.1;

/** Takes away ends that cannot be: at or before the start, which in a file that gives ends is a finding SW-T12. */
export function dropWrongEnds(groups: readonly Group[], endsGiven: boolean, log: FindingLog): void {
  for (const group of groups) {
    if (group.start === null) {
      group.end = null;
    } else if (group.end !== null && group.end <= group.start) {
      log.add({
        code: "SW-T12",
        severity: "warning",
        line: group.line,
        kind: "end",
        message:
          group.end === group.start
            ? `the stretch at ${showClock(group.start)} ends when it starts; its end was estimated`
            : `the stretch at ${showClock(group.start)} ends before it starts (${showClock(group.end)}); its end was estimated`,
      });
      group.end = null;
    } else if (group.end === null && endsGiven && hasWords(group)) {
      log.add({
        code: "SW-T12",
        severity: "warning",
        line: group.line,
        kind: "no end",
        message: `the stretch at ${showClock(group.start)} has no end; its end was estimated`,
      });
    }
    group.endGiven = group.end !== null;
  }
}

/**
 * Speech of different people may overlap. One person says one thing at a time: where two stretches of the same label
 * overlap, as captions that stay on the screen do, the earlier one ends where the later one starts, if its words fit.
 * Without labels both times are kept, for it may be two people. Both are findings SW-T11.
 */
export function settleOverlaps(groups: readonly Group[], log: FindingLog): void {
  const lastOf = new Map<string | null, Group>();
  for (const group of groups) {
    if (group.start === null || !hasWords(group)) continue;
    for (const speaker of new Set(group.segments.map((segment) => segment.speaker))) {
      const last = lastOf.get(speaker);
      if (last !== undefined && last.end !== null && last.end - group.start > OVERLAP_TOLERANCE) settleOverlap(last, group, speaker, log);
      if (last === undefined || (group.end ?? group.start) >= (last.end ?? 0)) lastOf.set(speaker, group);
    }
  }
}

function settleOverlap(last: Group, group: Group, speaker: string | null, log: FindingLog): void {
  const start = group.start ?? 0;
  const length = start - (last.start ?? 0);
  // A group of several voices may well overlap with the next; word times of the file are not overruled either.
  const fits = last.segments.length === 1 && !last.wordsTimed && length > 0 && last.syllables / length <= FASTEST;
  const repaired = speaker !== null && fits;
  if (repaired) {
    last.end = start;
    last.endGiven = false;
  }
  log.add({
    code: "SW-T11",
    severity: speaker === null ? "info" : "warning",
    line: group.line,
    kind: `overlap ${speaker === null} ${repaired}`,
    message: `two ${speaker === null ? "unlabelled stretches" : `stretches of ${speaker}`} overlap at ${showClock(start)}; ${repaired ? "the earlier one was ended there" : "both times were kept"}`,
  });
}

/**
 * Gives every group a start and an end: an end that is missing is the next start, or where only a noise starts there,
 * what the file's own pace makes it; groups without a time share the
 * gap that they stand in, by their syllables; after the last time the file's own pace decides, up to `latest`, which
 * is a finding.
 * Groups must be in order of speech, and at least one must have a start.
 */
export function fillSpans(groups: Group[], latest: Seconds, log: FindingLog): void {
  const pace = paceOf(groups);
  fillLead(groups, pace);
  const nextStarts = laterStarts(groups);
  for (let at = 0; at < groups.length; ) {
    const group = groups[at] as Group;
    let next = at + 1;
    // Groups without a time of their own, and untimed ends at one and the same mark, share one span.
    while (next < groups.length && sharesSpan(group, groups[next] as Group)) next += 1;
    const run = groups.slice(at, next);
    const start = group.start ?? 0;
    const after = nextStarts[next - 1] ?? null;
    fillRun(run, start, after, groups[next], { pace, latest }, log);
    at = next;
  }
}

/** For each place the first start behind it that is later than the last known one up to it. */
function laterStarts(groups: readonly Group[]): (Seconds | null)[] {
  const later: (Seconds | null)[] = [];
  let known: Seconds[] = [];
  for (let at = groups.length - 1; at >= 0; at -= 1) {
    const start = groups[at]?.start ?? null;
    // Starts rise, so the nearest two different ones behind are all that can be needed.
    later[at] = known.find((one) => start === null || one > start) ?? null;
    if (start !== null && start !== known[0]) known = [start, ...known].slice(0, 2);
  }
  return later;
}

function sharesSpan(group: Group, next: Group): boolean {
  if (next.start === null) return true;
  return next.start === group.start && group.end === null && next.end === null && !next.wordsTimed;
}

function fillRun(run: readonly Group[], start: Seconds, after: Seconds | null, behind: Group | undefined, file: { pace: number; latest: Seconds }, log: FindingLog): void {
  const { pace, latest } = file;
  const [first, ...rest] = run as [Group, ...Group[]];
  if (first.end !== null) {
    if (rest.length > 0) {
      const weight = syllables(rest);
      const until = Math.max(first.end, Math.min(after ?? Infinity, toMillisecond(first.end + weight / pace)));
      shareOut(rest, first.end, until);
    }
    return;
  }
  let until = after;
  if (until !== null && until - start > LONGEST_STRETCH && syllables(run) / (until - start) < SLOWEST) {
    log.add({
      code: "SW-T12",
      severity: "info",
      line: first.line,
      kind: "silence",
      message: `from ${showClock(start)} to the next time, ${showClock(until)}, there are too few words; the end was estimated from the pace of the file`,
    });
    until = Math.min(until, toMillisecond(start + syllables(run) / pace));
  }
  // A bell or a silence says when it came, not that somebody talked up to it.
  const spoken = toMillisecond(start + syllables(run) / pace);
  if (until !== null && behind !== undefined && isNoise(behind) && !isNoise(first) && spoken < until) {
    log.add({
      code: "SW-T12",
      severity: "info",
      line: first.line,
      kind: "before a noise",
      message: `the stretch at ${showClock(start)} has no end and only a noise follows it; its end was estimated from the pace of the file`,
    });
    until = spoken;
  }
  if (until === null) {
    until = Math.max(start, Math.min(latest, toMillisecond(start + syllables(run) / pace)));
    if (run.some(hasWords)) {
      log.add({
        code: "SW-T12",
        severity: "info",
        line: first.line,
        kind: "last end",
        message: `the last stretch has no end; ${showClock(until)} was estimated from the pace of the file (${pace.toFixed(1)} syllables a second)`,
      });
    }
  }
  if (rest.length > 0 && rest[0]?.start === start) {
    log.add({
      code: "SW-T12",
      severity: "info",
      line: rest[0].line,
      kind: "same mark",
      message: `several stretches carry the time ${showClock(start)}; the later ones were placed by their syllables`,
    });
  }
  shareOut(run, start, until);
}

/** Words before the first time: they end where it starts, at the pace of the file. */
function fillLead(groups: readonly Group[], pace: number): void {
  const first = groups.findIndex((group) => group.start !== null);
  const lead = groups.slice(0, Math.max(first, 0));
  const until = groups[first]?.start ?? 0;
  if (lead.length > 0) shareOut(lead, Math.max(0, toMillisecond(until - syllables(lead) / pace)), until);
}

function shareOut(run: readonly Group[], from: Seconds, to: Seconds): void {
  const total = syllables(run);
  let passed = 0;
  run.forEach((group, at) => {
    const place = (count: number): Seconds => (total === 0 ? from : toMillisecond(from + ((to - from) * count) / total));
    const start = at === 0 ? from : place(passed);
    passed += group.syllables;
    const end = at === run.length - 1 ? to : place(passed);
    if (group.start !== start) group.startGiven = false;
    group.start = start;
    group.end = Math.max(start, end, group.wordsEnd);
  });
}

/** Syllables a second over the stretches whose length is known and believable. */
function paceOf(groups: readonly Group[]): number {
  let spoken = 0;
  let seconds = 0;
  groups.forEach((group, at) => {
    if (group.start === null || group.syllables === 0) return;
    const end = group.end ?? groups[at + 1]?.start ?? null;
    if (end === null || end <= group.start) return;
    const pace = group.syllables / (end - group.start);
    if (pace < SLOWEST || pace > FASTEST) return;
    spoken += group.syllables;
    seconds += end - group.start;
  });
  return seconds > 0 ? spoken / seconds : USUAL_PACE;
}

function syllables(groups: readonly Group[]): number {
  return groups.reduce((sum, group) => sum + group.syllables, 0);
}
