import { describe, expect, test } from "vitest";
import { compareQuantity, findQuantities, soundAlikeNumbers, type ExpectedQuantity } from "../../src/language/quantity.ts";
import { tokenise } from "../../src/language/token.ts";
import type { Unit } from "../../src/language/units.ts";

const expected = (value: ExpectedQuantity["value"], unit: Unit, more: Partial<ExpectedQuantity> = {}): ExpectedQuantity => ({ value, unit, tolerance: 0, bound: "exact", ...more });

function verdict(said: string, want: ExpectedQuantity) {
  const mentions = findQuantities(tokenise(said.split(" ")));
  if (mentions.length !== 1) throw new Error(`'${said}' holds ${mentions.length} quantities`);
  return compareQuantity(mentions[0]!, want);
}

const atLeast = { bound: "at-least" } as const;
const atMost = { bound: "at-most" } as const;

describe("sizes inside one dimension agree", () => {
  // BIPM, The International System of Units (SI brochure), 9th edition 2019: table 8 (1 min = 60 s, 1 h = 3600 s, 1 d = 86 400 s,
  // 1 L = 1 dm3), table 7 (prefixes). ISO 8601-1:2019: 1 week = 7 days. 1 in = 2.54 cm by definition (1959).
  // Fahrenheit: 25 °C = 77 °F, 100 °C = 212 °F (NIST Special Publication 811, 2008, appendix B.8).
  test.each<[string, number, Unit]>([
    ["one minute", 60, "second"],
    ["60 seconds", 1, "minute"],
    ["3600 seconds", 1, "hour"],
    ["an hour", 60, "minute"],
    ["86400 seconds", 1, "day"],
    ["24 hours", 1, "day"],
    ["four weeks", 28, "day"],
    ["28 days", 4, "week"],
    ["a fortnight", 14, "day"],
    ["half a minute", 30, "second"],
    ["quarter of an hour", 15, "minute"],
    ["one milligram", 1000, "microgram"],
    ["0.1 mg", 100, "microgram"],
    ["one gram", 1000, "milligram"],
    ["1 cm", 10, "millimetre"],
    ["two inches", 5.08, "centimetre"],
    ["half a litre", 500, "millilitre"],
    ["77 degrees fahrenheit", 25, "degree-celsius"],
    ["100 degrees celsius", 212, "degree-fahrenheit"],
    ["25 degrees", 25, "degree-celsius"],
    ["12 months", 1, "year"],
  ])("'%s' is %d %s", (said, value, unit) => expect(verdict(said, expected(value, unit))).toBe("right"));

  // A month has 28 to 31 days in the calendar; a year 365 or 366.
  test.each<[string, number, Unit]>([
    ["a month", 28, "day"], ["a month", 30, "day"], ["one month", 31, "day"], ["28 days", 1, "month"], ["four weeks", 1, "month"],
    ["90 days", 3, "month"], ["three months", 90, "day"], ["three months", 13, "week"], ["six months", 182, "day"], ["a year", 365, "day"], ["52 weeks", 1, "year"],
  ])("'%s' is as good as %d %s", (said, value, unit) => expect(verdict(said, expected(value, unit))).toBe("right"));

  test.each<[string, number, Unit]>([
    ["a month", 27, "day"], ["a month", 32, "day"], ["two weeks", 1, "month"], ["three months", 60, "day"], ["six months", 3, "month"],
    ["ten minutes", 10, "second"], ["ten hours", 10, "minute"], ["one gram", 1, "milligram"], ["30 degrees", 25, "degree-celsius"], ["a year", 360, "day"],
  ])("'%s' is not %d %s", (said, value, unit) => expect(verdict(said, expected(value, unit))).toBe("wrong"));

  test.each<[string, number, Unit]>([
    ["two puffs", 2, "second"], ["two sprays", 2, "drop"], ["ten seconds", 10, "millilitre"], ["four puffs", 4, "time-per-day"], ["5 mg", 5, "millilitre"], ["three bottles", 3, "puff"],
  ])("'%s' says nothing about %d %s", (said, value, unit) => expect(verdict(said, expected(value, unit))).toBe("other-dimension"));

  test("a puff and a spray are both one press of the device", () => {
    expect(verdict("two sprays", expected(2, "puff"))).toBe("right");
    expect(verdict("three sprays", expected(2, "puff"))).toBe("wrong");
  });
});

describe("tolerance and ranges", () => {
  test.each<[string, ExpectedQuantity, string]>([
    ["nine seconds", expected(10, "second", { tolerance: 2 }), "right"],
    ["eight seconds", expected(10, "second", { tolerance: 2 }), "right"],
    ["seven seconds", expected(10, "second", { tolerance: 2 }), "wrong"],
    ["thirty seconds", expected([30, 60], "second"), "right"],
    ["a minute", expected([30, 60], "second"), "right"],
    ["thirty seconds to a minute", expected([30, 60], "second"), "right"],
    ["two minutes", expected([30, 60], "second"), "wrong"],
    ["0.3 mg", expected(0.1, "milligram", { tolerance: 0.2 }), "right"],
    // Every number that the listener may take must be right.
    ["two to three puffs", expected(2, "puff"), "wrong"],
    ["two to three puffs", expected([2, 4], "puff"), "right"],
    ["five to ten seconds", expected(10, "second"), "wrong"],
    ["about ten seconds", expected(10, "second"), "right"],
    ["about twelve seconds", expected(10, "second"), "wrong"],
    ["a couple of puffs", expected(2, "puff"), "right"],
    ["a couple of minutes", expected(5, "minute"), "wrong"],
    // No number was named: any overlap is right.
    ["a few minutes", expected(5, "minute"), "right"],
    ["a few minutes", expected([1, 3], "minute"), "right"],
    ["a few seconds", expected(10, "second"), "wrong"],
  ])("'%s' against %o is %s", (said, want, outcome) => expect(verdict(said, want)).toBe(outcome));
});

