import { readNumber, runsOn } from "./number-words.ts";
import type { Token } from "./token.ts";

/*
 * How long something takes, told by when it begins and ends: "you gave it at ten past four, at quarter past give the
 * second", "it's the first today, come the eighth throw it out". The second of the two stands for the time between them.
 */

/** `low` to `high` `unit`s lie between what was named before and what is named at tokens `first` to `end`, exclusive. */
export interface Elapsed {
  first: number;
  end: number;
  low: number;
  high: number;
  unit: "minute" | "day" | "month";
}

/** So far apart the two are named, in tokens. */
const WITHIN = 24;

/** All that is told so, in order, by the token where it begins. Linear in the number of tokens. */
export function elapsedIn(tokens: readonly Token[]): ReadonlyMap<number, Elapsed> {
  const found = new Map<number, Elapsed>();
  let clock: ClockTime | null = null;
  let date: DayOfMonth | null = null;
  for (let at = 0; at < tokens.length; at += 1) {
    const time = clockTime(tokens, at);
    if (time !== null) {
      const minutes = clock !== null && at - clock.end <= WITHIN ? minutesBetween(clock, time) : null;
      if (minutes !== null) found.set(at, { first: at, end: time.end, low: minutes, high: minutes, unit: "minute" });
      clock = time;
      at = time.end - 1;
      continue;
    }
    const day = dayOfMonth(tokens, at);
    if (day === null) continue;
    const since: Omit<Elapsed, "first" | "end"> | null = date !== null && at - date.end <= WITHIN && isReached(tokens, day) ? daysBetween(date, day) : null;
    if (since !== null) found.set(at, { first: at, end: day.end, ...since, ...(TILL.test(tokens[leadOf(tokens, at)]?.text ?? "") && { high: since.high + 1 }) });
    if (isFirmDate(tokens, day)) date = day;
    at = day.end - 1;
  }
  return found;
}

interface ClockTime {
  /** Past the hour, negative before it. */
  minutes: number;
  hour: number | null;
  end: number;
}

/** "Ten past four", "quarter to"; whole hours tell when to take something, and not how long. */
function clockTime(tokens: readonly Token[], at: number): ClockTime | null {
  const named = tokens[at]!.text === "quarter" ? 15 : tokens[at]!.text === "half" ? 30 : null;
  const number = named === null ? readNumber(tokens, at) : { value: named, end: at + 1 };
  if (number === null || !Number.isInteger(number.value) || number.value < 1 || number.value > 59) return null;
  const way = number.end + (/^minutes?$/.test(tokens[number.end]?.text ?? "") ? 1 : 0);
  const side = tokens[way]?.text;
  if (!runsOn(tokens, way) || (side !== "past" && side !== "to") || (side === "to" && number.value % 5 !== 0)) return null;
  const hour = runsOn(tokens, way + 1) ? readNumber(tokens, way + 1) : null;
  const onTheHour = hour !== null && hour.value >= 1 && hour.value <= 12;
  // "Five to ten" may be a range; "quarter to" by itself is a time.
  if (side === "to" && named === null) return onTheHour && hour.value < number.value ? { minutes: -number.value, hour: hour.value, end: hour.end } : null;
  const minutes = side === "past" ? number.value : -number.value;
  return onTheHour ? { minutes, hour: hour.value, end: hour.end } : { minutes, hour: null, end: way + 1 };
}

const HOUR = 60;

/** From one time to another within the hour behind it; null where it is longer, or nothing. */
function minutesBetween(from: ClockTime, to: ClockTime): number | null {
  const hours = from.hour === null || to.hour === null ? 0 : to.hour - from.hour;
  const round = from.hour === null || to.hour === null ? HOUR : 12 * HOUR;
  const minutes = (((hours * HOUR + to.minutes - from.minutes) % round) + round) % round;
  return minutes > 0 && minutes < HOUR ? minutes : null;
}

const MONTHS = ["january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december"];
/** Days before each month of a common year. */
const BEFORE_MONTH = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
const ORDINALS = [
  "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth", "thirteenth", "fourteenth",
  "fifteenth", "sixteenth", "seventeenth", "eighteenth", "nineteenth", "twentieth",
];

