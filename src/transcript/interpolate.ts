import { toMillisecond } from "./clock.ts";
import type { DraftWord } from "./draft.ts";
import { syllablesOf } from "./syllables.ts";
import type { Seconds, Timing } from "./types.ts";

export interface WordTime {
  start: Seconds;
  end: Seconds;
  timing: Exclude<Timing, "none">;
}

/**
 * Times of all words of one stretch, `from` to `to` in seconds. A word's own times stand (`measured`: at least its
 * start is given); the words between two known times share that span by their syllables (`estimated`).
 * Starts never fall as long as the words' own do not.
 */
export function interpolateWords(words: readonly DraftWord[], from: Seconds, to: Seconds): WordTime[] {
  const times: WordTime[] = [];
  let cursor = from;
  for (let at = 0; at < words.length; ) {
    const first = words[at] as DraftWord;
    const stop = endOfRun(words, at);
    const known = words[stop - 1]?.end ?? words[stop]?.start ?? to;
    // Neighbouring measured words may overlap a little; estimated ones between them then take no time.
    cursor = first.start ?? Math.min(cursor, known);
    const until = Math.max(cursor, known);
    const total = words.slice(at, stop).reduce((sum, word) => sum + syllablesOf(word), 0);
    let passed = 0;
    for (let place = at; place < stop; place += 1) {
      const word = words[place] as DraftWord;
      const share = (count: number): Seconds =>
        total === 0 ? until : Math.min(until, Math.max(cursor, toMillisecond(cursor + ((until - cursor) * count) / total)));
      const start = place === at ? cursor : share(passed);
      passed += syllablesOf(word);
      const end = place === stop - 1 ? until : share(passed);
      times.push({ start, end: Math.max(start, end), timing: word.start === undefined ? "estimated" : "measured" });
    }
    cursor = until;
    at = stop;
  }
  return times;
}

/** The first place after `at` where a time is known: behind a word with an end, or before a word with a start. */
function endOfRun(words: readonly DraftWord[], at: number): number {
  let stop = at + 1;
  while (stop < words.length && words[stop - 1]?.end === undefined && words[stop]?.start === undefined) stop += 1;
  return stop;
}