describe("bounds", () => {
  test.each<[string, ExpectedQuantity, string]>([
    ["ten seconds", expected(10, "second", atLeast), "right"],
    ["fifteen seconds", expected(10, "second", atLeast), "right"],
    ["at least ten seconds", expected(10, "second", atLeast), "right"],
    ["five seconds", expected(10, "second", atLeast), "wrong"],
    ["five to ten seconds", expected(10, "second", atLeast), "wrong"],
    ["no more than ten seconds", expected(10, "second", atLeast), "wrong"],
    ["up to ten seconds", expected(10, "second", atLeast), "right"],
    ["eight puffs", expected(8, "puff", atMost), "right"],
    ["no more than eight puffs", expected(8, "puff", atMost), "right"],
    ["four puffs", expected(8, "puff", atMost), "right"],
    ["ten puffs", expected(8, "puff", atMost), "wrong"],
    ["at least eight puffs", expected(8, "puff", atMost), "wrong"],
    ["at least ten seconds", expected(10, "second"), "right"],
    ["within 28 days", expected(28, "day"), "right"],
    ["up to four times a day", expected(4, "time-per-day"), "right"],
    ["below 25 degrees", expected(25, "degree-celsius"), "right"],
    ["below 30 degrees", expected(25, "degree-celsius", atMost), "wrong"],
  ])("'%s' against %o is %s", (said, want, outcome) => expect(verdict(said, want)).toBe(outcome));
});

describe("how often against how far apart", () => {
  test.each<[string, ExpectedQuantity, string]>([
    ["twice a day", expected(2, "time-per-day"), "right"],
    ["every twelve hours", expected(2, "time-per-day"), "right"],
    ["every four hours", expected(4, "hour"), "right"],
    ["every four hours", expected(6, "time-per-day"), "right"],
    ["every four hours", expected(4, "time-per-day"), "wrong"],
    ["once a day", expected(1, "day"), "right"],
    ["daily", expected(1, "time-per-day"), "right"],
    ["every day", expected(1, "time-per-day"), "right"],
    ["once a week", expected(7, "day"), "right"],
    ["weekly", expected(1, "week"), "right"],
    ["three times a day", expected(2, "time-per-day"), "wrong"],
    ["every other day", expected(1, "time-per-day"), "wrong"],
    ["two or three times a week", expected([0.28, 1], "time-per-day", { tolerance: 0.01 }), "right"],
    // The frequency alone sets no gap.
    ["twice a day", expected(12, "hour"), "other-dimension"],
  ])("'%s' against %o is %s", (said, want, outcome) => expect(verdict(said, want)).toBe(outcome));
});

describe("what says too little may confirm, never contradict", () => {
  test.each<[string, ExpectedQuantity, string]>([
    ["hold for ten", expected(10, "second"), "right"],
    ["hold for five", expected(10, "second"), "other-dimension"],
    ["one two three four five", expected(5, "second"), "right"],
    ["one two three four five", expected(10, "second"), "other-dimension"],
    ["if you miss a dose", expected(200, "dose"), "other-dimension"],
    ["put a drop in", expected(1, "drop"), "right"],
    ["press it twice", expected(2, "spray"), "right"],
    ["press it three times", expected(2, "spray"), "other-dimension"],
    ["one dose", expected(2, "puff"), "other-dimension"],
    ["two weeks ago", expected(4, "week"), "other-dimension"],
    ["in the morning and at night", expected(2, "time-per-day"), "right"],
    ["in the morning and at night", expected(1, "time-per-day"), "other-dimension"],
    // "count to" names seconds firmly.
    ["count to ten", expected(10, "second"), "right"],
    ["count to five", expected(10, "second"), "wrong"],
  ])("'%s' against %o is %s", (said, want, outcome) => expect(verdict(said, want)).toBe(outcome));

  test("a number of things without a unit of ours is compared as a number", () => {
    expect(verdict("three bottles", expected(3, "number"))).toBe("right");
    expect(verdict("two bottles", expected(3, "number"))).toBe("wrong");
  });
});

test("teens and tens sound alike, other numbers do not", () => {
  expect(soundAlikeNumbers(15, 50)).toBe(true);
  expect(soundAlikeNumbers(30, 13)).toBe(true);
  expect(soundAlikeNumbers(15, 60)).toBe(false);
  expect(soundAlikeNumbers(12, 20)).toBe(false);
});

// Common practice, no source: readings of blood glucose are given without their unit where everybody uses the one.
test("a bare number is in a unit that nobody says, and may be wrong in it", () => {
  expect(verdict("five", expected([4, 9], "millimole-per-litre"))).toBe("right");
  expect(verdict("twelve", expected([4, 9], "millimole-per-litre"))).toBe("wrong");
  expect(verdict("twelve", expected([4, 9], "second"))).toBe("other-dimension");
});

test("a time that is longer by far is another matter, no least time that was kept", () => {
  const aMinute = expected(1, "minute", atLeast);
  expect(verdict("five minutes", aMinute)).toBe("right");
  expect(verdict("an hour", aMinute)).toBe("right");
  expect(verdict("two weeks", aMinute)).toBe("other-dimension");
});
