import { splitLines } from "./decode.ts";
import type { Draft } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import { readFrontMatter } from "./front-matter.ts";
import { LABEL_FILE } from "./label-check.ts";
import { AT_CHANGES, labelsStandAtChanges } from "./label-custom.ts";
import { readLabelFile } from "./label-file.ts";
import { findLabel, isRoleLabel, judgeLabels, tellDoubt, type LabelCandidate, type LabelJudge } from "./labels.ts";
import { readPreamble } from "./preamble.ts";
import { TextBuilder } from "./text-builder.ts";
import { MARK_WITHIN, readRange, readTextLine, type TextLine } from "./text-line.ts";
import { settleTimeMarks } from "./time-marks.ts";
import { readWords } from "./words.ts";

/** Share of lines that must end a sentence before, in a text without blank lines, each line is a stretch of its own. */
const LEAST_ENDED = 0.5;

/**
 * Reads plain text: times, labels, headings and front matter are told from speech by the whole file, and what was
 * assumed is a finding (SW-T17). One time heads everything up to the next; a label starts a new stretch, which under
 * one and the same time shares its interval. Without times and labels a paragraph is a stretch.
 */
export function readText(text: string, log: FindingLog): Draft {
  const raw = splitLines(text);
  const draft: Draft = { segments: [], headings: [], frontMatter: {}, endsGiven: false, outOfOrder: "distrust" };
  const from = readFrontMatter(raw, draft, log);
  if (draft.frontMatter["saidwell"] === LABEL_FILE) {
    readLabelFile(raw, from, draft, log);
    return draft;
  }
  const lines = raw.slice(from).map((line, at) => readTextLine(line, from + at + 1));
  settleHeaders(lines);
  const judge = judgeLabels(lines.filter((line) => line.kind === "content").map((line) => line.label));
  settleTimeMarks(lines, (line) => line.label !== null && judge.accepts(line.label), log);
  settleBrokenMarks(lines, log);
  const doubted = settleLabels(lines, judge);
  const body = readPreamble(lines, draft, log);
  for (const { label, line } of doubted) if (line >= (lines[body]?.line ?? Infinity)) tellDoubt(label, line, log);
  build(lines.slice(body), judge, draft, log);
  return draft;
}

/** A name and a time alone on a line head the text below it, if there is text, and if the file does so more than once. */
function settleHeaders(lines: readonly TextLine[]): void {
  const headers = new Set(lines.filter((line, at) => line.header && lines[at + 1]?.kind === "content" && lines[at + 1]?.mark === null));
  for (const line of lines.filter((one) => one.header)) {
    const label = line.label;
    if (label !== null && headers.has(line) && (isRoleLabel(label.label) || headers.size > 1)) {
      label.strong = true;
      continue;
    }
    line.label = null;
    line.header = false;
    const timeFirst = line.afterMark !== "" && line.rest === "";
    if (!timeFirst) line.mark = null;
    line.afterMark = timeFirst ? line.afterMark : line.raw;
    line.rest = line.afterMark;
  }
}

/** So many times that cannot be read are the file's habit, not something said in brackets. */
const BROKEN_HABIT = 2;

/** A time that cannot be read still parts the text, in a file that has times that can, or several like it. */
function settleBrokenMarks(lines: readonly TextLine[], log: FindingLog): void {
  const marked = lines.filter((line) => line.mark !== null);
  const readable = marked.some((line) => line.mark?.start !== null);
  const believed = readable || marked.length >= BROKEN_HABIT;
  for (const line of lines) {
    if (line.mark === null || line.mark.start !== null) continue;
    if (believed) {
      log.add({
        code: "SW-T13",
        severity: "warning",
        line: line.line,
        kind: "mark",
        message: `the time "${line.mark.text}" cannot be read; the words were kept${readable ? " and timed from their neighbours" : ", without times"}`,
        mend: "Write minutes and seconds, as in [9:09].",
      });
    } else {
      log.add({
        code: "SW-T17",
        severity: "info",
        line: line.line,
        kind: "broken time",
        message: `the line begins with "${line.mark.text}" in brackets, which was read as speech, not as a time mark`,
        mend: "Write minutes and seconds, as in [9:09].",
      });
      line.mark = null;
      line.label = null;
      line.rest = line.raw;
      line.afterMark = line.raw;
    }
  }
}

/** Gives back to the text what is no label, and returns those that look like one. */
function settleLabels(lines: readonly TextLine[], judge: LabelJudge): { label: LabelCandidate; line: number }[] {
  const doubted: { label: LabelCandidate; line: number }[] = [];
  for (const line of lines) {
    if (line.label === null || judge.accepts(line.label)) continue;
    if (judge.doubts(line.label)) doubted.push({ label: line.label, line: line.line });
    line.label = null;
    line.rest = line.afterMark;
  }
  return doubted;
}

