import { rangeOf } from "../language/quantity-compare.ts";
import type { Unit } from "../language/units.ts";
import type { Quantity, Rubric } from "./schema.ts";

/** Units whose plain words are not the unit's name with an s. */
const PLAIN: Partial<Record<Unit, readonly [one: string, many: string]>> = {
  "time-per-day": ["time a day", "times a day"],
  finger: ["finger width", "finger widths"],
  "degree-celsius": ["degree Celsius", "degrees Celsius"],
  "degree-fahrenheit": ["degree Fahrenheit", "degrees Fahrenheit"],
  "millimole-per-litre": ["millimole per litre", "millimoles per litre"],
  "milligram-per-decilitre": ["milligram per decilitre", "milligrams per decilitre"],
  breath: ["breath", "breaths"],
  patch: ["patch", "patches"],
  percent: ["per cent", "per cent"],
  number: ["", ""],
};

/** The words of a unit for one and for many; empty for a bare number. */
export function unitWords(unit: Unit): readonly [one: string, many: string] {
  return PLAIN[unit] ?? [unit, `${unit}s`];
}

const DAYS_OF_WEEK = 7;
const DAYS_OF_MONTH = 30;

/** How often, in the longest of day, week and month that makes a whole number of it: "twice a week" is kept as 0.286 times a day. */
export function frequency(perDay: number): { count: number; period: "day" | "week" | "month" } {
  if (perDay >= 1) return { count: perDay, period: "day" };
  const weekly = Math.round(perDay * DAYS_OF_WEEK);
  return weekly >= 1 ? { count: weekly, period: "week" } : { count: Math.max(1, Math.round(perDay * DAYS_OF_MONTH)), period: "month" };
}

/** A quantity of a rubric as a person says it: "4 to 6 weeks", "at least 10 seconds", "the label's dose (1 drop)". */
export function quantityWords(quantity: Quantity, label: Rubric["scenario"]["label"] = {}): string {
  if ("label" in quantity) {
    const meant = label[quantity.label]?.quantity;
    return `the label's ${quantity.label}${meant === undefined ? "" : ` (${quantityWords(meant)})`}`;
  }
  const { value, unit, tolerance, bound } = quantity;
  const [low, high] = rangeOf({ value });
  const rare = unit === "time-per-day" && low < 1;
  const counted = rare ? rareFrequency(low, high) : `${low === high ? low : `${low} to ${high}`} ${unitWords(unit)[low === 1 && high === 1 ? 0 : 1]}`.trim();
  const bounded = bound === "exact" ? counted : `${bound.replace("-", " ")} ${counted}`;
  // Below once a day the tolerance only takes up the rounding of the fraction.
  return tolerance === 0 || rare ? bounded : `${bounded}, give or take ${tolerance}`;
}

/** "2 to 7 times a week", "once a month to once a day". */
function rareFrequency(low: number, high: number): string {
  const [least, most] = [frequency(low), frequency(high)];
  const words = ({ count, period }: typeof least) => `${count === 1 ? "once" : `${count} times`} a ${period}`;
  if (words(least) === words(most)) return words(least);
  return least.period === most.period ? `${least.count} to ${most.count} times a ${least.period}` : `${words(least)} to ${words(most)}`;
}
