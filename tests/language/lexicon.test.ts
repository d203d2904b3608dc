import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { LEXICON_FORMS } from "../../src/language/lexicon/schema.ts";
import { conceptsOf, lexiconPhrases, wordWeight } from "../../src/language/lexicon.ts";
import { stem } from "../../src/language/stem.ts";
import { tokenise } from "../../src/language/token.ts";

describe("the lexicon files have the form that the code expects", () => {
  test.each(Object.keys(LEXICON_FORMS) as (keyof typeof LEXICON_FORMS)[])("%s.yaml", (name) => {
    const result = LEXICON_FORMS[name].safeParse(parse(readFileSync(`src/language/lexicon/${name}.yaml`, "utf8")));
    expect(result.error?.issues ?? []).toEqual([]);
  });
});

test("synonyms share a set", () => {
  const shared = (a: string, b: string) => conceptsOf(stem(a)).some((set) => conceptsOf(stem(b)).includes(set));
  expect(shared("inhaler", "puffer")).toBe(true);
  expect(shared("fridge", "refrigerator")).toBe(true);
  expect(shared("inhaler", "fridge")).toBe(false);
});

test("set phrases are found, also with words between the verb and its particle", () => {
  const sets = (text: string) => lexiconPhrases.find(tokenise(text.split(" "))).map(({ value }) => value);
  expect(sets("breathe out fully")).toEqual(sets("exhale fully").length === 0 ? sets("empty your lungs") : sets("breathe out fully"));
  expect(sets("take the small cap off")).toEqual(sets("pull off"));
});

test("plain words weigh nothing, words of place a little, the rest fully", () => {
  expect(wordWeight(stem("the"))).toBe(0);
  expect(wordWeight(stem("before"))).toBeGreaterThan(0);
  expect(wordWeight(stem("before"))).toBeLessThan(1);
  expect(wordWeight(stem("inhaler"))).toBe(1);
});
