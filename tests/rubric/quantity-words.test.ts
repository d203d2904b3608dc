import { expect, test } from "vitest";
import { quantityWords } from "../../src/rubric/quantity-words.ts";
import { quantitySchema } from "../../src/rubric/fields.ts";
import { UNITS } from "../../src/language/units.ts";

test.each([
  [{ value: 1, unit: "puff" }, "1 puff"],
  [{ value: 10, unit: "second" }, "10 seconds"],
  [{ value: [4, 6], unit: "week" }, "4 to 6 weeks"],
  [{ value: 2, unit: "time-per-day", bound: "at-most" }, "at most 2 times a day"],
  [{ value: [0.28, 1], unit: "time-per-day", tolerance: 0.01 }, "2 times a week to once a day"],
  [{ value: [0.14, 0.43], unit: "time-per-day" }, "1 to 3 times a week"],
  [{ value: [0.14, 0.15], unit: "time-per-day", tolerance: 0.01 }, "once a week"],
  [{ value: 0.0333, unit: "time-per-day", bound: "at-least" }, "at least once a month"],
  [{ value: 2, unit: "finger" }, "2 finger widths"],
  [{ value: 28, unit: "day", tolerance: 3 }, "28 days, give or take 3"],
  [{ value: 999, unit: "number" }, "999"],
  [{ label: "dose" }, "the label's dose (2 drops)"],
  [{ label: "missing" }, "the label's missing"],
])("%j is '%s'", (quantity, words) => {
  expect(quantityWords(quantitySchema.parse(quantity), { dose: { text: "Two drops", quantity: { value: 2, unit: "drop", tolerance: 0, bound: "exact" } } })).toBe(words);
});

test("every unit has plain words without hyphens", () => {
  for (const unit of UNITS) expect(quantityWords(quantitySchema.parse({ value: 3, unit }))).not.toContain("-");
});
