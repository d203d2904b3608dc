import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { LEXICON_FORMS } from "../../src/language/lexicon/schema.ts";
import lookup from "../../src/language/lexicon/lookup.json" with { type: "json" };
import { buildLookup } from "../../src/language/lexicon/lookup.ts";
import { conceptsOf, lexiconPhrases, meaningsOf, wordWeight } from "../../src/language/lexicon.ts";
import { stem } from "../../src/language/stem.ts";
import { tokenise } from "../../src/language/token.ts";

describe("the lexicon files have the form that the code expects", () => {
  test.each(Object.keys(LEXICON_FORMS) as (keyof typeof LEXICON_FORMS)[])("%s.yaml", (name) => {
    const result = LEXICON_FORMS[name].safeParse(parse(readFileSync(`src/language/lexicon/${name}.yaml`, "utf8")));
    expect(result.error?.issues ?? []).toEqual([]);
  });
});

test("a verb that is told, and what stands behind it, is of one kind", () => {
  const { behind, ...verbs } = LEXICON_FORMS.instructions.parse(parse(readFileSync("src/language/lexicon/instructions.yaml", "utf8")));
  for (const lists of [verbs, behind]) {
    const all = Object.values(lists).flat();
    expect(all.filter((word, place) => all.indexOf(word) !== place)).toEqual([]);
  }
});

test("the tables to look up in are those of the lexicon", () => {
  const read = (name: string) => parse(readFileSync(`src/language/lexicon/${name}.yaml`, "utf8"));
  expect(lookup, "run: node src/build/stems.mjs").toEqual(buildLookup(LEXICON_FORMS.synonyms.parse(read("synonyms")), LEXICON_FORMS.wordings.parse(read("wordings"))));
});

test("an everyday wording stands for the word of a rubric, not the other way round", () => {
  const heard = (word: string, head: string) => meaningsOf(stem(word)).some((key) => conceptsOf(stem(head)).includes(key));
  expect(heard("jiggle", "shake")).toBe(true);
  expect(heard("booze", "alcohol")).toBe(true);
  expect(conceptsOf(stem("jiggle")).some((key) => meaningsOf(stem("shake")).includes(key))).toBe(false);
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
