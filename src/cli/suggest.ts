import { distance } from "fastest-levenshtein";

/** As far off as a typing slip goes: a letter of a short word, two letters, or a third of a long word. */
function tolerance(word: string): number {
  return word.length <= SHORT ? 1 : Math.max(2, Math.floor(word.length / 3));
}

/** Two letters of a word of four make another word, unless they only changed places. */
const SHORT = 5;
const letters = (word: string): string => [...word].sort().join("");
const isSwap = (word: string, candidate: string, off: number): boolean => off === 2 && letters(word) === letters(candidate);

/** The known word nearest to what was typed, or one that starts with it; undefined when none is near. */
export function nearest(typed: string, known: readonly string[]): string | undefined {
  const word = typed.toLowerCase();
  const ranked = known
    .map((candidate) => ({ candidate, off: distance(word, candidate.toLowerCase()) }))
    .filter(({ candidate, off }) => off <= tolerance(word) || isSwap(word, candidate.toLowerCase(), off))
    .sort((a, b) => a.off - b.off);
  if (ranked[0] !== undefined) return ranked[0].candidate;
  if (word.length < 3) return undefined;
  return known.find((candidate) => candidate.toLowerCase().includes(word));
}

/** `Did you mean 'x'? ` or nothing. */
export function didYouMean(typed: string, known: readonly string[]): string {
  const near = nearest(typed, known);
  return near === undefined ? "" : `Did you mean '${near}'? `;
}
