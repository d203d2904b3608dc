import type { Quantity, Rubric } from "./schema.ts";

/** Units whose plain words are not the unit's name with an s. */
const PLAIN: Partial<Record<string, readonly [one: string, many: string]>> = {
  "time-per-day": ["time a day", "times a day"],
  "degree-celsius": ["degree Celsius", "degrees Celsius"],
  "degree-fahrenheit": ["degree Fahrenheit", "degrees Fahrenheit"],
  "millimole-per-litre": ["millimole per litre", "millimoles per litre"],
  "milligram-per-decilitre": ["milligram per decilitre", "milligrams per decilitre"],
  breath: ["breath", "breaths"],
  patch: ["patch", "patches"],
  percent: ["per cent", "per cent"],
  number: ["", ""],
};

/** A quantity of a rubric as a person says it: "4 to 6 weeks", "at least 10 seconds", "the label's dose (1 drop)". */
export function quantityWords(quantity: Quantity, label: Rubric["scenario"]["label"] = {}): string {
  if ("label" in quantity) {
    const meant = label[quantity.label]?.quantity;
    return `the label's ${quantity.label}${meant === undefined ? "" : ` (${quantityWords(meant)})`}`;
  }
  const { value, unit, tolerance, bound } = quantity;
  const number = Array.isArray(value) ? `${value[0]} to ${value[1]}` : `${value}`;
  const words = PLAIN[unit] ?? [unit, `${unit}s`];
  const counted = `${number} ${value === 1 ? words[0] : words[1]}`.trim();
  const bounded = bound === "exact" ? counted : `${bound.replace("-", " ")} ${counted}`;
  return tolerance === 0 ? bounded : `${bounded}, give or take ${tolerance}`;
}
