import { expect, test } from "vitest";
import { computeStem, stem } from "../../src/language/stem.ts";
import known from "../../src/language/stems.json" with { type: "json" };

test("the table of known stems says what the algorithm says", () => {
  const wrong = Object.entries(known).filter(([word, stemmed]) => computeStem(word) !== stemmed);
  expect(wrong, "run: node src/build/stems.mjs").toEqual([]);
});

test("a word outside the table is stemmed all the same", () => {
  expect(Object.hasOwn(known, "zebras")).toBe(false);
  expect(stem("zebras")).toBe("zebra");
  expect(stem("zebras")).toBe("zebra");
});

test("the verb 'use' and the pronoun 'us' stay apart", () => {
  expect(stem("used")).not.toBe(stem("us"));
  expect(stem("uses")).toBe(stem("use"));
});

test("words that are no inflection of what their stem looks like stay apart", () => {
  expect(stem("contacts")).not.toBe(stem("contact"));
  expect(stem("evening")).not.toBe(stem("even"));
  expect(stem("evenings")).toBe(stem("evening"));
  expect(stem("news")).not.toBe(stem("new"));
});
