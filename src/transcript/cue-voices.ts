import type { CueBlock } from "./cue-block.ts";
import { readVoiceRuns, type VoiceRun } from "./cue-text.ts";
import type { DraftSegment } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import { AT_CHANGES, labelsStandAtChanges } from "./label-custom.ts";
import { findLabel, judgeLabels, tellDoubt, type LabelCandidate, type LabelJudge } from "./labels.ts";
import { readWords } from "./words.ts";

/** One line, or part of a line, of a cue's text. */
interface CueLine {
  run: VoiceRun;
  /** Place in `run.text`. */
  from: number;
  to: number;
  line: number;
  /** A dialogue dash or chevrons stood before it: somebody else speaks. */
  turn: boolean;
  label: LabelCandidate | null;
}

/** The stretches of each cue by voice, in order; the first holds the cue's times, the others share its interval. */
export function readCueVoices(blocks: readonly CueBlock[], log: FindingLog): DraftSegment[][] {
  const cues = blocks.map((block) => {
    const end = block.end !== null && block.end > (block.start ?? 0) ? block.end : null;
    const runs = readVoiceRuns({ text: block.text, line: block.textLine, start: block.start, end }, log);
    return { block, lines: runs.flatMap(splitLinesOfRun) };
  });
  const judge = judgeLabels(cues.flatMap(({ lines }) => labelLines(lines)));
  const read = cues.map(({ block, lines }) => ({ segments: toSegments(block, lines, judge, log), lines }));
  const atChanges = labelsStandAtChanges(read.map(({ segments }) => [segments[0]?.speaker ?? null, segments.at(-1)?.speaker ?? null]));
  let before: { speaker: string | null; text: string } | null = null;
  return read.map(({ segments, lines }) => {
    const first = segments[0];
    const goesOnInside = first !== undefined && before !== null && goesOn(before.text, first);
    // A cue that goes on in the middle of a labelled sentence is still that speaker's; so is any where labels stand at changes only.
    if (first !== undefined && first.speaker === null && lines[0]?.turn === false && before?.speaker != null && (goesOnInside || atChanges)) {
      first.speaker = before.speaker;
      log.add({
        code: "SW-T17",
        severity: "info",
        line: first.line,
        kind: "cue goes on",
        message: goesOnInside ? "a cue without a label goes on in the middle of a sentence and was given to the speaker before it" : `a cue without a label ${AT_CHANGES}`,
      });
    }
    const last = segments[segments.length - 1];
    if (last !== undefined) before = { speaker: last.speaker, text: last.words[last.words.length - 1]?.text ?? "" };
    return segments;
  });
}

/** What the judge of labels counts: one entry a cue, or a line where a cue holds several labels. */
function labelLines(lines: readonly CueLine[]): (LabelCandidate | null)[] {
  const labelled = lines.filter((line) => line.label !== null).map((line) => line.label);
  return labelled.length > 0 ? labelled : [null];
}

function goesOn(lastWord: string, next: DraftSegment): boolean {
  return !/[.?!…]["'”’)]*$/.test(lastWord) && /^["'“‘(]*\p{Ll}/u.test(next.words[0]?.text ?? "");
}

function splitLinesOfRun(run: VoiceRun): CueLine[] {
  const lines: CueLine[] = [];
  const dashes = run.text.split("\n").filter((text) => DASH.test(text)).length;
  let from = 0;
  run.text.split("\n").forEach((text, place) => {
    let at = from;
    for (const part of text.split(/(?<!>)(?=>{2,3})/)) {
      const lead = leadOf(part, dashes);
      const body = part.slice(lead.length);
      lines.push({
        run,
        from: at + lead.length,
        to: at + part.length,
        line: run.line + place,
        turn: lead.trim() !== "",
        label: run.voice === null ? findLabel(body) : null,
      });
      at += part.length;
    }
    from += text.length + 1;
  });
  return lines;
}

const DASH = /^\s*[-–—‐‑]\s*(?=["'“‘([¿¡♪]*[\p{L}[(])|^\s*[-–—]\s+/u;

/** The dash or the chevrons that open a turn, with the white space around. A long dash alone may only carry on a sentence. */
function leadOf(text: string, dashes: number): string {
  const chevrons = /^\s*>{2,3}\s*/.exec(text)?.[0];
  if (chevrons !== undefined) return chevrons;
  const dash = DASH.exec(text)?.[0] ?? "";
  return dash.includes("-") || dashes >= 2 ? dash : "";
}

function toSegments(block: CueBlock, lines: readonly CueLine[], judge: LabelJudge, log: FindingLog): DraftSegment[] {
  const segments: DraftSegment[] = [];
  let parts: CueLine[] = [];
  let speaker: string | null = null;
  const close = (): void => {
    const segment = parts.length === 0 ? null : wordsOf(parts, block, speaker, log);
    if (segment !== null && segment.words.length > 0) segments.push(segment);
    parts = [];
  };
  for (const line of lines) {
    const label = line.label !== null && judge.accepts(line.label) ? line.label : null;
    if (line.label !== null && label === null && judge.doubts(line.label)) tellDoubt(line.label, line.line, log);
    const last = parts[parts.length - 1];
    if (last === undefined || line.turn || label !== null || line.run !== last.run) {
      const sameVoice = last !== undefined && line.run.voice !== null && line.run.voice === last.run.voice;
      if (!sameVoice || line.turn) {
        close();
        speaker = label?.label ?? line.run.voice;
      }
    }
    parts.push(label === null ? line : { ...line, from: line.from + label.restAt });
  }
  close();
  segments.forEach((segment, at) => {
    if (at > 0) segment.shares = true;
    else {
      // Findings on its times point to the line of the times.
      segment.line = block.line;
      segment.start = block.start;
      segment.end = block.end;
    }
  });
  return segments;
}

function wordsOf(parts: readonly CueLine[], block: CueBlock, speaker: string | null, log: FindingLog): DraftSegment {
  // Parts of one run are read together, so that a mark may run over the end of a line.
  const joined = joinByRun(parts);
  const words = joined.flatMap(({ run, from, to, line }) => {
    const placed = readWords(run.text.slice(from, to), line, log);
    pinStamps(placed, run, from, to, block);
    return placed.map(({ offset: _, ...word }) => ({ ...word, ...(block.confidence === undefined ? {} : { confidence: block.confidence }) }));
  });
  return { speaker, start: null, end: null, line: words[0]?.line ?? block.line, words };
}

function joinByRun(parts: readonly CueLine[]): CueLine[] {
  const joined: CueLine[] = [];
  for (const part of parts) {
    const last = joined[joined.length - 1];
    if (last !== undefined && last.run === part.run && part.from >= last.to && /^\s*$/.test(part.run.text.slice(last.to, part.from))) last.to = part.to;
    else joined.push({ ...part });
  }
  return joined;
}

/** The word that follows an inline time starts then; in a cue with inline times the first word starts with the cue. */
function pinStamps(words: ReturnType<typeof readWords>, run: VoiceRun, from: number, to: number, block: CueBlock): void {
  const stamps = run.stamps.filter(({ offset }) => offset >= from && offset <= to);
  if (stamps.length === 0) return;
  let at = 0;
  for (const { offset, time } of stamps) {
    while (at < words.length && (words[at]?.offset ?? 0) < offset - from) at += 1;
    const word = words[at];
    if (word !== undefined) word.start = time;
  }
  const first = words[0];
  if (first !== undefined && first.start === undefined && from === 0 && block.start !== null) first.start = block.start;
}
