import type { Evidence } from "../../scoring/types.ts";
import { clock } from "../figures.ts";
import { faint, type Text } from "../page.ts";
import type { Symbols } from "../style.ts";

/** A quote longer than this hides the words that count; the JSON sheet holds it whole. */
const LONGEST_QUOTE = 28;
const QUOTE_HEAD = 16;
const QUOTE_TAIL = 10;

/** `1:32`, `~1:32` when estimated, `line 12` without times. */
export function place(evidence: Evidence): string {
  if (evidence.start === null) return `line ${evidence.line}`;
  return `${evidence.estimated ? "~" : ""}${clock(evidence.start)}`;
}

export function quote(words: string, symbols: Symbols): string {
  const all = words.split(" ");
  if (all.length <= LONGEST_QUOTE) return `"${words}"`;
  return `"${all.slice(0, QUOTE_HEAD).join(" ")} ${symbols.gap} ${all.slice(-QUOTE_TAIL).join(" ")}"`;
}

/** When, who and what: `1:32 candidate "give it a good shake"`. */
export function spoken(evidence: Evidence, symbols: Symbols): Text {
  return [faint(`${place(evidence)} ${evidence.role} `), quote(evidence.quote, symbols)];
}
