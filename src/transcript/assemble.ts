import type { Draft, DraftSegment, DraftWord } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import { hasWords, toGroups, type Group } from "./group.ts";
import { interpolateWords, type WordTime } from "./interpolate.ts";
import { MAX_WORDS } from "./limits.ts";
import { orderGroups } from "./order.ts";
import { dropWrongEnds, fillSpans, settleOverlaps } from "./spans.ts";
import type { Segment, Timing, Transcript, TranscriptFormat, Word } from "./types.ts";
import { settleWordTimes } from "./word-times.ts";

/**
 * Makes the transcript of what a format's reader found: order, times, positions.
 * A Segment is `measured` when the file gives its start and its end, else `estimated`.
 * Throws SW-T02 (no words) and SW-T07 (too many).
 */
export function assemble(draft: Draft, format: TranscriptFormat, log: FindingLog): Transcript {
  const count = draft.segments.reduce((sum, segment) => sum + segment.words.length, 0);
  if (count === 0) throw log.refuse("SW-T02", "the file holds no words", { mend: "Check that the right file was handed in." });
  if (count > MAX_WORDS) {
    throw log.refuse("SW-T07", `the file holds ${count} words and the limit is ${MAX_WORDS}`, {
      mend: "Cut the recording into stations and hand in one at a time.",
    });
  }

  let groups = toGroups(draft.segments);
  for (const group of groups) settleWordTimes(group, log);
  const timed = groups.some((group) => group.start !== null);
  if (timed) {
    dropWrongEnds(groups, draft.endsGiven, log);
    groups = orderGroups(groups, draft.outOfOrder, log);
    settleOverlaps(groups, log);
    fillSpans(groups, draft.latest ?? Infinity, log);
  } else {
    log.add({
      code: "SW-T15",
      severity: "info",
      message: "the transcript has no times, so pace, pauses and time by section are not measurable",
      mend: "Start each paragraph with its time, as in [0:20].",
    });
  }

  const words: Word[] = [];
  const segments: Segment[] = [];
  const places = new Map<DraftSegment, number>();
  for (const group of groups) {
    if (!hasWords(group)) continue;
    const times = timed ? timesOf(group) : null;
    let at = 0;
    for (const segment of group.segments) {
      if (segment.words.length === 0) continue;
      const own = times?.slice(at, at + segment.words.length) ?? null;
      at += segment.words.length;
      places.set(segment, words.length);
      segments.push(toSegment(segment, segments.length, words.length, own, group));
      segment.words.forEach((word, place) => words.push(toWord(word, words.length, segments.length - 1, own?.[place])));
    }
  }
  const measuredWords = draft.segments.some((segment) => segment.words.some((word) => word.start !== undefined));
  return {
    file: log.file,
    format,
    words,
    segments,
    headings: draft.headings.map(({ text, line, before }) => ({ text, line, beforeWord: wordAfter(before, draft.segments, places, words.length) })),
    frontMatter: draft.frontMatter,
    timing: !timed ? "none" : measuredWords ? "word" : "segment",
    duration: timed ? segments.reduce((latest, segment) => Math.max(latest, segment.end ?? 0), 0) : null,
    findings: log.list(),
  };
}

function timesOf(group: Group): WordTime[] {
  const words = group.segments.flatMap((segment) => segment.words);
  return interpolateWords(words, group.start ?? 0, group.end ?? group.start ?? 0);
}

function toSegment(segment: DraftSegment, index: number, firstWord: number, times: WordTime[] | null, group: Group): Segment {
  const alone = group.segments.filter((one) => one.words.length > 0).length === 1;
  const given = alone
    ? group.startGiven && group.endGiven
    : segment.words[0]?.start !== undefined && segment.words[segment.words.length - 1]?.end !== undefined;
  const timing: Timing = times === null ? "none" : given ? "measured" : "estimated";
  const start = times?.[0]?.start ?? null;
  // Measured words may overlap, so the last one need not end last.
  const end = times?.reduce((latest, time) => Math.max(latest, time.end), 0) ?? null;
  return {
    index,
    speaker: segment.speaker,
    // A stretch that has its interval for itself keeps the file's own edges, though its first word may start later.
    start: alone && times !== null ? group.start : start,
    end: alone && times !== null ? Math.max(group.end ?? 0, end ?? 0) : end,
    timing,
    ...(timing === "estimated" && !alone ? sharedEdge(segment, group) : {}),
    ...(timing === "estimated" && alone && group.startGiven ? { startGiven: true as const } : {}),
    ...(times !== null && segment !== group.segments.find((one) => one.words.length > 0) ? { shares: true as const } : {}),
    firstWord,
    endWord: firstWord + segment.words.length,
    line: segment.words[0]?.line ?? segment.line,
    ...(segment.inStation === undefined ? {} : { inStation: segment.inStation }),
  };
}

/** Of voices that share one interval the first starts, and the last ends, where the file says. */
function sharedEdge(segment: DraftSegment, group: Group): Pick<Segment, "edgeGiven"> {
  const spoken = group.segments.filter((one) => one.words.length > 0);
  if (group.startGiven && segment === spoken[0]) return { edgeGiven: "start" };
  return group.endGiven && segment === spoken[spoken.length - 1] ? { edgeGiven: "end" } : {};
}

function toWord(word: DraftWord, index: number, segment: number, time: WordTime | undefined): Word {
  return {
    index,
    text: word.text,
    start: time?.start ?? null,
    end: time?.end ?? null,
    timing: time?.timing ?? "none",
    segment,
    line: word.line,
    kind: word.kind,
    ...(word.confidence === undefined ? {} : { confidence: word.confidence }),
    ...(word.doubtful === undefined ? {} : { doubtful: word.doubtful }),
  };
}

/** The position of the first word at or after place `before` of the file's stretches. */
function wordAfter(before: number, segments: readonly DraftSegment[], places: ReadonlyMap<DraftSegment, number>, end: number): number {
  for (let at = before; at < segments.length; at += 1) {
    const place = places.get(segments[at] as DraftSegment);
    if (place !== undefined) return place;
  }
  return end;
}
