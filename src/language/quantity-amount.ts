import { digitWord, readNumber, runsOn, wordsAt, type NumberReading } from "./number-words.ts";
import type { QuantityMention } from "./quantity-mention.ts";
import { DAYS, readPeriod } from "./quantity-frequency.ts";
import { countedUpTo } from "./quantity-tally.ts";
import { isCounting } from "./set-aside.ts";
import type { Token } from "./token.ts";
import { readUnit, unitBehind, isHesitation, type UnitReading } from "./unit-words.ts";

/** A quantity without its hedges. Values in `unit`; `end` is the token position after it. */
export interface Reading extends Pick<QuantityMention, "low" | "high" | "unit" | "end" | "approximate" | "vague" | "firm" | "kind"> {
  perDay?: readonly [number, number];
}

const exact = (low: number, high: number, unit: Reading["unit"], end: number): Reading => ({
  low, high, unit, end, approximate: false, vague: false, firm: unit !== null, kind: "amount",
});

/** The amount that starts at token `at`: numbers, ranges, halves, articles, with the unit behind. */
export function readAmount(tokens: readonly Token[], at: number): Reading | null {
  const between = readBetween(tokens, at);
  if (between !== null) return between;
  const single = readSingle(tokens, at);
  return single === null ? null : readRange(tokens, withSmallerUnit(tokens, single));
}

/** "between five and ten minutes", "from two to four weeks", "anywhere from one to two". */
function readBetween(tokens: readonly Token[], at: number): Reading | null {
  const skip = /^(anywhere|somewhere|anything)$/.test(tokens[at]?.text ?? "") ? 1 : 0;
  const lead = tokens[at + skip]?.text;
  if (lead !== "between" && lead !== "from") return null;
  const low = readSingle(tokens, at + skip + 1);
  const joint = low === null ? undefined : tokens[low.end]?.text;
  if (low === null || !((lead === "between" && joint === "and") || joint === "to")) return null;
  const high = readSingle(tokens, low.end + 1);
  return high === null ? null : merge(low, high);
}

const scaleOf = (unit: Reading["unit"]) => (unit === null ? undefined : DAYS[unit]);

/** One range out of its two ends; null when they do not go together or run downwards. */
function merge(low: Reading, high: Reading): Reading | null {
  if (low.kind === "count" || high.kind === "count") return null;
  let { low: from, high: mid } = low;
  if (low.unit !== null && low.unit !== high.unit) {
    const [scaleLow, scaleHigh] = [scaleOf(low.unit), scaleOf(high.unit)];
    if (scaleLow === undefined || scaleHigh === undefined) return null;
    from = (low.low * scaleLow) / scaleHigh;
    mid = (low.high * scaleLow) / scaleHigh;
  }
  if (from > high.high || mid > high.high) return null;
  return {
    ...high, low: from, approximate: low.approximate || high.approximate, vague: low.vague || high.vague,
    firm: high.unit !== null && high.firm, unit: high.unit,
  };
}

/** "thirty seconds to a minute", "one puff or two", "a minute or two". */
function readRange(tokens: readonly Token[], low: Reading): Reading {
  const joint = tokens[low.end]?.text;
  if (low.unit === null || !runsOn(tokens, low.end) || (joint !== "to" && joint !== "or")) return low;
  const number = readNumber(tokens, low.end + 1);
  if (number !== null && joint === "or" && unitBehind(tokens, number.end, number.written === "digits") === null) {
    const near = number.value > low.high && number.value <= low.high * 3 && number.value < 20;
    return near ? { ...low, high: number.value, end: number.end, approximate: true, firm: true } : low;
  }
  const high = readSingle(tokens, low.end + 1);
  if (high === null || high.unit === null) return low;
  const merged = merge(low, withSmallerUnit(tokens, high));
  return merged !== null && merged.low < merged.high ? merged : low;
}

