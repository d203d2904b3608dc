import { dictionary } from "cmu-pronouncing-dictionary";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { smallWordOf, smallWordsOf } from "../../src/language/small-words.ts";

describe("a word that nobody says there is read as the small word of the same sound", () => {
  test("with the marks behind it, whatever its case", () => {
    expect(smallWordOf("Inn")).toEqual({ text: "in", denies: false });
    expect(smallWordOf("wood,")).toEqual({ text: "would,", denies: false });
  });

  test("a denial is told apart: its meaning hangs on what was heard", () => {
    expect(smallWordOf("knot")).toEqual({ text: "not", denies: true });
  });

  test("all other words stand for themselves", () => {
    for (const word of ["not", "shake", "bee", "two", "inner", ""]) expect(smallWordOf(word)).toBeNull();
  });
});

describe("a word that people do say is read as another only beside words that tell", () => {
  test.each([
    ["know", "", "need", "no"],
    ["Know", "there's", "point.", "no"],
    ["no", "you", "what", "know"],
    ["threw", "me", "it", "through"],
  ])("'%s' between '%s' and '%s': '%s'", (written, previous, next, text) => expect(smallWordOf(written, previous, next)).toMatchObject({ text }));

  test.each([
    ["know", "you", "how"],
    ["no", "you,", "what"],
    ["no,", "you", "what"],
    ["no", "there's", "need"],
    ["threw", "I", "it"],
  ])("'%s' between '%s' and '%s' stands for itself", (written, previous, next) => expect(smallWordOf(written, previous, next)).toBeNull());
});

/** A sentence of one turn as it was meant. Invented mis-hearings. */
const meantBy = (says: string) => {
  const words = says.split(" ");
  return smallWordsOf(words, words.map(() => 0)).map((small, place) => small?.text ?? words[place]!).filter(Boolean).join(" ");
};

describe("a word broken in pieces or cut short is read as the word, where the words beside it tell", () => {
  test.each([
    ["a fresh one ever he time", "a fresh one every time"],
    ["once a weak, ever day", "once a week, every day"],
    ["ever he weak", "every week"],
    ["throw it a way after", "throw it away after"],
    ["do it a gain be fore bed", "do it again before bed"],
    ["one in each i, half an our later", "one in each eye, half an hour later"],
    ["your left i first", "your left eye first"],
    ["stay of it al together", "stay off it altogether"],
    ["wait ten minuets", "wait ten minutes"],
  ])("%s: %s", (says, meant) => expect(meantBy(says)).toBe(meant));

  test.each([
    "if there is ever a day you can not",
    "have you ever used one",
    "there is a way to do it",
    "a weak chest",
    "one of ours",
    "take two of them",
    "the weak side of the bottle",
    "it is for you",
    "in our shop",
    "if it is bad i would ring",
    "before you left i said so",
    "one each i think",
    "to months",
  ])("%s", (says) => expect(meantBy(says)).toBe(says));

  test("never with the words of another turn", () => expect(smallWordsOf(["ever", "day"], [0, 1])).toEqual([null, null]));
});

// Outside check: the CMU Pronouncing Dictionary (through the package of that name) gives both words the same sounds.
const { meant, beside } = parse(readFileSync("src/language/lexicon/small-words.yaml", "utf8")) as { meant: Record<string, string>; beside: { heard: string; meant: string }[] };
const phonesOf = new Map<string, string[]>();
for (const [entry, phones] of Object.entries(dictionary)) {
  const word = entry.replace(/\(\d+\)$/, "");
  phonesOf.set(word, [...(phonesOf.get(word) ?? []), phones.replace(/\d/g, "")]);
}
const sounds = (word: string) => phonesOf.get(word) ?? [];

test.each([...Object.entries(meant), ...beside.map((entry) => [entry.heard, entry.meant] as [string, string])])("'%s' sounds like '%s'", (written, small) => {
  expect(sounds(written).filter((phones) => sounds(small).includes(phones))).not.toEqual([]);
});
