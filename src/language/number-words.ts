import type { Token } from "./token.ts";

/*
 * Cardinal numbers as people say and write them, up to 999,999. Only exact words count: "for", "to", "ate"
 * and "won" are never read as numbers, because a wrong dose read out of a mishearing is worse than none.
 */

const UNDER_TWENTY: Record<string, number> = {
  zero: 0, nought: 0, nil: 0, one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10,
  eleven: 11, twelve: 12, thirteen: 13, fourteen: 14, fifteen: 15, sixteen: 16, seventeen: 17, eighteen: 18, nineteen: 19,
};
const TENS: Record<string, number> = {
  twenty: 20, thirty: 30, forty: 40, fourty: 40, fifty: 50, sixty: 60, seventy: 70, eighty: 80, ninety: 90,
};
const LARGE: Record<string, number> = { hundred: 100, thousand: 1000 };

export interface NumberReading {
  value: number;
  /** Token position after the number. */
  end: number;
  /** `digits` ("10"), `words` ("ten"). */
  written: "digits" | "words";
}

const own = (table: Record<string, number>, key: string | undefined): number | undefined =>
  key !== undefined && Object.hasOwn(table, key) ? table[key] : undefined;

/** Nothing but a hyphen stands between token `at` and the one before it. */
export function runsOn(tokens: readonly Token[], at: number): boolean {
  const before = tokens[at - 1];
  return at < tokens.length && before !== undefined && (before.after === "" || before.after === "-");
}

/** The words of `pattern` stand at `at` with no punctuation inside. */
export function wordsAt(tokens: readonly Token[], at: number, pattern: readonly string[]): boolean {
  for (let place = 0; place < pattern.length; place += 1) {
    if (tokens[at + place]?.text !== pattern[place] || (place > 0 && !runsOn(tokens, at + place))) return false;
  }
  return true;
}

/** 0 to 9 as one word, "oh" included where digits are read out one by one. */
export function digitWord(text: string | undefined): number | undefined {
  if (text === "oh" || text === "o") return 0;
  const value = own(UNDER_TWENTY, text) ?? (/^\d$/.test(text ?? "") ? Number(text) : undefined);
  return value !== undefined && value < 10 ? value : undefined;
}

/** A number from ten to ninety in steps of one word, "twenty" or "fifteen"; undefined for anything else. */
export function twoDigitWord(text: string | undefined): number | undefined {
  const value = own(TENS, text) ?? own(UNDER_TWENTY, text);
  return value !== undefined && value >= 10 ? value : undefined;
}

/** One to ninety-nine in words. */
function underHundred(tokens: readonly Token[], at: number): NumberReading | null {
  const tens = own(TENS, tokens[at]?.text);
  if (tens !== undefined) {
    const ones = runsOn(tokens, at + 1) ? own(UNDER_TWENTY, tokens[at + 1]?.text) : undefined;
    return ones !== undefined && ones > 0 && ones < 10
      ? { value: tens + ones, end: at + 2, written: "words" }
      : { value: tens, end: at + 1, written: "words" };
  }
  const small = own(UNDER_TWENTY, tokens[at]?.text);
  return small === undefined ? null : { value: small, end: at + 1, written: "words" };
}

function digits(token: Token | undefined): number | undefined {
  return token !== undefined && /^\d+(\.\d+)?$/.test(token.text) ? Number(token.text) : undefined;
}

/** "hundred", "thousand" and what follows them; `value` stands before. */
function scaled(tokens: readonly Token[], value: number, from: number, written: NumberReading["written"]): NumberReading {
  let total = value;
  let end = from;
  for (;;) {
    const scale = runsOn(tokens, end) ? own(LARGE, tokens[end]?.text) : undefined;
    if (scale === undefined || (scale === 100 && total >= 100)) break;
    total *= scale;
    end += 1;
    // "a hundred and twenty", "one hundred twenty", "two thousand five hundred"
    const skip = runsOn(tokens, end) && tokens[end]?.text === "and" && runsOn(tokens, end + 1) ? 1 : 0;
    const rest = runsOn(tokens, end) ? underHundred(tokens, end + skip) : null;
    if (rest === null || rest.value === 0) continue;
    const nested = scale === 1000 ? scaled(tokens, rest.value, rest.end, written) : rest;
    if (nested.value >= scale) break;
    // "a hundred and twenty", but not "a hundred and two puffs of ...": both read alike, so the number wins.
    total += nested.value;
    end = nested.end;
  }
  return { value: total, end, written };
}

