import { readAmount, type Reading } from "./quantity-amount.ts";
import { joinBounds } from "./quantity-bounds.ts";
import { elapsedIn, type Elapsed } from "./quantity-elapsed.ts";
import { adverbAt, DAYS, readMorningAndNight, readOnce, readPeriod } from "./quantity-frequency.ts";
import { hedgeBefore, hedgeBehind } from "./quantity-hedge.ts";
import type { Bound, QuantityMention } from "./quantity-mention.ts";
import { runsOn, wordsAt } from "./number-words.ts";
import { readTally } from "./quantity-tally.ts";
import { setAside } from "./set-aside.ts";
import type { Token } from "./token.ts";
import { LOOSE, readUnit } from "./unit-words.ts";

export { compareQuantity } from "./quantity-compare.ts";
export type { Bound, ExpectedQuantity, QuantityMention } from "./quantity-mention.ts";
export { soundAlikeNumbers } from "./number-words.ts";

/*
 * A small number-and-unit grammar. Decisions that a reader might expect otherwise:
 * - Clock times, dates, years, emergency and telephone numbers, "type two", "step three" are left out (`set-aside.ts`),
 *   but of two times or dates the later one is how long after the first (`quantity-elapsed.ts`).
 * - "second" and "third" as ordinals, and "one" as a pronoun ("this one", "one of them"), are no quantities.
 * - "a couple" is two, "a few" three to five, "several" three to seven: no standard says so; common usage.
 * - A run counted aloud is one mention of its highest number; "count to ten" and "one elephant, two elephants" are seconds.
 * - "every four hours" is an interval of 4 hours that knows it makes six a day; "once a day" and "daily" are
 *   one time a day; "once a week" is an interval of a week that knows it makes a seventh a day.
 * - A number followed by "a day" and a thing counted ("eight puffs a day") stays an amount of the thing, with a
 *   second mention, not firm, of once a day.
 */

/** All quantities said, in order, none inside another. Linear in the number of tokens. */
export function findQuantities(tokens: readonly Token[]): QuantityMention[] {
  const aside = setAside(tokens);
  const elapsed = elapsedIn(tokens);
  const mentions: QuantityMention[] = [];
  let at = 0;
  while (at < tokens.length) {
    const between = elapsed.get(at);
    const found = between !== undefined ? [elapsedMention(tokens, between)] : aside[at] ? [] : mentionsAt(tokens, at, aside);
    mentions.push(...found);
    at = found.at(-1)?.end ?? idiom(tokens, at) ?? at + 1;
  }
  return joinBounds(mentions.map(inOrder), tokens);
}

/** The day that is reached may count or not: any overlap is right. */
const elapsedMention = (tokens: readonly Token[], { first, end, low, high, unit }: Elapsed): QuantityMention => ({
  first, end, low, high, unit, approximate: false, bound: "exact", text: textOf(tokens, first, end), kind: "amount", firm: true, vague: low < high, aim: false,
});

/** "Twice or once": whichever is named first, the smaller is the low end. */
function inOrder(mention: QuantityMention): QuantityMention {
  return mention.low <= mention.high ? mention : { ...mention, low: mention.high, high: mention.low };
}

