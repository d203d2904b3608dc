import type { ExpectedQuantity, QuantityMention } from "./quantity-mention.ts";
import type { Unit } from "./units.ts";

/** Exact sizes inside one dimension. SI brochure (BIPM, 9th edition 2019): min, h, d in seconds; prefixes. */
const SIZES: Readonly<Partial<Record<Unit, readonly [dimension: string, size: number]>>> = {
  second: ["duration", 1], minute: ["duration", 60], hour: ["duration", 3600], day: ["duration", 86_400], week: ["duration", 604_800],
  month: ["calendar", 1], year: ["calendar", 12],
  // One press of the device, whatever comes out is called.
  puff: ["actuation", 1], spray: ["actuation", 1],
  microgram: ["mass", 1], milligram: ["mass", 1000], gram: ["mass", 1_000_000],
  millimetre: ["length", 1], centimetre: ["length", 10],
};

const DAY = 86_400;
/**
 * A month against days or weeks: from the four-week month of repeat prescriptions (28 days) to the longest
 * calendar month (31). So 28 days, four weeks, 30 days and a month agree; so do 90 days and three months.
 */
const MONTH_DAYS = [28, 31] as const;
/** From 52 weeks to a leap year. */
const YEAR_DAYS = [364, 366] as const;

/** Units that may stand for one another in speech: "press it twice" for two sprays, "one dose" for two puffs. They confirm and never contradict. */
const RELATED: readonly (readonly [Unit, readonly Unit[]])[] = [
  ["time", ["puff", "spray", "drop", "dose", "breath", "time-per-day"]],
  ["dose", ["puff", "spray", "drop", "unit", "tablet", "capsule", "patch"]],
  // In which scale is seldom said.
  ["degree", ["degree-celsius", "degree-fahrenheit"]],
];

/** An interval of possible sizes of one number: a month has several. */
interface Size {
  dimension: string;
  low: number;
  high: number;
}

function sizeOf(value: number, unit: Unit, elastic: boolean): Size {
  const known = SIZES[unit];
  if (known === undefined) return { dimension: unit, low: value, high: value };
  const [dimension, size] = known;
  if (dimension !== "calendar" || !elastic) return { dimension, low: value * size, high: value * size };
  const [low, high] = unit === "month" ? MONTH_DAYS : YEAR_DAYS;
  return { dimension: "duration", low: value * low * DAY, high: value * high * DAY };
}

const isCalendar = (unit: Unit) => SIZES[unit]?.[0] === "calendar";
/** Rounding in decimal fractions must not decide a mark. */
const ROUNDING = 1e-9;

interface Stated {
  low: number;
  high: number;
  unit: Unit;
}

/**
 * Whether a quantity that was said is the one expected.
 * - Every number the listener may take from the words must be right: "two to three puffs" is wrong where two are
 *   expected, right where two to four are. A vague amount ("a few") is right on any overlap.
 * - `at-least` expected: the lowest number said must reach it, and "no more than" is wrong; `at-most` likewise. An aim
 *   ("up to ten seconds", "within a month") states its number.
 * - A mention that is not firm, or in a unit that may stand for the expected one, is right when the number agrees and
 *   `other-dimension` otherwise, never wrong.
 * @returns `other-dimension` when the words neither confirm nor contradict.
 */
export function compareQuantity(mention: QuantityMention, expected: ExpectedQuantity): "right" | "wrong" | "other-dimension" {
  for (const stated of readings(mention, expected)) {
    const fit = fits(mention, stated, expected);
    if (fit === null) continue;
    // "Two weeks" is no "at least a minute", though it is longer.
    if (fit) return expected.bound === "exact" || !isAnotherMatter(mention, expected) ? "right" : "other-dimension";
    if (mention.unit === null && UNSPOKEN.has(expected.unit)) return "wrong";
    return mention.firm && isSame(mention, stated) && !temperatureLeftOpen(mention, expected) ? "wrong" : "other-dimension";
  }
  return relatedFits(mention, expected) ? "right" : "other-dimension";
}

/** What the mention says in the expected dimension. */
function readings(mention: QuantityMention, expected: ExpectedQuantity): Stated[] {
  const { low, high } = mention;
  if (expected.unit === "time-per-day" && mention.perDay) return [{ low: mention.perDay[0], high: mention.perDay[1], unit: "time-per-day" }];
  if (mention.unit === null) return [{ low, high, unit: expected.unit }];
  if (mention.unit === "time-per-day" && expected.unit !== "time-per-day" && low === high && low === 1) {
    // "once a day" is an interval too.
    return [{ low: 1, high: 1, unit: "day" }];
  }
  return [{ low, high, unit: mention.unit }];
}

