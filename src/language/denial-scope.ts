import type { Clause } from "./clause.ts";
import { deniesAList, forbids, goesOn, listsBarely } from "./denial-list.ts";
import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { opensTelling } from "./main-clause.ts";
import { phraseList } from "./phrase-set.ts";
import type { Token } from "./token.ts";

const LEXICON = polarityData as LexiconFile<"polarity">;
const ENDERS = phraseList(LEXICON.enders);
const TURNERS = new Set(LEXICON.turners);
const AWAITS = phraseList(LEXICON.awaits);

/** A denial seldom reaches further in speech without punctuation. */
const REACH = 12;
/** "Without" and "instead of" deny the thing or the doing just behind them. */
const SHORT_REACH = 5;
const SHORT = new Set(["without", "instead", "rather", "as"]);

/**
 * Behind the last token that a denial reaches, from `first` on: something ends it before its reach does.
 * @param place token of the denial, which stands right before `first`.
 */
export function scopeBehind(tokens: readonly Token[], clause: Clause, place: number, first: number, supposed: readonly boolean[]): number {
  return scopeEnd(tokens, clause, first, reachOf(tokens, clause, place), { list: deniesAList(tokens, clause, place, supposed), bare: forbids(tokens, clause, place, first) });
}

/** The same for what is judged by words before it ("it's not good for it to get hot"). */
export function judgedUpTo(tokens: readonly Token[], clause: Clause, first: number): number {
  return scopeEnd(tokens, clause, first, REACH, { list: true, bare: false });
}

/** @param goesOver whether it goes on over a list with "or", and over one without. */
function scopeEnd(tokens: readonly Token[], clause: Clause, first: number, reach: number, goesOver: { list: boolean; bare: boolean }): number {
  const end = purposeFrom(tokens, first, Math.min(clause.end, first + reach));
  const cleft = isCleft(tokens, first);
  for (let place = first; place < end; place += 1) {
    const text = tokens[place]!.text;
    const listed = place > first && tokens[place - 1]!.after === ",";
    if (listed && !(goesOver.list && (goesOn(tokens, place, end) || (goesOver.bare && listsBarely(tokens, first, place))))) return place;
    if (!listed && !(cleft && /^(you|i|we|he|she|they)$/.test(text)) && (place > first || /^(good|nothing|none)$/.test(tokens[place - 1]!.text)) && opensTelling(tokens, place)) return place;
    if ((place > first || TURNERS.has(text)) && (TURNERS.has(text) || (ENDERS.at(tokens, place) !== null && !goesWithIt(tokens, place)))) return place;
  }
  return end;
}

/** "The ones you're not using live in the fridge": what tells which one denies its own verb alone. */
function reachOf(tokens: readonly Token[], clause: Clause, place: number): number {
  if (SHORT.has(tokens[place]!.text)) return SHORT_REACH;
  let subject = place - 1;
  while (subject > clause.first && /^(are|is|have|has|do|does|did|will|were|can)$/.test(tokens[subject]!.text)) subject -= 1;
  const tellsWhich = place - subject >= 2 && subject > clause.first && /^(you|he|she|they|we)$/.test(tokens[subject]!.text) && tokens[subject - 1]!.after === "" && WHICH_ONES.test(tokens[subject - 1]!.text);
  return tellsWhich ? RELATIVE_REACH : REACH;
}

const WHICH_ONES = /^(ones?|those|any|spares|two|three|four|five)$/;
const RELATIVE_REACH = 1;

/** "Anything that gets hot" tells which thing, "two at once" how many: they are denied with it. */
function goesWithIt(tokens: readonly Token[], place: number): boolean {
  // "Not on the same day as the other".
  if (tokens[place]!.text === "as") return tokens[place - 1]!.text === "much" || tokens[place - 2]?.text === "same";
  if (tokens[place]!.text === "once") return tokens[place - 1]!.text === "at" || /^(a|daily|every|more)$/.test(tokens[place + 1]?.text ?? "");
  return tokens[place]!.text === "that" && /^((any|some|every)(thing|one|body|where)|things?|places?|stuff)$/.test(tokens[place - 1]?.text ?? "");
}

/** "It isn't every week you dust it": what is singled out belongs to what is said of it. */
function isCleft(tokens: readonly Token[], first: number): boolean {
  return /^(is|was)$/.test(tokens[first - 2]?.text ?? "") && tokens[first - 3]?.text === "it" && /^(each|every|the|in|on|at|once|when|before|after|by|with|this|that)$/.test(tokens[first]?.text ?? "");
}

/** So soon behind the denial what need not be known or waited for is named. */
const AWAITED_WITHIN = 4;

/** Where what need not be known, asked or waited for is told to an end: "you don't need to know what she took | to call for help". */
function purposeFrom(tokens: readonly Token[], first: number, end: number): number {
  for (let place = first; place < Math.min(end, first + AWAITED_WITHIN); place += 1) {
    const awaited = AWAITS.at(tokens, place);
    if (awaited === null) continue;
    // "Know how to call": what need not be known is the calling.
    for (let k = awaited.end; k < end; k += 1) if (tokens[k]!.text === "to" && (k > awaited.end || tokens[k - 1]!.text !== "know") && !KNOWN_TO.test(tokens[k - 1]!.text)) return k;
    return end;
  }
  return end;
}

/** Before "to" with what is to be known: "know how to", "where to", "whether she wants to". */
const KNOWN_TO = /^(how|when|where|what|which|who|whether|not|want|wants|need|needs|have|has|had|got|going|used|able|likely|supposed|meant|about|due|allergic|close|next|up)$/;