function mentionsAt(tokens: readonly Token[], at: number, aside: readonly boolean[]): QuantityMention[] {
  if (idiom(tokens, at) !== null) return [];
  const before = hedgeBefore(tokens, at);
  if (aside[before.end]) return [];
  const reading = tallyAt(tokens, before.end) ?? everyAt(tokens, before.end) ?? oftenAt(tokens, before.end) ?? amountOften(tokens, before.end);
  if (reading === null || aside[reading.end - 1] === true) return [];
  // "between" and "from" inside an amount never cross a name.
  for (let position = before.end; position < reading.end; position += 1) if (aside[position]) return [];
  const hedged = before.end > at;
  if (reading.unit === null && reading.kind === "amount" && !hedged && isPronoun(tokens, before.end, reading)) return [];

  let { end } = reading;
  let bound: Bound = before.bound;
  let approximate = before.approximate || reading.approximate;
  const behind = hedgeBehind(tokens, end);
  if (behind !== null) {
    end = behind.end;
    if (bound === "exact") bound = behind.bound;
    approximate ||= behind.approximate;
  }
  const counted = countedSeconds(tokens, at, reading);
  const mention = counted ?? reading;
  const past = runsOn(tokens, end) && ["ago", "old"].includes(tokens[end]!.text);
  const main: QuantityMention = {
    first: at,
    end,
    low: tidy(mention.low),
    high: tidy(mention.high),
    unit: mention.unit,
    approximate: approximate || mention.approximate || isLoose(tokens, at, end),
    bound: counted === null ? bound : "exact",
    text: textOf(tokens, at, end),
    kind: mention.kind,
    firm: mention.firm && !past,
    vague: mention.vague,
    aim: before.aim && counted === null,
    ...(mention.perDay && { perDay: [tidy(mention.perDay[0]), tidy(mention.perDay[1])] as const }),
  };
  return [main, ...rateBehind(tokens, main)];
}

const isLoose = (tokens: readonly Token[], first: number, end: number) =>
  tokens.slice(first, end).some((token, place) => LOOSE.has(token.text) || (token.text === "or" && tokens[first + place + 1]?.text === "so"));
const textOf = (tokens: readonly Token[], first: number, end: number) => tokens.slice(first, end).map((token) => token.text).join(" ");
/** 0.1 * 3 must not come out as 0.30000000000000004. */
const tidy = (value: number) => Number(value.toPrecision(12));

/** "eight puffs a day": the amount keeps its unit; that it is for a day is told beside it. */
function rateBehind(tokens: readonly Token[], main: QuantityMention): QuantityMention[] {
  if (main.unit === null || main.kind !== "amount" || main.unit === "time") return [];
  // Behind the thing counted: "three evenings a week".
  const from = main.unit === "number" ? main.end + 1 : main.end;
  if (adverbAt(tokens, from) !== undefined) return [];
  const period = readPeriod(tokens, from);
  if (period === null || wordsAt(tokens, from, ["every"])) return [];
  const perDay = tidy(1 / period.days);
  return [{
    first: from, end: period.end, low: perDay, high: perDay, unit: "time-per-day", approximate: false, bound: "exact",
    text: textOf(tokens, from, period.end), kind: "frequency", firm: false, vague: false, aim: false, perDay: [perDay, perDay],
  }];
}

const interval = (unit: Reading["unit"], low: number, high: number, end: number, vague = false): Reading => {
  const days = DAYS[unit ?? ""] ?? 1;
  return { low, high, unit, end, approximate: vague, vague, firm: true, kind: "interval", perDay: [1 / (high * days), 1 / (low * days)] };
};
const frequency = (low: number, high: number, days: number, end: number, vague = false): Reading => {
  // "once a week" says how far apart as well, and rubrics write it so.
  if (low === 1 && high === 1 && days === 7) return interval("week", 1, 1, end);
  if (low === 1 && high === 1 && days === 14) return interval("week", 2, 2, end);
  if (low === 1 && high === 1 && days === 30) return interval("month", 1, 1, end);
  if (low === 1 && high === 1 && days === 365) return interval("year", 1, 1, end);
  if (low === 1 && high === 1 && days === 1 / 24) return interval("hour", 1, 1, end);
  return {
    low: low / days, high: high / days, unit: "time-per-day", end, approximate: vague, vague, firm: true, kind: "frequency",
    perDay: [low / days, high / days],
  };
};