/** "point five", "point two five", "point twenty five": the digits behind the point, and the position after them. */
function decimals(tokens: readonly Token[], at: number): { text: string; end: number } | null {
  let text = "";
  let end = at;
  while ((end === at || runsOn(tokens, end)) && digitWord(tokens[end]?.text) !== undefined) text += digitWord(tokens[end++]?.text);
  if (text === "") {
    const two = underHundred(tokens, at);
    if (two === null || two.value < 10) return null;
    return { text: String(two.value), end: two.end };
  }
  return { text, end };
}

/** "and a half", "and a quarter", "and three quarters" at `at`: the fraction and the position after it. */
export function fractionAfter(tokens: readonly Token[], at: number): { value: number; end: number } | null {
  if (!runsOn(tokens, at)) return null;
  for (const [pattern, value] of [
    [["and", "a", "half"], 0.5], [["and", "half"], 0.5], [["and", "a", "quarter"], 0.25],
    [["and", "three", "quarters"], 0.75], [["and", "a", "bit"], 0],
  ] as const) {
    if (value > 0 && wordsAt(tokens, at, pattern)) return { value, end: at + pattern.length };
  }
  return null;
}

/** The number that starts at token `at`, the longest reading; null when none does. */
export function readNumber(tokens: readonly Token[], at: number): NumberReading | null {
  const first = tokens[at];
  if (first === undefined) return null;
  const point = (from: number) => (runsOn(tokens, from) && tokens[from]?.text === "point" ? decimals(tokens, from + 1) : null);

  if (first.text === "point" || ((first.text === "oh" || first.text === "o") && tokens[at + 1]?.text === "point")) {
    const after = decimals(tokens, first.text === "point" ? at + 1 : at + 2);
    return after === null ? null : { value: Number(`0.${after.text}`), end: after.end, written: "words" };
  }
  let reading: NumberReading | null;
  const article = first.text === "a" || first.text === "an";
  const figure = digits(first);
  if (article) {
    if (!runsOn(tokens, at + 1) || own(LARGE, tokens[at + 1]?.text) === undefined) return null;
    reading = scaled(tokens, 1, at + 1, "words");
  } else if (figure !== undefined) {
    reading = scaled(tokens, figure, at + 1, "digits");
  } else {
    const small = own(LARGE, first.text) === undefined ? underHundred(tokens, at) : { value: 1, end: at, written: "words" as const };
    // "hundred percent" without its article
    reading = small === null ? null : small.end === at ? bareLarge(tokens, at) : scaled(tokens, small.value, small.end, "words");
  }
  if (reading === null) return null;
  const after = Number.isInteger(reading.value) ? point(reading.end) : null;
  if (after !== null) return { ...reading, value: Number(`${reading.value}.${after.text}`), end: after.end };
  const fraction = fractionAfter(tokens, reading.end);
  return fraction === null ? reading : { ...reading, value: reading.value + fraction.value, end: fraction.end };
}

function bareLarge(tokens: readonly Token[], at: number): NumberReading {
  const scale = own(LARGE, tokens[at]?.text) ?? 1;
  return { value: scale, end: at + 1, written: "words" };
}

/**
 * Whether two numbers are commonly heard for one another: a teen and its ten, "fifteen" and "fifty".
 * A mark that hangs on such a pair should be listened to.
 */
export function soundAlikeNumbers(one: number, other: number): boolean {
  const [teen, ten] = one < other ? [one, other] : [other, one];
  return teen >= 13 && teen <= 19 && ten === (teen - 10) * 10;
}
