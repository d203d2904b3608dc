import { showClock } from "./clock.ts";
import type { Draft } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import type { Group } from "./group.ts";
import { USUAL_PACE } from "./syllables.ts";
import type { Seconds } from "./types.ts";

/** A clock that falls back by more than this, in seconds, and then runs on, was started anew: a second recording. */
const RESTART_SECONDS = 30;
/** How many stretches must run on from a restart before it is believed. */
const RESTART_STRETCHES = 3;
/** A file of more joined recordings than this is no transcript of them: the rest is taken as it comes. */
const MOST_RESTARTS = 50;
/** Typed times are whole seconds and machines round: a fall this small, in seconds, is no fault. */
const TOLERANCE = 0.05;

/**
 * Puts the groups in order of speech. Times that run backwards are
 * - shifted, when the whole clock starts anew (two recordings in one file): the later part goes on after the earlier;
 * - taken away, when a person typed them (`distrust`): the text stays where it stands;
 * - followed, when a machine wrote them (`sort`).
 * Each is a finding SW-T10.
 */
export function orderGroups(groups: Group[], rule: Draft["outOfOrder"], log: FindingLog): Group[] {
  shiftRestarts(groups, log);
  if (rule === "distrust") {
    distrustFalls(groups, log);
    return groups;
  }
  return sortByStart(groups, log);
}

function shiftRestarts(groups: Group[], log: FindingLog): void {
  let shift = 0;
  let latest = -Infinity;
  let part: Group[] = [];
  let restarts = 0;
  groups.forEach((group, at) => {
    if (group.start === null || restarts >= MOST_RESTARTS) {
      if (shift > 0) shiftBy(group, shift);
      return;
    }
    const back = latest - (group.start + shift);
    if (back > RESTART_SECONDS && isRestart(groups, at, part, latest - shift, shift)) {
      restarts += 1;
      // The earlier part ends with its last stretch, whose length may have to be guessed.
      shift = Math.ceil(part.reduce((end, one) => Math.max(end, one.end ?? (one.start ?? 0) + one.syllables / USUAL_PACE), 0));
      part = [];
      log.add({
        code: "SW-T10",
        severity: "warning",
        line: group.line,
        kind: "restart",
        message: `the times start anew at ${showClock(group.start)}, as in two recordings joined; from here on ${showClock(shift)} was added`,
        mend: "Hand in each recording as a file of its own.",
      });
    }
    if (shift > 0) shiftBy(group, shift);
    latest = Math.max(latest, group.start);
    part.push(group);
  });
}

/**
 * True when the clock falls back behind a whole run of stretches (a single time far ahead is a slip of the pen), and
 * the stretches from `at` on rise among themselves and do not jump straight back to `latest`.
 */
function isRestart(groups: readonly Group[], at: number, part: readonly Group[], latest: Seconds, shift: Seconds): boolean {
  const start = (groups[at]?.start ?? 0) + shift;
  let passed = 0;
  for (let place = part.length - 1; place >= 0 && passed < RESTART_STRETCHES; place -= 1) if ((part[place]?.start ?? 0) > start) passed += 1;
  if (passed < RESTART_STRETCHES) return false;

  const next: Seconds[] = [];
  for (let place = at; place < groups.length && next.length < RESTART_STRETCHES; place += 1) {
    const one = groups[place]?.start ?? null;
    if (one !== null) next.push(one);
  }
  const runsOn = next.length === RESTART_STRETCHES && next.every((one, place) => one < latest && one >= (next[place - 1] ?? 0));
  return runsOn && !otherSpeakers(part, groups.slice(at));
}

/** Lists of one speaker after another belong to one recording: they are sorted together, not shifted. */
function otherSpeakers(before: readonly Group[], after: readonly Group[]): boolean {
  const names = (groups: readonly Group[]): Set<string | null> =>
    new Set(groups.flatMap((group) => group.segments.map((segment) => segment.speaker)));
  const earlier = names(before);
  return !earlier.has(null) && [...names(after)].every((name) => name !== null && !earlier.has(name));
}

function shiftBy(group: Group, shift: Seconds): void {
  if (group.start !== null) group.start += shift;
  if (group.end !== null) group.end += shift;
  group.wordsEnd += shift;
  for (const word of group.segments.flatMap((segment) => segment.words)) {
    if (word.start !== undefined) word.start += shift;
    if (word.end !== undefined) word.end += shift;
  }
}

/** Keeps the longest rising chain of typed times and takes the others away. */
function distrustFalls(groups: readonly Group[], log: FindingLog): void {
  const timed = groups.filter((group) => group.start !== null);
  const trusted = new Set(longestRising(timed.map((group) => group.start ?? 0)));
  timed.forEach((group, at) => {
    if (trusted.has(at)) return;
    log.add({
      code: "SW-T10",
      severity: "warning",
      line: group.line,
      kind: "fall",
      message: `the time ${showClock(group.start ?? 0)} does not fit between its neighbours; the words were kept in place and timed from the neighbours`,
      mend: "Correct the time in the file.",
    });
    group.start = null;
    group.end = null;
    group.startGiven = false;
    group.endGiven = false;
  });
}

/** Places of the longest chain that never falls, by the patience method (Schensted 1961; from memory). */
export function longestRising(values: readonly number[]): number[] {
  const tails: number[] = [];
  const before: number[] = [];
  values.forEach((value, at) => {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((values[tails[middle] as number] as number) <= value) low = middle + 1;
      else high = middle;
    }
    before[at] = low > 0 ? (tails[low - 1] as number) : -1;
    tails[low] = at;
  });
  const chain: number[] = [];
  for (let at = tails[tails.length - 1] ?? -1; at >= 0; at = before[at] as number) chain.push(at);
  return chain.reverse();
}

/** A group without a start moves with the group before it. */
function sortByStart(groups: readonly Group[], log: FindingLog): Group[] {
  let latest = -1;
  let key = -1;
  const keyed = groups.map((group) => {
    if (group.start !== null) {
      if (group.start < latest - TOLERANCE) {
        log.add({
          code: "SW-T10",
          severity: "warning",
          line: group.line,
          kind: "sorted",
          message: `the time ${showClock(group.start)} comes after ${showClock(latest)} in the file; the words were put in order of time`,
        });
      }
      latest = Math.max(latest, group.start);
      key = group.start;
    }
    return { group, key };
  });
  return keyed.sort((a, b) => a.key - b.key).map(({ group }) => group);
}
