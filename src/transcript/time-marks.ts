import type { FindingLog } from "./finding-log.ts";
import { longestRising } from "./order.ts";
import type { TextLine } from "./text-line.ts";

/** So many times without brackets must rise down the file before they are believed. */
const FEWEST_NAKED = 2;
/** When the text does not begin with a time, more of them must, on this share of the paragraphs or lines. */
const FEWEST_NAKED_LATER = 3;
const LEAST_NAKED_LATER = 0.4;
/** Of all times without brackets this share must rise, or they are not a clock running. */
const LEAST_RISING = 2 / 3;
/** Beside marks in brackets, the others are believed when there are at least this many for each bracketed one. */
const LEAST_BESIDE_BRACKETS = 0.3;

/**
 * Decides which bare times ("1:20 and then ...") are marks and which were spoken ("8:30 is when I take it"), and gives
 * the spoken ones back to the text. Believed are bare times that rise down the file among all marks, when they are the
 * file's own habit. Each one that is not believed is a finding SW-T17.
 */
export function settleTimeMarks(lines: readonly TextLine[], isLabel: (line: TextLine) => boolean, log: FindingLog): void {
  const marked = lines.filter((line) => line.mark !== null && line.mark.start !== null);
  for (const line of marked) if (line.mark !== null && isLabel(line)) line.mark.certainty = "sure";
  const first = lines.find((line) => line.kind === "content");
  if (first?.mark != null && !/\S/.test(first.afterMark)) first.mark.certainty = "sure"; // nothing said opens with "12:10" and stops
  const chain = new Set(longestRising(marked.map((line) => line.mark?.start ?? 0)).map((at) => marked[at]));
  const bare = marked.filter((line) => line.mark?.certainty === "bare");
  const naked = marked.filter((line) => line.mark?.setOff === false);
  const rising = naked.filter((line) => chain.has(line));
  // "8:30" said three times is no clock running: the times must differ.
  const different = new Set(rising.map((line) => line.mark?.start)).size;
  const believed = rising.length >= naked.length * LEAST_RISING && isHabit(lines, different, marked.length - naked.length);
  for (const line of bare) {
    if (believed && chain.has(line)) continue;
    log.add({
      code: "SW-T17",
      severity: "info",
      line: line.line,
      kind: "bare time",
      message: `the line begins with "${line.mark?.text ?? ""}", which was read as speech, not as a time mark`,
      mend: "Write time marks in square brackets, as in [0:20].",
    });
    Object.assign(line, withoutMark(line));
  }
}

function isHabit(lines: readonly TextLine[], rising: number, bracketed: number): boolean {
  if (bracketed > 0) return rising >= bracketed * LEAST_BESIDE_BRACKETS && rising + bracketed >= FEWEST_NAKED_LATER;
  const content = lines.filter((line) => line.kind === "content");
  if (content[0]?.mark != null) return rising >= FEWEST_NAKED;
  return rising >= FEWEST_NAKED_LATER && rising >= paragraphs(lines) * LEAST_NAKED_LATER;
}

/** Blocks between blank lines; where there are none, lines. */
function paragraphs(lines: readonly TextLine[]): number {
  const starts = lines.filter((line, at) => line.kind === "content" && (at === 0 || lines[at - 1]?.kind !== "content"));
  return starts.length > 1 ? starts.length : lines.filter((line) => line.kind === "content").length;
}

function withoutMark(line: TextLine): Partial<TextLine> {
  const body = line.raw;
  return { mark: null, label: null, header: false, afterMark: body, rest: body };
}