/** "every four to six hours", "every other day", "every morning", "four hourly", "daily", "alternate days". */
function everyAt(tokens: readonly Token[], at: number): Reading | null {
  const adverb = adverbAt(tokens, at);
  if (adverb !== undefined) {
    if (adverb.unit === "day") return frequency(1, 1, 1, at + 1);
    return interval(adverb.unit, adverb.count, adverb.count, at + 1);
  }
  const both = readMorningAndNight(tokens, at);
  if (both !== null) return { ...frequency(2, 2, 1, both), firm: false };
  if (tokens[at]?.text === "alternate" && /^(days?|nights?|mornings?)$/.test(tokens[at + 1]?.text ?? "")) return interval("day", 2, 2, at + 2);
  const lead = tokens[at]?.text;
  if ((lead !== "every" && lead !== "each") || !runsOn(tokens, at + 1)) return null;
  const skip = wordsAt(tokens, at, [lead, "single"]) ? 2 : 1;
  const next = tokens[at + skip]?.text ?? "";
  if (/^(morning|evening|night|bedtime|day)$/.test(next)) {
    const also = readMorningAndNight(tokens, at + skip);
    if (also !== null) return frequency(2, 2, 1, also);
    return next === "day" && lead === "every" ? { ...interval("day", 1, 1, at + skip + 1) } : frequency(1, 1, 1, at + skip + 1);
  }
  if (/^(other|second|alternate|third)$/.test(next)) {
    const unit = readUnit(tokens, at + skip + 1, false);
    const gap = next === "third" ? 3 : 2;
    if (unit !== null && Object.hasOwn(DAYS, unit.unit) && unit.factor > 0) return interval(unit.unit, gap * unit.factor, gap * unit.factor, unit.end);
    return null;
  }
  const bare = readUnit(tokens, at + skip, false);
  if (bare !== null && Object.hasOwn(DAYS, bare.unit)) return interval(bare.unit, bare.factor, bare.factor, bare.end);
  if (lead === "each") return null;
  const hedge = hedgeBefore(tokens, at + skip);
  const amount = readAmount(tokens, hedge.end);
  if (amount === null || amount.unit === null || !Object.hasOwn(DAYS, amount.unit)) return null;
  return { ...interval(amount.unit, amount.low, amount.high, amount.end, amount.vague), approximate: hedge.approximate || amount.approximate };
}

function tallyAt(tokens: readonly Token[], at: number): Reading | null {
  const tally = readTally(tokens, at);
  return tally === null ? null : { low: tally.seconds, high: tally.seconds, unit: "second", end: tally.end, approximate: true, vague: false, firm: true, kind: "amount" };
}

/** "once", "twice", "once or twice", with or without "a day". */
function oftenAt(tokens: readonly Token[], at: number): Reading | null {
  const once = readOnce(tokens, at) ?? (wordsAt(tokens, at, ["once", "or"]) ? { value: 1, end: at + 1 } : null);
  if (once === null) return null;
  let { end } = once;
  let high = once.value;
  if (tokens[end]?.text === "or" && runsOn(tokens, end)) {
    const more = readOnce(tokens, end + 1);
    const times = more === null ? readAmount(tokens, end + 1) : null;
    if (more !== null) [high, end] = [more.value, more.end];
    else if (times?.unit === "time" && times.low > high) [high, end] = [times.high, times.end];
  }
  return perPeriod(tokens, { low: once.value, high, unit: "time", end, approximate: high > once.value, vague: false, firm: true, kind: "amount" });
}

function amountOften(tokens: readonly Token[], at: number): Reading | null {
  const amount = readAmount(tokens, at);
  if (amount === null) return null;
  const apart = amount.unit === null && runsOn(tokens, amount.end) ? apartBy(tokens, amount) : null;
  if (apart !== null) return interval(apart.unit, amount.low * apart.count, amount.high * apart.count, amount.end + 1);
  const done = timesDone(tokens, amount);
  if (done !== null) return done;
  if (amount.unit !== null && amount.unit !== "time") return amount;
  if (amount.kind === "count") return amount;
  return perPeriod(tokens, amount);
}

/** What is done and counted, where how often is meant: "two checks a day", "three goes in the day". */
const DOINGS = /^(checks|tests|goes|readings|pricks|rinses|washes|applications|sessions)$/;

/** How often a day something is done, out of how many of it are named, or null. */
function timesDone(tokens: readonly Token[], { low, high, unit, end, vague, approximate, kind }: Reading): Reading | null {
  if (kind !== "amount" || (unit !== null && unit !== "number") || !runsOn(tokens, end) || !DOINGS.test(tokens[end]!.text)) return null;
  const period = readPeriod(tokens, end + 1);
  return period === null ? null : { ...frequency(low, high, period.days, period.end, vague), approximate };
}