/** "one minute thirty", "two hours and thirty minutes", "an hour and a half". */
function withSmallerUnit(tokens: readonly Token[], large: Reading): Reading {
  const scale = scaleOf(large.unit);
  if (scale === undefined || large.low !== large.high || !runsOn(tokens, large.end)) return large;
  for (const [pattern, part] of [[["and", "a", "half"], 0.5], [["and", "a", "quarter"], 0.25], [["and", "three", "quarters"], 0.75]] as const) {
    if (!wordsAt(tokens, large.end, pattern)) continue;
    const next = large.end + pattern.length;
    if (runsOn(tokens, next) && readUnit(tokens, next, false) !== null) continue;
    return { ...large, low: large.low + part, high: large.high + part, end: next };
  }
  const at = tokens[large.end]?.text === "and" ? large.end + 1 : large.end;
  const number = readNumber(tokens, at);
  if (number === null) return large;
  const unit = unitBehind(tokens, number.end, number.written === "digits");
  if (unit !== null) {
    const small = scaleOf(unit.unit);
    if (small === undefined || small >= scale) return large;
    const part = (number.value * unit.factor * small) / scale;
    return part < 1 ? { ...large, low: large.low + part, high: large.high + part, end: unit.end } : large;
  }
  // "one minute thirty"
  const clockLike = (large.unit === "minute" || large.unit === "hour") && number.value % 5 === 0 && number.value > 0 && number.value < 60;
  const open = !["to", "or"].includes(tokens[number.end]?.text ?? "") && !isPluralNoun(tokens, number.end);
  if (at !== large.end || !clockLike || !open) return large;
  return { ...large, low: large.low + number.value / 60, high: large.high + number.value / 60, end: number.end };
}

const VAGUE: readonly { words: readonly string[]; low: number; high: number; vague: boolean }[] = [
  { words: ["a", "couple", "of"], low: 2, high: 2, vague: false },
  { words: ["a", "couple"], low: 2, high: 2, vague: false },
  { words: ["couple", "of"], low: 2, high: 2, vague: false },
  { words: ["couple"], low: 2, high: 2, vague: false },
  { words: ["a", "pair", "of"], low: 2, high: 2, vague: false },
  { words: ["a", "pair"], low: 2, high: 2, vague: false },
  { words: ["pair", "of"], low: 2, high: 2, vague: false },
  { words: ["a", "good", "few"], low: 3, high: 7, vague: true },
  { words: ["a", "few"], low: 3, high: 5, vague: true },
  { words: ["few"], low: 3, high: 5, vague: true },
  { words: ["several"], low: 3, high: 7, vague: true },
];
const PARTS: readonly { words: readonly string[]; value: number; needs: "article" | "either" }[] = [
  { words: ["three", "quarters", "of"], value: 0.75, needs: "article" },
  { words: ["three", "quarter", "of"], value: 0.75, needs: "article" },
  { words: ["a", "quarter", "of"], value: 0.25, needs: "article" },
  { words: ["quarter", "of"], value: 0.25, needs: "article" },
  { words: ["a", "quarter"], value: 0.25, needs: "either" },
  { words: ["quarter"], value: 0.25, needs: "either" },
  { words: ["half", "of"], value: 0.5, needs: "article" },
  { words: ["a", "half"], value: 0.5, needs: "either" },
  { words: ["half"], value: 0.5, needs: "either" },
];
/** "two thirds full" is a share, and a share is no number of anything. */
const SHARES = new Set(["third", "thirds", "quarter", "quarters", "fifth", "fifths", "tenth", "tenths", "half", "halves"]);

function readSingle(tokens: readonly Token[], at: number): Reading | null {
  if (tokens[at] === undefined) return null;
  if (wordsAt(tokens, at, ["a", "dozen"])) return counted(tokens, { value: 12, end: at + 2, written: "words" });
  return readPart(tokens, at) ?? readVague(tokens, at) ?? readCounted(tokens, at) ?? readNumbers(tokens, at) ?? readArticle(tokens, at);
}

/** "half a minute", "half an hour", "quarter of an hour", "half a dozen". */
function readPart(tokens: readonly Token[], at: number): Reading | null {
  if (wordsAt(tokens, at, ["half", "to"]) || wordsAt(tokens, at, ["half", "or"])) {
    const whole = runsOn(tokens, at + 2) ? readNumbers(tokens, at + 2) ?? readArticle(tokens, at + 2) : null;
    if (whole !== null && whole.unit !== null && whole.low === 1) return { ...whole, low: 0.5 };
  }
  for (const { words, value, needs } of PARTS) {
    if (!wordsAt(tokens, at, words)) continue;
    let next = at + words.length;
    const article = runsOn(tokens, next) && /^(a|an|one)$/.test(tokens[next]?.text ?? "");
    if (article) next += 1;
    else if (needs === "article") continue;
    if (!runsOn(tokens, next)) continue;
    if (value === 0.5 && article && tokens[next]?.text === "dozen") return counted(tokens, { value: 6, end: next + 1, written: "words" });
    const unit = readUnit(tokens, next, false);
    if (unit !== null && unit.unit !== "time") return exact(value * unit.factor, value * unit.factor, unit.unit, unit.end);
  }
  return null;
}

