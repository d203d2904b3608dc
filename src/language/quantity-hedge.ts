import { isHesitation, readUnit } from "./unit-words.ts";
import { readNumber, runsOn, wordsAt } from "./number-words.ts";
import type { Bound } from "./quantity-mention.ts";
import type { Token } from "./token.ts";

/** What stands around a number and says how it is meant. */
export interface Hedge {
  bound: Bound;
  approximate: boolean;
  aim: boolean;
  /** For a hedge before: where the number starts. For one behind: where the mention ends. */
  end: number;
}

type Meaning = "at-least" | "at-most" | "more" | "less" | "aim" | "about";

interface Pattern {
  meaning: Meaning;
  words: string[];
}

/** By first word, the longest first: every token of a talk is looked up, and hardly any opens a hedge. */
function patterns(entries: readonly (readonly [Meaning, ...string[]])[]): ReadonlyMap<string, Pattern[]> {
  const all = entries
    .flatMap(([meaning, ...texts]) => texts.map((text) => ({ meaning, words: text.split(" ") })))
    .sort((one, other) => other.words.length - one.words.length);
  const byFirst = new Map<string, Pattern[]>();
  for (const pattern of all) byFirst.set(pattern.words[0]!, [...(byFirst.get(pattern.words[0]!) ?? []), pattern]);
  return byFirst;
}

function patternAt(known: ReadonlyMap<string, Pattern[]>, tokens: readonly Token[], at: number): Pattern | undefined {
  return known.get(tokens[at]?.text ?? "")?.find(({ words }) => wordsAt(tokens, at, words));
}

/** `more` and `less` turn round under a negation: "do not take more than eight" is at most eight. */
const BEFORE = patterns([
  ["at-least", "at least", "at the very least", "no less than", "not less than", "no fewer than", "not fewer than", "a minimum of", "minimum of",
    "no lower than", "not lower than", "not below", "not under", "no shorter than", "no sooner than", "minimum", "the minimum of", "at minimum", "at a minimum", "a good", "upwards of"],
  ["at-most", "at most", "at the most", "at the very most", "no more than", "not more than", "never more than", "no longer than", "not longer than",
    "no higher than", "no greater than", "not above", "not over", "not exceeding", "a maximum of", "maximum of", "maximum", "max", "a max of", "max of", "no later than", "only up to", "any more than"],
  ["more", "more than", "greater than", "longer than", "higher than", "over", "above", "exceed", "exceeds", "exceeding", "beyond", "later than", "just over", "older than"],
  ["less", "less than", "fewer than", "shorter than", "lower than", "under", "below", "beneath", "just under", "younger than"],
  ["aim", "up to", "within", "inside of"],
  ["about", "about", "around", "roughly", "approximately", "approx", "nearly", "almost", "something like", "in the region of", "circa", "maybe", "perhaps", "probably", "somewhere around", "say about", "like about", "i think", "i want to say", "i would say", "let us say", "getting on for", "close to", "close on", "nigh on", "coming up to", "the best part of", "best part of", "more like", "bang on"],
]);

const BEHIND = patterns([
  ["at-least", "or more", "or longer", "or over", "or above", "or older", "at least", "at the very least", "minimum", "at a minimum", "and over", "and above", "or so at least", "plus", "as a minimum"],
  ["at-most", "or less", "or fewer", "or under", "or below", "or sooner", "at most", "at the most", "at the very most", "maximum", "max", "tops", "and no more", "and no longer", "as a maximum"],
  ["about", "or so", "ish", "or thereabouts", "thereabouts", "there or thereabouts", "give or take", "roughly", "approximately", "more or less", "or something", "or something like that"],
]);

const NEGATIONS = new Set(["not", "never", "no", "nothing", "without", "avoid"]);
/** "you should not be taking any more than": how far before the hedge its negation may stand, in tokens. */
const NEGATION_REACH = 6;

function negatedBefore(tokens: readonly Token[], at: number): boolean {
  for (let back = 1; back <= NEGATION_REACH; back += 1) {
    const token = tokens[at - back];
    if (token === undefined || /[.?!;:]/.test(token.after)) return false;
    if (NEGATIONS.has(token.text)) return true;
  }
  return false;
}

/** "inject it over ten seconds" is how long it takes, not more than that. */
function overMeansDuring(tokens: readonly Token[], at: number, end: number): boolean {
  if (tokens[at]?.text !== "over") return false;
  const number = readNumber(tokens, end);
  const unit = number === null ? readUnit(tokens, end + 1, false) : readUnit(tokens, number.end, number.written === "digits");
  const duration = unit !== null && ["second", "minute", "hour", "day", "week", "month"].includes(unit.unit);
  return duration && !["just", "well", "go", "goes", "for", "not", "never", "is", "anything", "be"].includes(tokens[at - 1]?.text ?? "");
}

/** The hedges that stand at token `at`, one after the other ("up to about"); `end` is `at` where there are none. */
export function hedgeBefore(tokens: readonly Token[], at: number): Hedge {
  const hedge: Hedge = { bound: "exact", approximate: false, aim: false, end: at };
  for (;;) {
    const found = patternAt(BEFORE, tokens, hedge.end);
    if (found === undefined || (hedge.end > at && !runsOn(tokens, hedge.end))) break;
    const start = hedge.end;
    const end = start + found.words.length;
    hedge.end = end;
    if (found.meaning === "about") hedge.approximate = true;
    else if (found.meaning === "aim") Object.assign(hedge, { bound: "at-most", aim: true });
    else if (found.meaning === "at-least" || found.meaning === "at-most") hedge.bound = found.meaning;
    else if (!overMeansDuring(tokens, start, end)) {
      hedge.bound = (found.meaning === "more") === negatedBefore(tokens, start) ? "at-most" : "at-least";
    }
    // "about, um, ten seconds"
    while (isHesitation(tokens[hedge.end])) hedge.end += 1;
    // "for a maximum of the four weeks", "within the first month"
    if (found.meaning === "aim" && wordsAt(tokens, hedge.end, ["the"])) hedge.end += 1;
  }
  return hedge;
}

/** The hedge behind a quantity that ends before `at`. */
export function hedgeBehind(tokens: readonly Token[], at: number): Hedge | null {
  if (at >= tokens.length || !(runsOn(tokens, at) || tokens[at - 1]?.after === ",")) return null;
  const found = patternAt(BEHIND, tokens, at);
  if (found === undefined) return null;
  // "ten seconds. At least, ...", "at least ten" and "and no more than ten": the hedge belongs to the number that follows it.
  const end = at + found.words.length;
  const next = runsOn(tokens, end) ? readNumber(tokens, end) : null;
  if (next !== null || (runsOn(tokens, end) && tokens[end]?.text === "than")) return null;
  return {
    bound: found.meaning === "at-least" || found.meaning === "at-most" ? found.meaning : "exact",
    approximate: found.meaning === "about",
    aim: false,
    end,
  };
}
