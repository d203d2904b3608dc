import { distance } from "fastest-levenshtein";

/** As far off as a typing slip goes: two letters, or a third of a long word. */
function tolerance(word: string): number {
  return Math.max(2, Math.floor(word.length / 3));
}

/** The known word nearest to what was typed, or one that starts with it; undefined when none is near. */
export function nearest(typed: string, known: readonly string[]): string | undefined {
  const word = typed.toLowerCase();
  const ranked = known
    .map((candidate) => ({ candidate, off: distance(word, candidate.toLowerCase()) }))
    .filter(({ off }) => off <= tolerance(word))
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
