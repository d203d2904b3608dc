import { distance } from "fastest-levenshtein";

/** As far off as a typing slip goes: a letter of a short word, two letters, or a third of a long word. */
function tolerance(word: string): number {
  return word.length <= SHORT ? 1 : Math.max(2, Math.floor(word.length / 3));
}

/** Two letters of a word of four make another word, unless they only changed places. */
const SHORT = 5;

/** Slips between two words; two neighbours that changed places are one slip and not two (Damerau 1964). */
function slips(word: string, candidate: string): number {
  const off = distance(word, candidate);
  return off === 2 && isSwap(word, candidate) ? 1 : off;
}

function isSwap(word: string, candidate: string): boolean {
  if (word.length !== candidate.length) return false;
  const at = [...word].findIndex((letter, place) => letter !== candidate[place]);
  return word[at] === candidate[at + 1] && word[at + 1] === candidate[at] && word.slice(at + 2) === candidate.slice(at + 2);
}

/** The known word that a slip of the pen made the typed one of; undefined when none is near. */
export function nearestBySlip(typed: string, known: readonly string[]): string | undefined {
  const word = typed.toLowerCase();
  const ranked = known
    .map((candidate) => ({ candidate, off: slips(word, candidate.toLowerCase()) }))
    .filter(({ off }) => off <= tolerance(word))
    .sort((a, b) => a.off - b.off);
  return ranked[0]?.candidate;
}

/** The known word nearest to what was typed, or one that has it in it; undefined when none is near. */
export function nearest(typed: string, known: readonly string[]): string | undefined {
  const word = typed.toLowerCase();
  const slip = nearestBySlip(typed, known);
  if (slip !== undefined || word.length < 3) return slip;
  return known.find((candidate) => candidate.toLowerCase().includes(word));
}

/** `Did you mean 'x'? ` or nothing. */
export function didYouMean(typed: string, known: readonly string[]): string {
  const near = nearest(typed, known);
  return near === undefined ? "" : `Did you mean '${near}'? `;
}

/** More names than these are a wall that nobody reads. */
const MOST_NAMES = 12;

/** What may stand there in place of what was typed: the nearest, or what there is. @param are "Its items are" */
export function nearOrAll(typed: string, known: readonly string[], are: string): string {
  const near = didYouMean(typed, known);
  if (near !== "" || known.length === 0) return near.trim();
  const more = known.length - MOST_NAMES;
  return `${are}: ${known.slice(0, MOST_NAMES).join(", ")}${more > 0 ? ` and ${more} more` : ""}.`;
}
