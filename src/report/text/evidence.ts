import type { Evidence, ItemResult } from "../../scoring/types.ts";
import { clock } from "../figures.ts";
import { faint, strong, type Text } from "../page.ts";
import type { Symbols } from "../style.ts";

/** A quote longer than this hides the words that count; the JSON sheet holds it whole. */
const LONGEST_QUOTE = 28;
const QUOTE_HEAD = 16;
const QUOTE_TAIL = 10;

/** `1:32`, `~1:32` when estimated, `line 12` without times. */
export function place(evidence: Evidence): string {
  if (evidence.start === null) return `line ${evidence.line}`;
  return `${evidence.estimated && evidence.startGiven !== true ? "~" : ""}${clock(evidence.start)}`;
}

export function quote(words: string, symbols: Symbols): string {
  const all = words.split(" ");
  if (all.length <= LONGEST_QUOTE) return `"${words}"`;
  return `"${all.slice(0, QUOTE_HEAD).join(" ")} ${symbols.gap} ${all.slice(-QUOTE_TAIL).join(" ")}"`;
}

/**
 * When, who and what: `1:32 candidate "give it a good shake"`. A quote of a word or two stands between asterisks among the
 * words around it: `0:29 candidate "what's your date of *birth?*"`.
 */
export function spoken(evidence: Evidence, symbols: Symbols): Text {
  const head = faint(`${place(evidence)} ${evidence.role} `);
  const { before, after } = evidence;
  if (before === undefined && after === undefined) return [head, quote(evidence.quote, symbols)];
  return [head, `"${before === undefined ? "" : `${before} `}`, strong(`*${evidence.quote}*`), `${after === undefined ? "" : ` ${after}`}"`];
}

/** The quote among the words around it, where it has any: `what's your date of *birth?*`. */
export function inContext({ before, quote: words, after }: Evidence): string {
  return before === undefined && after === undefined ? words : [before, `*${words}*`, after].filter((part) => part !== undefined).join(" ");
}

/** Where to listen for an item that is unsure: at the parts that the doubt hangs on. Empty where nothing was found. */
export function listenPlaces({ elements, confidence }: ItemResult): string[] {
  const shown = elements.filter(({ evidence }) => evidence.length > 0);
  const unclear = shown.filter(({ content }) => content === "cannot-tell");
  const unsure = shown.filter((element) => element.confidence <= confidence);
  const places = (unclear.length > 0 ? unclear : unsure.length > 0 ? unsure : shown).map(({ evidence }) => evidence[0]!);
  return [...new Set(places.sort((a, b) => a.first - b.first).map(place))];
}