function readVague(tokens: readonly Token[], at: number): Reading | null {
  for (const { words, low, high, vague } of VAGUE) {
    if (!wordsAt(tokens, at, words)) continue;
    const unit = unitBehind(tokens, at + words.length, false);
    if (unit !== null) return { ...exact(low * unit.factor, high * unit.factor, unit.unit, unit.end), approximate: true, vague };
    // A pair of gloves is one thing.
    if (words.includes("of") && !words.includes("pair") && isPluralNoun(tokens, at + words.length)) return { ...exact(low, high, "number", at + words.length), approximate: true };
    // "A pair up the left".
    if (/^(couple|pair)$/.test(words.at(-1)!) && tokens[at + words.length]?.text !== "of") return { ...exact(low, high, null, at + words.length), approximate: words.includes("couple") };
  }
  return null;
}

/** Numbers counted aloud, three or more, up or down by ones, whatever punctuation parts them. */
const COUNTED_LEAST = 3;
function readCounted(tokens: readonly Token[], at: number): Reading | null {
  const run: NumberReading[] = [];
  for (let next = readNumber(tokens, at); next !== null; next = readNumber(tokens, tokens[next.end]?.text === "and" ? next.end + 1 : next.end)) {
    if (run.length > 0 && !isCounting([...run.slice(-2), next].map((number) => number.value))) break;
    run.push(next);
  }
  if (run.length < COUNTED_LEAST) return null;
  // "One and two and three and so on up to ten".
  const last = countedUpTo(tokens, run.at(-1)!.end) ?? run.at(-1)!;
  const highest = Math.max(last.value, ...run.map((number) => number.value));
  const unit = unitBehind(tokens, last.end, last.written === "digits");
  return { ...exact(highest * (unit?.factor ?? 1), highest * (unit?.factor ?? 1), unit?.unit ?? null, unit?.end ?? last.end), approximate: true, kind: "count", firm: false };
}

const JOINTS: readonly (readonly string[])[] = [
  ["to", "about"], ["to", "around"], ["to", "maybe"], ["up", "to"], ["to"], ["or", "maybe"], ["or", "even"], ["or", "perhaps"], ["perhaps"], ["possibly"], ["even"], ["better"], ["or"], ["maybe"], ["through"],
  ["or", "it", "is", "the"], ["or", "it", "is"], ["or", "it", "might", "be"], ["or", "could", "be"], ["could", "be"], [],
];
/** May stand behind a comma where the end that they lead to has its unit: "ten, maybe fifteen seconds". */
const ADDED = /^(maybe|perhaps|possibly|even|better|or|could)$/;
/** "ten fifteen minutes" is a range, "two fifty" is not: the ends of a range said without "to" lie close. */
const CLOSE = 3;