/** What is done at such times: "a two weekly blood test" comes every two weeks, "take four weekly" is four a week. */
const COMES_ROUND = /^(blood|bloods|test|tests|check|checks|review|reviews|visit|visits|appointment|appointments|injection|injections|monitoring)$/;

/** "Six hourly", "three-monthly": so many of these apart. */
function apartBy(tokens: readonly Token[], { end, low }: Reading): { unit: "hour" | "day" | "week" | "month"; count: number } | null {
  const adverb = adverbAt(tokens, end);
  if (adverb === undefined || adverb.unit === "day" || low < 2) return null;
  return adverb.unit !== "week" || tokens[end - 1]!.after === "-" || COMES_ROUND.test(tokens[end + 1]?.text ?? "") ? adverb : null;
}

function perPeriod(tokens: readonly Token[], amount: Reading): Reading {
  const period = readPeriod(tokens, amount.end) ?? timesEvery(tokens, amount);
  if (period === null) return amount;
  const often = frequency(amount.low, amount.high, period.days, period.end, amount.vague);
  return { ...often, approximate: amount.approximate };
}

/** "once every four hours": the interval alone says it. */
function timesEvery(tokens: readonly Token[], amount: Reading): { days: number; end: number } | null {
  if (amount.unit !== "time" || !wordsAt(tokens, amount.end, ["every"])) return null;
  const every = everyAt(tokens, amount.end);
  if (every === null || every.unit === null || every.low !== every.high || every.kind !== "interval") return null;
  return amount.low === 1 && amount.high === 1 ? null : { days: every.low * DAYS[every.unit]!, end: every.end };
}

/** "count to ten", "to the count of five", "count one to six", "a ten count": counting aloud goes at about one a second (common practice, no source). */
function countedSeconds(tokens: readonly Token[], at: number, reading: Reading): Reading | null {
  const counts = (position: number) => /^count(s|ing|ed)?$/.test(tokens[position]?.text ?? "");
  const behind = runsOn(tokens, reading.end) && counts(reading.end);
  if (!(reading.unit === null || (reading.unit === "number" && behind)) || reading.high < 2 || reading.high > COUNT_LIMIT) return null;
  // The hedge "up to" of "count up to ten" is inside the mention.
  let back = at - 1;
  if (/^(to|of|until|till|for|from)$/.test(tokens[back]?.text ?? "")) back -= 1;
  while (/^(slowly|aloud|out|loud)$/.test(tokens[back]?.text ?? "")) back -= 1;
  if (!behind && !counts(back)) return null;
  const end = reading.high;
  return { ...reading, low: reading.low === 1 ? end : reading.low, unit: "second", approximate: true, firm: true, kind: "amount" };
}
/** A count to hold the breath; a dose counter's "counts down to 200" is not meant. */
const COUNT_LIMIT = 100;

/** "this one", "one of them", "the blue one": a bare one counts nothing unless a hedge says so. */
function isPronoun(tokens: readonly Token[], at: number, reading: Reading): boolean {
  return reading.high === 1 && reading.low === 1 && /^(one|1)$/.test(tokens[at]?.text ?? "");
}

/** "just a minute", "hang on a second": the position after it. */
function idiom(tokens: readonly Token[], at: number): number | null {
  const moment = (position: number) =>
    /^(a|one)$/.test(tokens[position]?.text ?? "") && /^(minute|min|second|sec)$/.test(tokens[position + 1]?.text ?? "");
  if (tokens[at]?.text === "just" && moment(at + 1)) {
    // "for just a minute" and "just a minute or two" are meant.
    const meant = /^(for|after|about|takes|only)$/.test(tokens[at - 1]?.text ?? "") || tokens[at + 3]?.text === "or";
    return meant ? null : at + 3;
  }
  for (const lead of [["hang", "on"], ["hold", "on"], ["give", "me"], ["bear", "with", "me"], ["got"], ["have", "you", "got"]]) {
    const next = at + lead.length + (tokens[at + lead.length]?.text === "for" ? 1 : 0);
    if (wordsAt(tokens, at, lead) && moment(next)) return next + 2;
  }
  return null;
}
