import nlp from "compromise";
import { describe, expect, test } from "vitest";
import { compareQuantity } from "../../src/language/quantity-compare.ts";
import { findQuantities } from "../../src/language/quantity.ts";
import { tokenise } from "../../src/language/token.ts";
import type { Unit } from "../../src/language/units.ts";

const find = (text: string) => findQuantities(tokenise(text.split(" ")));
const first = (text: string) => {
  const mention = find(text)[0];
  return mention === undefined ? null : [mention.low, mention.high, mention.unit];
};

// Invented spoken phrases: behaviour.
describe("what is said as a quantity", () => {
  test.each<[string, number, number, Unit | null]>([
    ["hold for ten seconds", 10, 10, "second"],
    ["wait half a minute", 0.5, 0.5, "minute"],
    ["half an hour before food", 0.5, 0.5, "hour"],
    ["a quarter of an hour", 0.25, 0.25, "hour"],
    ["one and a half hours", 1.5, 1.5, "hour"],
    ["two to three puffs", 2, 3, "puff"],
    ["5-10 seconds", 5, 10, "second"],
    ["between five and ten minutes", 5, 10, "minute"],
    ["thirty to sixty seconds", 30, 60, "second"],
    ["ten or fifteen minutes", 10, 15, "minute"],
    ["a couple of puffs", 2, 2, "puff"],
    ["twenty five units", 25, 25, "unit"],
    ["2.5 ml", 2.5, 2.5, "millilitre"],
    ["point five ml", 0.5, 0.5, "millilitre"],
    ["a fortnight", 2, 2, "week"],
    ["twenty-eight days", 28, 28, "day"],
    ["twice a day", 2, 2, "time-per-day"],
    ["every four hours", 4, 4, "hour"],
    ["two finger widths", 2, 2, "finger"],
    ["four millimoles per litre", 4, 4, "millimole-per-litre"],
    ["a hundred and twenty", 120, 120, null],
  ])("%s", (text, low, high, unit) => expect(first(text)).toEqual([low, high, unit]));

  test.each(["the second puff", "for the first time", "this one", "one of them", "call nine nine nine", "at half past eight", "at 8 am", "the fourth of march nineteen eighty two", "to puffs", "for puffs"])(
    "'%s' is no quantity",
    (text) => expect(find(text)).toEqual([]),
  );

  test("bounds are heard", () => {
    expect(find("at least ten seconds")[0]).toMatchObject({ low: 10, bound: "at-least" });
    expect(find("no more than eight doses")[0]).toMatchObject({ low: 8, bound: "at-most" });
  });
});

describe("a quantity against the one expected", () => {
  const tenSeconds = { value: 10, unit: "second" as const, tolerance: 2, bound: "exact" as const };
  test.each([
    ["ten seconds", "right"],
    ["twelve seconds", "right"],
    ["thirteen seconds", "wrong"],
    ["two seconds", "wrong"],
    ["half a minute", "wrong"],
    ["ten minutes", "wrong"],
    ["two puffs", "other-dimension"],
  ])("%s for ten seconds, give or take two: %s", (said, verdict) => expect(compareQuantity(find(said)[0]!, tenSeconds)).toBe(verdict));

  // Sizes: SI brochure, BIPM, 9th edition 2019, tables 7 and 8 (1 min = 60 s, 1 h = 3600 s, 1 d = 86 400 s) and the prefixes
  // milli and micro.
  test.each<[string, number, Unit]>([
    ["sixty seconds", 1, "minute"],
    ["sixty minutes", 1, "hour"],
    ["twenty four hours", 1, "day"],
    ["seven days", 1, "week"],
    ["one thousand micrograms", 1, "milligram"],
    ["ten millimetres", 1, "centimetre"],
  ])("%s is %d %s", (said, value, unit) => expect(compareQuantity(find(said)[0]!, { value, unit, tolerance: 0, bound: "exact" })).toBe("right"));

  test("ninety days and three months agree, as do 28 days and four weeks", () => {
    expect(compareQuantity(find("ninety days")[0]!, { value: 3, unit: "month", tolerance: 0, bound: "exact" })).toBe("right");
    expect(compareQuantity(find("four weeks")[0]!, { value: 28, unit: "day", tolerance: 0, bound: "exact" })).toBe("right");
    expect(compareQuantity(find("two months")[0]!, { value: 28, unit: "day", tolerance: 0, bound: "exact" })).toBe("wrong");
  });
});

describe("beside a package that reads numbers too (compromise, as a differential)", () => {
  const numbers = (text: string) => (nlp(text).numbers().json() as { number: { num: number } }[]).map(({ number }) => number.num);

  test.each([
    ["twenty five units", [25]],
    ["a hundred and twenty", [120]],
    ["fifteen minutes", [15]],
  ])("both read '%s' alike", (text, values) => {
    expect(numbers(text)).toEqual(values);
    expect(find(text).map(({ low }) => low)).toEqual(values);
  });

  test("but it takes 'ten seconds' for a fraction, which is why the grammar is our own", () => {
    expect(numbers("hold it for ten seconds")).not.toEqual([10]);
    expect(first("hold it for ten seconds")).toEqual([10, 10, "second"]);
  });
});
