import { digitWord, readNumber, runsOn, twoDigitWord, wordsAt } from "./number-words.ts";
import type { Token } from "./token.ts";
import { unitBehind } from "./unit-words.ts";

/*
 * Number words that name something instead of counting it: dates, clock times, emergency and telephone
 * numbers, "type two", "step three", a pressure of "120 over 80". They are no quantities and are left out.
 */

const MONTHS = new Set([
  "january", "february", "march", "april", "june", "july", "august", "september", "october", "november", "december",
]);
/** Emergency and health lines that counselling names: GB, IE, EU, US, AU, NZ and the NHS non-emergency line. */
const CALLED = new Set(["999", "112", "911", "000", "111", "988", "811", "101"]);
/** Nouns whose number is a name: "type two diabetes", "step three", "page 4". */
const NUMBERED = new Set(["type", "step", "number", "page", "room", "stage", "phase", "grade", "level", "station", "chapter", "question", "part", "option", "schedule", "class", "bay", "flat"]);
const DAY_PARTS = new Set(["morning", "afternoon", "evening"]);
const CLOCK_WORDS = new Set(["at", "by", "until", "till", "around", "about"]);
/** After "date of birth" a reply is a date, however it is read out: "four three eighty two". */
const BIRTH_REACH = 12;
/** A year of a date or an expiry. */
const isYear = (value: number) => Number.isInteger(value) && value >= 1900 && value <= 2099;
const isNumberToken = (text: string | undefined) => text !== undefined && /^\d+(\.\d+)?$/.test(text);

/** For each token, whether it belongs to such a name. */
export function setAside(tokens: readonly Token[]): boolean[] {
  const aside = new Array<boolean>(tokens.length).fill(false);
  const take = (from: number, end: number) => aside.fill(true, from, Math.min(end, tokens.length));
  for (let at = 0; at < tokens.length; at += 1) {
    if (aside[at]) continue;
    const end = figures(tokens, at) ?? readOut(tokens, at) ?? date(tokens, at) ?? clock(tokens, at) ?? named(tokens, at);
    if (end !== null) take(at, end);
    if (tokens[at]?.text === "birth" || tokens[at]?.text === "born" || tokens[at]?.text === "dob") {
      for (let next = at + 1; next < Math.min(tokens.length, at + BIRTH_REACH); next += 1) {
        const number = readNumber(tokens, next);
        if (number === null) continue;
        if (unitBehind(tokens, number.end, false) !== null) break;
        take(next, number.end);
        next = number.end - 1;
      }
    }
  }
  return aside;
}

/** Digits that no one counts with: "999", "5:30", "03/04/1982", "120 over 80", "07700 900123". */
function figures(tokens: readonly Token[], at: number): number | null {
  const { text, word } = tokens[at]!;
  if (!isNumberToken(text)) return null;
  let same = at + 1;
  while (tokens[same]?.word === word && isNumberToken(tokens[same]?.text)) same += 1;
  if (same > at + 1) return same;
  if (tokens[at - 1]?.word === word && tokens[at - 1]?.text !== "to" && /^[a-wyz]$/.test(tokens[at - 1]?.text ?? "")) return at + 1;
  if (unitBehind(tokens, at + 1, true) !== null) return null;
  if (/^0\d/.test(text) || (CALLS.test(tokens[at - 1]?.text ?? "") && text.length >= LINE_NUMBER)) return behindFigures(tokens, at);
  if (CALLED.has(text) || /^\d{6,}$/.test(text)) return at + 1;
  if (isYear(Number(text)) && text.length === 4 && !joinedByTo(tokens, at)) return at + 1;
  return null;
}

const CALLS = /^(call|ring|dial|phone|telephone)$/;
/** Shorter figures behind "ring" may be how often. */
const LINE_NUMBER = 3;

/** A telephone number is written in groups: "116 117", "0800 55 44 33". */
function behindFigures(tokens: readonly Token[], at: number): number {
  let end = at + 1;
  while (isNumberToken(tokens[end]?.text) && tokens[end - 1]!.after === "" && unitBehind(tokens, end + 1, true) === null) end += 1;
  return end;
}

const joinedByTo = (tokens: readonly Token[], at: number) => tokens[at + 1]?.text === "to" || tokens[at - 1]?.text === "to";

const READ_OUT_LEAST = 3;
const TUPLES: Readonly<Record<string, number>> = { double: 2, triple: 3, treble: 3 };
/** Three or more digits read out one by one, unless they count up or down: "nine nine nine", "one one two". */
function readOut(tokens: readonly Token[], at: number): number | null {
  if (digitWord(tokens[at - 1]?.text) !== undefined) return null;
  const run: number[] = [];
  let end = at;
  for (;;) {
    const copies = TUPLES[tokens[end]?.text ?? ""] ?? 1;
    const digit = digitWord(tokens[end + (copies > 1 ? 1 : 0)]?.text);
    if (digit === undefined || (end > at && !/^[-,]?$/.test(tokens[end - 1]!.after))) break;
    for (let copy = 0; copy < copies; copy += 1) run.push(digit);
    end += copies > 1 ? 2 : 1;
  }
  if (run.length < READ_OUT_LEAST || isCounting(run)) return null;
  // "take one one one puff" is a stammer and left to the grammar.
  return unitBehind(tokens, end, false) === null ? end : null;
}

/** Up or down by ones: "one two three", "ten nine eight". */
export function isCounting(run: readonly number[]): boolean {
  const step = run.length > 1 ? run[1]! - run[0]! : 0;
  return Math.abs(step) === 1 && run.every((value, place) => place === 0 || value - run[place - 1]! === step);
}

