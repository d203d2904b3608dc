/** Fewer neighbours show no custom. */
const FEWEST_NEIGHBOURS = 6;
/** So many of the labelled neighbours may have one speaker where labels stand at changes. */
const SAME_SPEAKER = 0.1;

/**
 * Whether a file's labels stand only where the speaker changes: of neighbours with labels hardly any two have the same.
 * Then a stretch without a label goes on with the speaker before it.
 * @param stretches in order, with the speaker of the first and of the last of their words; null without a label.
 */
export function labelsStandAtChanges(stretches: readonly (readonly [first: string | null, last: string | null])[]): boolean {
  let neighbours = 0;
  let same = 0;
  for (let place = 1; place < stretches.length; place += 1) {
    const [before, here] = [stretches[place - 1]![1], stretches[place]![0]];
    if (before === null || here === null) continue;
    neighbours += 1;
    if (before === here) same += 1;
  }
  return neighbours >= FEWEST_NEIGHBOURS && same <= SAME_SPEAKER * neighbours;
}

export const AT_CHANGES = "was given to the speaker before it: in this file labels stand where the speaker changes";
