import { eastAsianWidth } from "get-east-asian-width";

/*
 * The widths are those of string-width, and a test holds them to it, clusters of south-east Asian scripts aside. The package itself is not loaded: reading its
 * regular expressions costs 50 ms, as much as starting Node. Text that comes here is clean: no controls, no joiners.
 */

/** Printable ASCII and Latin without combining marks, dashes and quotes, block elements, and single symbols of the sheet. */
const ONE_COLUMN_EACH = /^[ -~\u00a1-\u00ac\u00ae-\u02af\u2010-\u2027\u2190-\u2193\u2500-\u259f\u25cb\u25d0\u2713\u2717]*$/;

/** Takes no column: marks set on the letter before, the vowels and finals of a Hangul syllable, what is never shown. */
const NO_COLUMN = /^[\p{Mn}\p{Me}\p{Cf}\p{Cc}\p{Default_Ignorable_Code_Point}\u1160-\u11ff\ud7b0-\ud7fb]$/u;

/** Asks for the coloured, two-column form of the sign before. */
const EMOJI_FORM = "\ufe0f";
const SKIN_TONE = /^\p{Emoji_Modifier}$/u;

/** Columns that a text takes in a terminal. */
export function displayWidth(text: string): number {
  if (ONE_COLUMN_EACH.test(text)) return text.length;
  let columns = 0;
  let before = 0;
  for (const character of text) {
    if (character === EMOJI_FORM) {
      columns += before === 1 ? 1 : 0;
      before = 2;
    } else if (!(NO_COLUMN.test(character) || (before === 2 && SKIN_TONE.test(character)))) {
      before = eastAsianWidth(character.codePointAt(0)!);
      columns += before;
    }
  }
  return columns;
}

export function padEnd(text: string, columns: number): string {
  return text + " ".repeat(Math.max(0, columns - displayWidth(text)));
}

/** Cuts a word that is wider than a whole line, between graphemes. */
export function splitWide(word: string, columns: number): string[] {
  if (displayWidth(word) <= columns) return [word];
  const pieces: string[] = [];
  let piece = "";
  for (const { segment } of new Intl.Segmenter().segment(word)) {
    if (piece !== "" && displayWidth(piece + segment) > columns) {
      pieces.push(piece);
      piece = "";
    }
    piece += segment;
  }
  return [...pieces, piece];
}