/** "march nineteen eighty two", "4 march", "the twenty second of june", "nineteen eighty two", "twenty twenty six". */
function date(tokens: readonly Token[], at: number): number | null {
  const text = tokens[at]!.text;
  if (MONTHS.has(text) || (text === "may" && tokens[at - 1]?.text === "of")) {
    let end = at + 1;
    while (end < tokens.length && end < at + 7) {
      const number = readNumber(tokens, end);
      const year = spokenYear(tokens, end);
      if (year !== null) end = year;
      else if (number !== null && unitBehind(tokens, number.end, number.written === "digits") === null) end = number.end;
      else if (["the", "of", "st", "nd", "rd", "th"].includes(tokens[end]!.text) && readNumber(tokens, end + 1) !== null) end += 1;
      else break;
    }
    return end > at + 1 ? end : null;
  }
  const year = spokenYear(tokens, at);
  if (year !== null && unitBehind(tokens, year, false) === null) return year;
  const number = readNumber(tokens, at);
  if (number === null) return null;
  let next = number.end;
  if (["st", "nd", "rd", "th", "second"].includes(tokens[next]?.text ?? "")) next += 1;
  const ordinal = next > number.end && tokens[next - 1]?.text !== "second";
  if (tokens[next]?.text === "of" && (next > number.end || number.written === "digits")) next += 1;
  return MONTHS.has(tokens[next]?.text ?? "") || ordinal ? next : null;
}

/** The position after a year in words: "nineteen eighty two", "twenty twenty six", "nineteen oh five". */
function spokenYear(tokens: readonly Token[], at: number): number | null {
  const century = twoDigitWord(tokens[at]?.text);
  if (century === undefined || century < 18 || century > 20 || !runsOn(tokens, at + 1)) return null;
  const two = twoDigitWord(tokens[at + 1]?.text);
  if (two !== undefined) {
    const ones = two >= 20 && runsOn(tokens, at + 2) ? digitWord(tokens[at + 2]?.text) : undefined;
    return ones ? at + 3 : at + 2;
  }
  return tokens[at + 1]?.text === "oh" && digitWord(tokens[at + 2]?.text) !== undefined ? at + 3 : null;
}

/** "half past eight", "eight o'clock", "8 am", "quarter to nine", "at eight", "ten to eight", "eight thirty". */
function clock(tokens: readonly Token[], at: number): number | null {
  for (const [pattern, reach] of [[["half", "past"], 2], [["quarter", "past"], 2], [["quarter", "to"], 2]] as const) {
    if (wordsAt(tokens, at, pattern)) {
      const hour = readNumber(tokens, at + reach);
      if (hour !== null) return hour.end;
    }
  }
  const number = readNumber(tokens, at);
  if (number === null || unitBehind(tokens, number.end, number.written === "digits") !== null) return null;
  const next = tokens[number.end]?.text;
  const isHour = Number.isInteger(number.value) && number.value >= 1 && number.value <= 24;
  if (next === "oclock" || next === "am" || next === "pm") return number.end + 1;
  if ((next === "a" || next === "p") && tokens[number.end + 1]?.text === "m") return number.end + 2;
  const shared = ["and", "to", "or"].includes(next ?? "") ? readNumber(tokens, number.end + 1) : null;
  if (shared !== null && /^(oclock|am|pm)$/.test(tokens[shared.end]?.text ?? "")) return shared.end + 1;
  if (next === "past") return readNumber(tokens, number.end + 1)?.end ?? null;
  if (next === "over") {
    // A blood pressure.
    const lower = readNumber(tokens, number.end + 1);
    if (lower !== null && unitBehind(tokens, lower.end, lower.written === "digits") === null) return lower.end;
  }
  const second = readNumber(tokens, number.end + (next === "to" ? 1 : 0));
  const free = second !== null && unitBehind(tokens, second.end, second.written === "digits") === null;
  if (next === "to" && free && isHour && second.value <= 12 && second.value < number.value) return second.end;
  if (!isHour) return null;
  const dayPart = wordsAt(tokens, number.end, ["in", "the"]) && DAY_PARTS.has(tokens[number.end + 2]?.text ?? "");
  if (dayPart && saidAsClock(tokens, at)) return number.end;
  if (!CLOCK_WORDS.has(tokens[at - 1]?.text ?? "")) return null;
  // "at eight thirty"; "at eight in the morning"; a bare "at eight".
  if (second !== null && next !== "to" && runsOn(tokens, number.end) && free && second.value >= 5 && second.value < 60 && number.value <= 12) return second.end;
  const night = wordsAt(tokens, number.end, ["at", "night"]);
  if (tokens[at - 1]?.text === "at" || dayPart || night) return next === "to" || next === "or" ? null : number.end;
  return null;
}

/** Who says the hour once more says it so soon. */
const CLOCK_AGAIN = 12;

/** "At six, in the morning, no, in the evening, six in the evening": without "at" it may be how many are taken in the evening. */
function saidAsClock(tokens: readonly Token[], at: number): boolean {
  for (let before = at - 1; before > 0 && at - before <= CLOCK_AGAIN; before -= 1) if (tokens[before]!.text === tokens[at]!.text && tokens[before - 1]!.text === "at") return true;
  return false;
}

/** "type two", "step three". */
function named(tokens: readonly Token[], at: number): number | null {
  if (!NUMBERED.has(tokens[at]!.text) || !runsOn(tokens, at + 1)) return null;
  const number = readNumber(tokens, at + 1);
  return number === null || unitBehind(tokens, number.end, false) !== null ? null : number.end;
}
