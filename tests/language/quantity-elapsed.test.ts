import { describe, expect, test } from "vitest";
import { elapsedIn } from "../../src/language/quantity-elapsed.ts";
import { findQuantities } from "../../src/language/quantity.ts";
import { tokenise } from "../../src/language/token.ts";

/** What lies between the times and dates that are named: "5 minute". Invented speech. */
const between = (says: string) => [...elapsedIn(tokenise(says.split(" "))).values()].map(({ low, high, unit }) => `${low === high ? low : `${low}-${high}`} ${unit}`).join(" | ");

describe("of two clock times the later one is so many minutes after the first", () => {
  test.each([
    ["you gave it at twenty past two, and at twenty-five past you give the second", "5 minute"],
    ["Ten past four, say. Quarter past, no brighter?", "5 minute"],
    ["in at quarter to three, the other bottle at five to three", "10 minute"],
    ["started at ten to nine, done by ten past nine", "20 minute"],
    ["from five to three until ten past three", "15 minute"],
    ["at twenty minutes past one and again at half past", "10 minute"],
  ])("%s", (says, expected) => expect(between(says)).toBe(expected));
});

describe("of two dates the later one is so many days or months after the first", () => {
  test.each([
    ["it's the first today. Come the eighth it's past it", "7 day"],
    ["today's the third, so on the tenth you throw it out", "7 day"],
    ["made up today, that's the second, so on Monday the ninth it goes", "7 day"],
    ["opened on the 4th of March, out on the 1st of April", "28 day"],
    ["break the seal on the first of February and it's for the bin on the first of August", "6 month"],
    ["today is the twenty first, come the twenty eighth it goes", "7 day"],
  ])("%s", (says, expected) => expect(between(says)).toBe(expected));

  test("up to a date may be with that day or without it", () => expect(between("today's Monday the third, so he has it till Sunday the ninth")).toBe("6-7 day"));
});

describe("nothing lies between", () => {
  test.each([
    ["times that tell when each day", "half past eight in the morning and half past eight at night"],
    ["times more than an hour apart", "half past nine in the morning and quarter to eight in the evening"],
    ["a range", "five to ten minutes, then five to ten more"],
    ["the first and the second of several things", "take the first puff, then on the second puff breathe in"],
    ["things told today", "it's the first time today, on the second time it's easier"],
    ["a date by itself", "come the eighth it's past it"],
    ["dates far apart in what is said", `it's the first today ${"and so on ".repeat(12)}come the eighth it goes`],
    ["a date that comes before", "it's the ninth today, come the first I'm away"],
  ])("%s", (_, says) => expect(between(says)).toBe(""));
});

test("it is an amount like any other, firm enough to be wrong", () => {
  expect(findQuantities(tokenise("it's the first today. Come the thirtieth it goes".split(" ")))).toMatchObject([{ low: 29, high: 29, unit: "day", kind: "amount", firm: true, vague: false, text: "the thirtieth" }]);
  expect(findQuantities(tokenise("today's the third, have it till the ninth".split(" ")))).toMatchObject([{ low: 6, high: 7, unit: "day", vague: true }]);
});
