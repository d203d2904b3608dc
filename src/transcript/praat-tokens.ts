import type { FindingLog } from "./finding-log.ts";

/** A value of a Praat text file. */
export interface PraatToken {
  kind: "number" | "string" | "flag";
  /** A string without its quotes, doubled ones made single. */
  text: string;
  /** 1-based line on which it starts. */
  line: number;
}

// One alternative each: string (its end may be missing), comment, line end, blank, flag, and a run of anything else.
const PIECE = /"([^"]*(?:""[^"]*)*)("?)|![^\n\r]*|\r\n|\n|\r|[^\S\n\r]+|<[^<>\s]*>|[^\s"!]+/g;

/**
 * The free-standing numbers, strings and flags of a Praat text file; all else (`xmin =`, `item [1]:`) only helps a
 * reader. A number is free-standing when white space, or the edge of the file, is on both sides of it; a percent
 * sign may follow. `!` starts a comment outside strings. Source: Praat manual, "TextGrid file formats".
 * Throws SW-T06 when a string is not closed.
 */
export function tokenizePraat(text: string, log: FindingLog): PraatToken[] {
  const tokens: PraatToken[] = [];
  let line = 1;
  let afterBlank = true;
  for (const match of text.matchAll(PIECE)) {
    const piece = match[0];
    if (piece.startsWith('"')) {
      if (match[2] === "") {
        throw log.refuse("SW-T06", "a text is not closed by a quotation mark, here or further up", { line, mend: 'Close it with " and write a quotation mark inside a text twice ("").' });
      }
      tokens.push({ kind: "string", text: (match[1] ?? "").replaceAll('""', '"'), line });
      line += lineEnds(piece);
      afterBlank = false;
      continue;
    }
    if (/^\s/.test(piece)) {
      line += lineEnds(piece);
      afterBlank = true;
      continue;
    }
    const next = text[match.index + piece.length];
    if (afterBlank && (next === undefined || /[\s!]/.test(next))) {
      if (/^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?%?$/.test(piece)) tokens.push({ kind: "number", text: piece.replace("%", ""), line });
      else if (/^<\w+>$/.test(piece)) tokens.push({ kind: "flag", text: piece, line });
    }
    afterBlank = false;
  }
  return tokens;
}

function lineEnds(text: string): number {
  return text.split(/\r\n|\n|\r/).length - 1;
}