/** Units that nobody says ("between four and nine before meals", "an INR of two to three"): a bare number is in them. */
const UNSPOKEN: ReadonlySet<Unit> = new Set(["millimole-per-litre", "number"]);

const isSame = (mention: QuantityMention, stated: Stated) =>
  mention.unit === stated.unit || (stated.unit === "time-per-day" && mention.perDay !== undefined);

/** "degrees" alone may be an angle or either scale: taken in the expected unit. */
const temperatureLeftOpen = (mention: QuantityMention, expected: ExpectedQuantity) =>
  mention.unit === "degree" && expected.unit === "degree-fahrenheit" && mention.high <= 45;

const toCelsius = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9;

/** Both in one unit where the scales have different zeros; null where they are no temperatures. */
function temperature(stated: Stated, expected: ExpectedQuantity): Stated | null {
  if (!stated.unit.startsWith("degree") || !expected.unit.startsWith("degree")) return null;
  if (stated.unit === expected.unit || stated.unit === "degree") return { ...stated, unit: expected.unit };
  if (expected.unit === "degree-celsius") return { low: toCelsius(stated.low), high: toCelsius(stated.high), unit: expected.unit };
  if (expected.unit === "degree-fahrenheit") return { low: stated.low * 1.8 + 32, high: stated.high * 1.8 + 32, unit: expected.unit };
  return null;
}

/** From the lowest to the highest number expected, the same where it is one. */
export function rangeOf({ value }: Pick<ExpectedQuantity, "value">): readonly [low: number, high: number] {
  return typeof value === "number" ? [value, value] : value;
}

function fits(mention: QuantityMention, said: Stated, expected: ExpectedQuantity): boolean | null {
  const stated = temperature(said, expected) ?? said;
  const elastic = isCalendar(stated.unit) !== isCalendar(expected.unit);
  const [from, to] = rangeOf(expected);
  const least = sizeOf(from - expected.tolerance, expected.unit, elastic);
  const most = sizeOf(to + expected.tolerance, expected.unit, elastic);
  const low = sizeOf(stated.low, stated.unit, elastic);
  const high = sizeOf(stated.high, stated.unit, elastic);
  if (low.dimension !== least.dimension) return null;

  const slack = ROUNDING * Math.max(1, Math.abs(most.high));
  const notBelow = (size: Size) => size.high >= least.low - slack;
  const notAbove = (size: Size) => size.low <= most.high + slack;
  const hard = mention.aim ? "exact" : mention.bound;
  if (expected.bound === "at-least") return hard !== "at-most" && notBelow(low);
  if (expected.bound === "at-most") return hard !== "at-least" && notAbove(high);
  return mention.vague ? notBelow(high) && notAbove(low) : notBelow(low) && notAbove(low) && notBelow(high) && notAbove(high);
}

/** So many times as long or as short a time is no slip: who says "a couple of weeks" does not speak of half a minute. */
const ANOTHER_MATTER = 1000;

/** Whether the mention is so far from what is expected that it must be the number of something else. */
export function isAnotherMatter({ low, high, unit }: QuantityMention, expected: ExpectedQuantity): boolean {
  if (unit === null || low <= 0) return false;
  const [from, to] = rangeOf(expected);
  const least = sizeOf(low, unit, true);
  const most = sizeOf(high, unit, true);
  const wanted = [sizeOf(from, expected.unit, true), sizeOf(to, expected.unit, true)] as const;
  if (least.dimension !== "duration" || wanted[0].dimension !== "duration") return false;
  return least.low > ANOTHER_MATTER * wanted[1].high || wanted[0].low > ANOTHER_MATTER * most.high;
}

function relatedFits(mention: QuantityMention, expected: ExpectedQuantity): boolean {
  const { unit } = mention;
  if (unit === null) return false;
  const related = RELATED.some(
    ([one, others]) => (one === unit && others.includes(expected.unit)) || (one === expected.unit && others.includes(unit)),
  );
  return related && fits(mention, { low: mention.low, high: mention.high, unit: expected.unit }, expected) === true;
}

/** The name of the dimension a unit belongs to: units of one dimension compare, however the number was said. */
export function dimensionOf(unit: Unit): string {
  const dimension = SIZES[unit]?.[0] ?? unit;
  return dimension === "calendar" ? "duration" : dimension;
}

/** The dimensions whose mentions may confirm an expectation in this unit: its own first, then those that stand for it in speech. */
export function dimensionsFor(unit: Unit): readonly string[] {
  const related = RELATED.filter(([general, specific]) => specific.includes(unit) || general === unit).flatMap(([general, specific]) => (general === unit ? specific : [general]));
  return [...new Set([dimensionOf(unit), ...related.map(dimensionOf)])];
}
