import fc from "fast-check";
import { expect, test } from "vitest";
import { compareQuantity, findQuantities } from "../../src/language/quantity.ts";
import { UNITS } from "../../src/language/units.ts";
import { tokenise } from "../../src/language/token.ts";
import { numberInWords, quantityInWords } from "../../src/review/number-speech.ts";
import { utterancesOf } from "../../src/review/utterances.ts";

// Cardinals as British English writes them out: Fowler's Modern English Usage (from memory).
test.each([
  [0, "zero"], [7, "seven"], [12, "twelve"], [20, "twenty"], [28, "twenty eight"], [100, "one hundred"], [101, "one hundred and one"], [250, "two hundred and fifty"],
  [999, "nine hundred and ninety nine"], [1000, "one thousand"], [2005, "two thousand and five"], [2.5, "two point five"],
])("%d is said '%s'", (value, words) => {
  expect(numberInWords(value)).toBe(words);
});

test.each([
  [{ value: 10, unit: "second" }, "ten seconds"],
  [{ value: 1, unit: "drop" }, "one drop"],
  [{ value: 0.5, unit: "millilitre" }, "half a millilitre"],
  [{ value: 1, unit: "time-per-day" }, "once a day"],
  [{ value: 2, unit: "time-per-day" }, "twice a day"],
  [{ value: 3, unit: "time" }, "three times"],
  [{ value: 25, unit: "degree-celsius" }, "twenty five degrees celsius"],
  [{ value: [15, 60], unit: "minute" }, "fifteen minutes"],
  [{ value: [15, 60], unit: "minute", bound: "at-most" }, "sixty minutes"],
] as const)("%o is said '%s'", (quantity, words) => {
  expect(quantityInWords({ tolerance: 0, bound: "exact", ...quantity } as never)).toBe(words);
});

test("what is said of any number in any unit is read back as the number expected", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500 }), fc.constantFrom(...UNITS.filter((unit) => unit !== "number")), (value, unit) => {
      const expected = { value, unit, tolerance: 0, bound: "exact" as const };
      const mentions = findQuantities(tokenise(`use ${quantityInWords(expected)} please`.split(" ")));
      return mentions.some((mention) => compareQuantity(mention, expected) === "right");
    }),
    { numRuns: 500 },
  );
});

test("every alternative of a phrase is said at least once, groups in full, and no sentence twice", () => {
  const said = utterancesOf("shake|rattle the inhaler|puffer|device (well|for a bit)", null);
  for (const word of ["shake", "rattle", "inhaler", "puffer", "device", "well", "for a bit"]) expect(said.some((text) => text.includes(word)), word).toBe(true);
  expect(new Set(said).size).toBe(said.length);
});

test("the places of a number and of a name are filled", () => {
  expect(utterancesOf("my name is {name}", null)).toEqual(["my name is Leni"]);
  expect(utterancesOf("hold it for {quantity}", { value: 10, unit: "second", tolerance: 0, bound: "exact" })).toEqual(["hold it for ten seconds"]);
});
