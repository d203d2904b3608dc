import { findFillers } from "./fillers.ts";
import type { Token } from "./token.ts";

/** So many words are said twice in one stumble ("it's a, it's a slow one"). */
const LONGEST_STUMBLE = 3;

/**
 * Tokens that say nothing while the speaker looks for words: fillers, the first of what is said twice in a row ("the,
 * um, the side") and what repairs.ts found to be taken back. What is said before and behind them belongs together as
 * if they were not there.
 * @param repaired what was taken back, with the words that take it back.
 * @param breaks token positions before which a turn ends: nobody stumbles across one.
 */
export function hesitationsIn(tokens: readonly Token[], repaired: ReadonlySet<number>, breaks: ReadonlySet<number>): Set<number> {
  const silent = new Set(repaired);
  for (const { first, end } of findFillers(tokens)) for (let place = first; place < end; place += 1) silent.add(place);
  for (let place = 0; place < tokens.length; place += 1) {
    if (silent.has(place)) continue;
    const said = stumbleAt(tokens, place, silent, breaks);
    for (let k = place; k < place + said; k += 1) silent.add(k);
  }
  return silent;
}

/** How many words from here on are said once more straight behind, 0 for none. */
function stumbleAt(tokens: readonly Token[], place: number, silent: ReadonlySet<number>, breaks: ReadonlySet<number>): number {
  for (let length = LONGEST_STUMBLE; length > 0; length -= 1) {
    let again = place + length;
    while (silent.has(again) && !breaks.has(again)) again += 1;
    if (again + length > tokens.length) continue;
    let same = 0;
    while (same < length && tokens[place + same]!.text === tokens[again + same]!.text && !breaks.has(place + same + 1) && !/[.?!]/.test(tokens[place + same]!.after)) same += 1;
    if (same === length && !breaks.has(again)) return length;
  }
  return 0;
}
