import type { ExpectedQuantity } from "../language/quantity.ts";
import { rangeOf } from "../language/quantity-compare.ts";
import { frequency, unitWords } from "../rubric/quantity-words.ts";

/*
 * Says a rubric's number as somebody would: "ten seconds", "twice a day", "half a millilitre". The other way round from
 * `language/quantity.ts`; a test reads every unit back with it.
 */

const SMALL = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"];
const TENS = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/** A cardinal number in words; digits where words would not be said (1,000,000 and more, or many decimals). */
export function numberInWords(value: number): string {
  if (value < 0 || value >= 1_000_000) return String(value);
  const [whole = "", decimals = ""] = String(value).split(".");
  const spoken = wholeInWords(Number(whole));
  return decimals === "" ? spoken : `${spoken} point ${[...decimals].map((digit) => SMALL[Number(digit)]).join(" ")}`;
}

function wholeInWords(value: number): string {
  if (value < 20) return SMALL[value]!;
  if (value < 100) return value % 10 === 0 ? TENS[value / 10]! : `${TENS[Math.floor(value / 10)]} ${SMALL[value % 10]}`;
  const [size, name] = value < 1000 ? [100, "hundred"] : [1000, "thousand"];
  const rest = value % size;
  const joint = rest < 100 ? " and " : " ";
  return `${wholeInWords(Math.floor(value / size))} ${name}${rest === 0 ? "" : joint + wholeInWords(rest)}`;
}

/** The number with its unit. Of a range the end that every bound allows: the low one, for `at-most` the high one. */
export function quantityInWords({ value, unit, bound }: ExpectedQuantity): string {
  const [low, high] = rangeOf({ value });
  const said = bound === "at-most" ? high : low;
  if (unit === "time") return times(said);
  if (unit === "time-per-day") {
    const { count, period } = frequency(said);
    return `${times(count)} a ${period}`;
  }
  const [one, many] = unitWords(unit).map((word) => word.toLowerCase()) as [string, string];
  if (said === 0.5 && one !== "") return `half a ${one}`;
  return `${numberInWords(said)} ${said === 1 ? one : many}`.trim();
}

function times(count: number): string {
  if (count === 1) return "once";
  return count === 2 ? "twice" : `${numberInWords(count)} times`;
}