function build(lines: readonly TextLine[], judge: LabelJudge, draft: Draft, log: FindingLog): void {
  const builder = new TextBuilder(draft, log);
  const lineByLine = isLineByLine(lines);
  const atChanges = labelsStandAtChanges(lines.filter(({ kind, mark }) => kind === "content" && mark !== null).map(({ label }) => [label?.label ?? null, label?.label ?? null]));
  let timed = false;
  let afterBlank = false;
  /** Whether the stretch is a noise between paragraphs, and who spoke before it. */
  let aside = false;
  let before: string | null = null;
  lines.forEach((line, at) => {
    if (line.kind === "blank") {
      afterBlank = true;
      return;
    }
    if (line.kind === "heading") {
      builder.heading(line.heading, line.line);
      afterBlank = false;
      return;
    }
    const label = line.label?.label ?? null;
    if (line.mark !== null) {
      timed = line.mark.start !== null;
      const goesOn = label === null && atChanges && !line.turn && builder.speaker !== null;
      if (goesOn) log.add({ code: "SW-T17", severity: "info", line: line.line, kind: "goes on", message: `a line without a label ${AT_CHANGES}` });
      builder.open({ speaker: goesOn ? builder.speaker : label, line: line.line, start: line.mark.start, end: line.mark.end });
    } else if (label !== null || line.turn) {
      builder.open({ speaker: label, line: line.line, shares: timed });
    } else if (isMarkOnly(line.rest) && (!builder.isOpen || afterBlank)) {
      // "(bell rings)" between two paragraphs belongs to nobody.
      builder.open({ speaker: null, line: line.line, shares: timed });
      aside = true;
    } else if (!builder.isOpen || (!timed && (afterBlank || lineByLine))) {
      const speaker = aside ? before : builder.speaker;
      if (speaker !== null) tellGoesOn(line.line, speaker, log);
      builder.open({ speaker, line: line.line, shares: timed });
    } else if (aside && afterBlank) {
      if (before !== null) tellGoesOn(line.line, before, log);
      builder.open({ speaker: before, line: line.line, shares: true });
    } else if (afterBlank && builder.speaker !== null && builder.hasText) {
      tellGoesOn(line.line, builder.speaker, log);
    }
    if (!aside || !isMarkOnly(line.rest)) {
      before = builder.speaker;
      aside = false;
    }
    addWithMarks(line, lines.slice(at + 1, at + 1 + AHEAD), builder, judge, timed);
    afterBlank = false;
  });
  builder.close();
}

/** A line that is one noise or action in brackets. */
function isMarkOnly(text: string): boolean {
  if (!/^\s*[[(*<{].*[\])*>}.]\s*$/.test(text)) return false;
  const words = readWords(text, 1);
  return words.length > 0 && words.every((word) => word.kind === "sound");
}

/** How many lines ahead the next mark is looked for, to judge one in round brackets. */
const AHEAD = 200;

function tellGoesOn(line: number, speaker: string, log: FindingLog): void {
  log.add({
    code: "SW-T17",
    severity: "info",
    line,
    kind: "goes on",
    message: `a paragraph without a label was given to ${speaker}, the speaker before it`,
    mend: "Label it if somebody else speaks.",
  });
}

/** Adds the line's text; a time in brackets within it starts a new stretch of the same speaker. */
function addWithMarks(line: TextLine, ahead: readonly TextLine[], builder: TextBuilder, judge: LabelJudge, timed: boolean): void {
  let from = 0;
  let latest = line.mark?.start ?? 0;
  for (const match of line.rest.matchAll(MARK_WITHIN)) {
    const round = match[1] === undefined;
    const mark = readRange(match[1] ?? match[2] ?? "");
    if (mark === null || mark.start === null) continue;
    const next = ahead.find((one) => one.mark?.start != null)?.mark?.start ?? Infinity;
    // Round brackets may hold what somebody said; they mark a time only where the clock runs through them.
    if (round && (!timed || mark.start < latest || mark.start > next)) continue;
    builder.add(line.rest.slice(from, match.index).trim(), line.line);
    from = match.index + match[0].length;
    latest = mark.start;
    const after = line.rest.slice(from);
    const label = findLabel(after.replace(/^\s*:\s*/, ""));
    const accepted = label !== null && judge.accepts(label) ? label : null;
    builder.open({ speaker: accepted?.label ?? builder.speaker, line: line.line, start: mark.start, end: mark.end });
    if (accepted !== null) from += accepted.restAt;
  }
  builder.add(line.rest.slice(from).trim(), line.line);
}

/** Without blank lines, times and labels: does each line hold an utterance, or is one text wrapped over many lines? */
function isLineByLine(lines: readonly TextLine[]): boolean {
  const content = lines.filter((line) => line.kind === "content");
  const last = content[content.length - 1];
  const blank = lines.some((line, at) => line.kind === "blank" && at > 0 && last !== undefined && line.line < last.line);
  if (blank || content.some((line) => line.mark !== null || line.label !== null)) return false;
  const ended = content.filter((line) => /[.?!…]["'”’)\]]*\s*$/.test(line.raw)).length;
  return content.length > 1 && ended >= content.length * LEAST_ENDED;
}
