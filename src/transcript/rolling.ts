import type { CueBlock } from "./cue-block.ts";
import type { DraftSegment, DraftWord } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";

/** Cues further apart than this, in seconds, do not roll: what is repeated then was said again. */
const LONGEST_GAP = 0.5;
/** Most lines of a cue that roll up: captions show two or three. */
const MOST_LINES = 4;
/** Rolling is a habit of a whole file: at least so many cues, and this share of neighbours, must repeat. */
const FEWEST_ROLLS = 2;
const LEAST_SHARE = 0.3;

/**
 * Takes away the words that a rolling caption repeats: a cue that opens with all words of the cue before it, or with
 * its last line or lines, as automatic captioning writes. Only exact repetition across touching cues counts, and only
 * in a file where it is the rule, since people repeat themselves too. What is taken away is a finding SW-T14.
 */
export function dropRolledWords(blocks: readonly CueBlock[], voices: DraftSegment[][], log: FindingLog): void {
  const shown = voices.map((segments) => segments.flatMap((segment) => segment.words));
  const rolls = shown.map((words, at) => (at === 0 ? 0 : rolledWords(blocks, shown, at, words)));
  const filled = shown.filter((words) => words.length > 0).length;
  const count = rolls.filter((roll) => roll > 0).length;
  if (count < FEWEST_ROLLS || count < LEAST_SHARE * (filled - 1)) return;

  rolls.forEach((roll, at) => {
    if (roll === 0) return;
    const block = blocks[at] as CueBlock;
    log.add({
      code: "SW-T14",
      severity: "info",
      line: block.line,
      kind: "rolling",
      message: "the caption repeats words of the one before it, as rolling captions do; the repeated words were left out",
    });
    let left = roll;
    for (const segment of voices[at] ?? []) left -= segment.words.splice(0, left).length;
    const [first, ...others] = (voices[at] ?? []).filter((segment) => segment.words.length > 0);
    // The interval of the cue belongs to whichever stretch is now its first.
    if (first !== undefined && first.shares === true) {
      delete first.shares;
      first.start = block.start;
      first.end = block.end;
    }
    voices[at] = first === undefined ? [] : [first, ...others];
  });
}

/** How many of the first words of cue `at` repeat the end of the cue before it. */
function rolledWords(blocks: readonly CueBlock[], shown: readonly DraftWord[][], at: number, words: readonly DraftWord[]): number {
  const before = shown[at - 1] ?? [];
  const gap = (blocks[at]?.start ?? Infinity) - (blocks[at - 1]?.end ?? -Infinity);
  if (before.length === 0 || words.length === 0 || gap > LONGEST_GAP) return 0;
  // Whole cue first, then ever fewer of its last lines.
  const starts = [0, ...before.flatMap((word, place) => (place > 0 && word.line !== before[place - 1]?.line ? [place] : []))];
  for (const start of [0, ...starts.slice(1).slice(-MOST_LINES)]) {
    const tail = before.slice(start);
    if (tail.length <= words.length && tail.every((word, place) => word.text === words[place]?.text)) return tail.length;
  }
  return 0;
}