/** A number or two with the unit behind: "ten seconds", "two to three puffs", "ten, fifteen minutes", "two fifty micrograms". */
function readNumbers(tokens: readonly Token[], at: number): Reading | null {
  const number = readNumber(tokens, at);
  if (number === null) return null;
  if (runsOn(tokens, number.end) && tokens[number.end]?.text === "half" && number.written === "digits") {
    // "2 1/2 tablets", whose fraction the tokeniser writes as "half".
    const unit = unitBehind(tokens, number.end + 1, false);
    if (unit !== null) return exact((number.value + 0.5) * unit.factor, (number.value + 0.5) * unit.factor, unit.unit, unit.end);
  }
  if (runsOn(tokens, number.end) && SHARES.has(tokens[number.end]?.text ?? "")) return null;
  if (runsOn(tokens, number.end) && tokens[number.end]?.text === "dozen") return counted(tokens, { ...number, value: number.value * 12, end: number.end + 1 });
  for (const joint of JOINTS) {
    const added = joint.length > 0 && ADDED.test(joint[0]!) && tokens[number.end - 1]!.after === ",";
    if (joint.length > 0 && !((runsOn(tokens, number.end) || added) && wordsAt(tokens, number.end, joint))) continue;
    if (joint.length === 0 && !/^[-,]?$/.test(tokens[number.end - 1]!.after)) continue;
    // "Not one, two drops": the one is denied, the other told.
    if (joint.length === 0 && tokens[at - 1]?.text === "not" && tokens[number.end - 1]!.after === ",") break;
    const from = number.end + joint.length;
    if (joint.length > 0 && !runsOn(tokens, from)) continue;
    const other = readNumber(tokens, from);
    if (other === null) continue;
    const unit = unitBehind(tokens, other.end, other.written === "digits");
    if (added && (unit === null || other.value <= number.value || other.value > number.value * CLOSE)) break;
    if (joint.length === 0) {
      // "A single one, five milligrams it is": a pronoun, and no tens of fifteen.
      if (isPronounOne(tokens, at)) break;
      if (unit === null || (STRENGTHS.has(unit.unit) && STRONG.test(tokens[unit.end]?.text ?? ""))) break;
      const hundreds = digitWord(tokens[at]?.text) !== undefined && number.end === at + 1 && number.written === "words" && other.value >= 20 && other.value < 100;
      const single = hundreds || other.value > 9 || number.value > 9 || !Number.isInteger(other.value) ? null : readOutDigits(number.value, other.value, unit);
      if (single !== null) return single;
      if (hundreds && ["microgram", "milligram", "unit", "millilitre"].includes(unit.unit) && number.value > 0) {
        const value = number.value * 100 + other.value;
        return exact(value * unit.factor, value * unit.factor, unit.unit, unit.end);
      }
      if (other.value === number.value) return exact(number.value * unit.factor, number.value * unit.factor, unit.unit, unit.end);
      if (other.value < number.value || other.value > number.value * CLOSE) break;
      return { ...exact(number.value * unit.factor, other.value * unit.factor, unit.unit, unit.end), approximate: true };
    }
    if (other.value < number.value && joint[0] !== "or") break;
    const [low, high] = [Math.min(number.value, other.value), Math.max(number.value, other.value)];
    const own = unitBehind(tokens, number.end, number.written === "digits");
    if (own !== null && joint[0] !== "to") break;
    if (unit !== null) return exact(low * unit.factor, high * unit.factor, unit.unit, unit.end);
    return { ...counted(tokens, { ...other, value: high }), low };
  }
  return counted(tokens, number);
}

const isPronounOne = (tokens: readonly Token[], at: number) =>
  tokens[at]!.text === "one" && tokens[at]!.after === "," && /^(a|the|this|that|each|every|another|other|same|just|single|little|small|wee|whole|new)$/.test(tokens[at - 1]?.text ?? "");

/** "One five milligram tablet", "two 2.5 mg tablets": the first number counts what the second is the strength of. */
const STRENGTHS = new Set<Reading["unit"]>(["milligram", "microgram", "gram"]);
const STRONG = /^(tablets?|pills?|capsules?|patch|patches|blue|brown|pink|white)$/;

const READ_OUT = new Set<Reading["unit"]>(["unit", "milligram", "microgram"]);

/**
 * Doses are read out digit by digit so that sixteen is not heard as sixty: "one six units". Where the digits may be
 * a range as well ("two three units") the range is kept, but cannot contradict.
 */
function readOutDigits(tens: number, ones: number, unit: UnitReading): Reading | null {
  if (!READ_OUT.has(unit.unit) || tens === 0 || tens === ones) return null;
  const value = (10 * tens + ones) * unit.factor;
  if (tens === 1 || ones < tens || ones > tens * CLOSE) return exact(value, value, unit.unit, unit.end);
  return { ...exact(tens * unit.factor, ones * unit.factor, unit.unit, unit.end), approximate: true, firm: false };
}

