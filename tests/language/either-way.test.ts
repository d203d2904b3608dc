import { expect, test } from "vitest";
import { polarityOfWord } from "./spoken.ts";

// Invented.
test("what is looked for and what somebody cannot do comes to the same, denied or not", () => {
  const eitherWay = (sentence: string, word: string) => polarityOfWord(sentence, word).eitherWay;
  expect(eitherWay("make sure there's no grit in the spout", "grit")).toBe(true);
  expect(eitherWay("have a look in case there is grit", "grit")).toBe(true);
  expect(eitherWay("if you cannot whistle", "whistle")).toBe(true);
  expect(eitherWay("if you find it hard to whistle", "whistle")).toBe(true);
  expect(eitherWay("make sure you rinse the grit off", "grit")).toBe(false);
  expect(eitherWay("do not whistle", "whistle")).toBe(false);
});