interface DayOfMonth {
  first: number;
  day: number;
  /** Its place among `MONTHS`, -1 where none is named. */
  month: number;
  end: number;
}

/** "The eighth", "the twenty first of June", "the 3rd". */
function dayOfMonth(tokens: readonly Token[], at: number): DayOfMonth | null {
  if (tokens[at]!.text !== "the") return null;
  const ordinal = ordinalAt(tokens, at + 1);
  if (ordinal === null) return null;
  const named = runsOn(tokens, ordinal.end) && tokens[ordinal.end]!.text === "of" ? 1 : 0;
  const month = MONTHS.indexOf(tokens[ordinal.end + named]?.text ?? "");
  return { first: at, day: ordinal.value, month, end: month < 0 ? ordinal.end : ordinal.end + named + 1 };
}

function ordinalAt(tokens: readonly Token[], at: number): { value: number; end: number } | null {
  const text = tokens[at]?.text ?? "";
  if (/^\d{1,2}$/.test(text)) return /^(st|nd|rd|th)$/.test(tokens[at + 1]?.text ?? "") && Number(text) <= 31 ? { value: Number(text), end: at + 2 } : null;
  if (text === "thirtieth") return { value: 30, end: at + 1 };
  const tens = text === "twenty" ? 20 : text === "thirty" ? 30 : 0;
  const value = ORDINALS.indexOf(tokens[tens > 0 ? at + 1 : at]?.text ?? "") + 1;
  return value === 0 || (tens > 0 && value > 9) || tens + value > 31 ? null : { value: tens + value, end: tens > 0 ? at + 2 : at + 1 };
}

const TODAY = /^(today|tonight)$/;
/** Between "today" and its date, or before the date that is reached: "today's Monday the third", "come Monday the tenth". */
const WEEKDAY = /^(mon|tues|wednes|thurs|fri|satur|sun)day$/;

const leadOf = (tokens: readonly Token[], first: number) => (WEEKDAY.test(tokens[first - 1]?.text ?? "") ? first - 2 : first - 1);

/** Whether it is surely a date, and no "first" of several things. */
function isFirmDate(tokens: readonly Token[], { first, end, month }: DayOfMonth): boolean {
  if (month >= 0) return true;
  const lead = leadOf(tokens, first);
  // "Made up today, that's the second".
  const named = /^(is|being)$/.test(tokens[lead]?.text ?? "") ? lead - 1 : lead;
  const before = named < lead && /^(that|it|this|which)$/.test(tokens[named]?.text ?? "") ? named - 1 : named;
  return [tokens[end], tokens[named], tokens[before]].some((token) => TODAY.test(token?.text ?? ""));
}

const REACHED = /^(come|on|by|till|until|to|through)$/;
/** Up to and with the day that is named, or without it. */
const TILL = /^(till|until|to|through)$/;
/** Goes on behind a date; behind anything else "the second" is one of several things. */
const BEHIND_DATE = /^(it|you|he|she|they|that|this|and|so|then|is|of|at|for|throw|bin|chuck|get|bring|open|start)$/;

function isReached(tokens: readonly Token[], { first, end, month }: DayOfMonth): boolean {
  if (!REACHED.test(tokens[leadOf(tokens, first)]?.text ?? "")) return false;
  return month >= 0 || end === tokens.length || tokens[end - 1]!.after !== "" || BEHIND_DATE.test(tokens[end]!.text);
}

/** From one date to a later one of the same year; null where it is none. */
function daysBetween(from: DayOfMonth, to: DayOfMonth): Omit<Elapsed, "first" | "end"> | null {
  const months = to.month >= 0 && from.month >= 0 ? to.month - from.month : 0;
  if (months > 0 && to.day === from.day) return { low: months, high: months, unit: "month" };
  const days = to.day - from.day + (months === 0 ? 0 : BEFORE_MONTH[to.month]! - BEFORE_MONTH[from.month]!);
  return days > 0 ? { low: days, high: days, unit: "day" } : null;
}