/** A number with its unit, its noun, or neither. */
function counted(tokens: readonly Token[], number: NumberReading): Reading {
  // "point five of a ml"
  const share = number.value < 1 && runsOn(tokens, number.end) && wordsAt(tokens, number.end, ["of", "a"]) ? 2 : 0;
  const unit = unitBehind(tokens, number.end + share, number.written === "digits") ?? outOfThem(tokens, number);
  // "3 x a day"
  if (tokens[number.end]?.text === "x" && readPeriod(tokens, number.end + 1) !== null) return exact(number.value, number.value, "time", number.end + 1);
  if (unit === null) return exact(number.value, number.value, isPluralNoun(tokens, number.end) ? "number" : null, number.end);
  if (unit.unit === "time" && number.value !== 1 && tokens[unit.end - 1]?.text === "time") return exact(number.value, number.value, null, number.end);
  const value = number.value * unit.factor;
  const reading = exact(value, value, unit.unit, unit.end);
  // "one day you will ..." names no length; "after one day" does.
  const someDay = number.value === 1 && unit.unit === "day" && tokens[number.end - 1]?.text === "one" && !MEASURED.test(tokens[number.end - 2]?.text ?? "");
  return someDay ? { ...reading, firm: false } : reading;
}

/** Before "one day" that is so long. */
const MEASURED = /^(after|for|within|in|only|just|than|takes|about|last|lasts)$/;

/** Forms that a box or a bottle holds many of. */
const OUT_OF_MANY = new Set<Reading["unit"]>(["tablet", "capsule", "puff", "spray", "drop", "patch", "unit"]);

/** "Ten of the tablets", "three of your little capsules": so many out of those there are. "One of the tablets" names one, and counts none. */
function outOfThem(tokens: readonly Token[], { value, end }: NumberReading): UnitReading | null {
  if (value < 2 || !runsOn(tokens, end) || !wordsAt(tokens, end, ["of"]) || !/^(the|your|these|those|them)$/.test(tokens[end + 1]?.text ?? "")) return null;
  const unit = unitBehind(tokens, end + 2, false);
  return unit !== null && OUT_OF_MANY.has(unit.unit) ? unit : null;
}

/** Words in -s that are no plural nouns. */
const NOT_PLURAL = new Set([
  "this", "is", "was", "as", "its", "his", "hers", "yours", "ours", "theirs", "us", "has", "does", "yes", "plus", "always", "perhaps", "unless",
  "across", "towards", "afterwards", "upwards", "downwards", "besides", "sometimes", "thus", "minus", "versus", "press", "process", "less", "gets",
  "goes", "makes", "means", "happens", "comes", "looks", "seems", "works", "helps", "needs", "says", "starts", "stops", "gives", "takes", "lets",
]);
const PLURAL = new Set(["children", "people", "women", "men", "feet", "teeth"]);
function isPluralNoun(tokens: readonly Token[], at: number): boolean {
  if (!runsOn(tokens, at)) return false;
  const text = tokens[at]!.text;
  return PLURAL.has(text) || (/^[a-z]{2,}s$/.test(text) && !NOT_PLURAL.has(text));
}

/** Words that show "a second" to be a length of time: "the second puff" and "a second puff" are ordinals. */
const AFTER_A_SECOND = new Set([
  "or", "and", "then", "to", "before", "after", "while", "between", "for", "if", "so", "until", "just", "now", "okay", "in", "at", "when", "with", "you",
  "i", "we", "it", "because", "but", "please", "each", "per", "is", "apart", "longer", "later", "more", "like", "um", "uh",
]);
const LENGTHS = new Set<Reading["unit"]>(["minute", "hour", "week", "month", "year"]);
const WITHOUT_ARTICLE = new Set<Reading["unit"]>(["time", "degree", "percent", "number", "unit"]);

/** "a minute", "an hour", "a full week", "a single puff"; an article before a thing says too little to deny a number. */
function readArticle(tokens: readonly Token[], at: number): Reading | null {
  if (!/^(a|an|another)$/.test(tokens[at]?.text ?? "") || !runsOn(tokens, at + 1)) return null;
  const next = tokens[at + 1]!.text;
  const single = next === "single" || next === "full" || next === "whole" || next === "good";
  const unit = unitBehind(tokens, at + 1, false);
  if (unit === null || WITHOUT_ARTICLE.has(unit.unit)) return null;
  const reading = exact(unit.factor, unit.factor, unit.unit, unit.end);
  if (next === "second") {
    const after = tokens[unit.end];
    if (runsOn(tokens, unit.end) && !AFTER_A_SECOND.has(after!.text) && !isHesitation(after)) return null;
    return reading;
  }
  if (unit.unit === "second" || LENGTHS.has(unit.unit)) {
    // "I will show you in a minute" sets no time.
    return { ...reading, firm: tokens[at - 1]?.text !== "in" || unit.unit !== "minute" };
  }
  return { ...reading, firm: single };
}
