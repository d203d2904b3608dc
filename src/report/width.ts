import stringWidth from "string-width";

/**
 * Columns that a text takes in a terminal. Latin letters, general punctuation and the sheet's own symbols are one
 * column each; string-width is asked for the rest only, because its first call costs 25 ms of start-up.
 */
export function displayWidth(text: string): number {
  return ONE_COLUMN_EACH.test(text) ? text.length : stringWidth(text);
}

/** Printable ASCII and Latin without combining marks, dashes and quotes, block elements, and single symbols of the sheet. */
const ONE_COLUMN_EACH = /^[ -~\u00a1-\u00ac\u00ae-\u02af\u2010-\u2027\u2190-\u2193\u2500-\u259f\u25cb\u25d0\u2713\u2717]*$/;

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
