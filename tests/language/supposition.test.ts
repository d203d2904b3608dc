import { describe, expect, test } from "vitest";
import { polarityOfWord } from "./spoken.ts";

// Invented.
test("what may happen is told from what to do", () => {
  const hypothetical = (sentence: string) => polarityOfWord(sentence, sentence.split(" ").at(-1)!).hypothetical;
  expect(hypothetical("if you don't shake it")).toBe(true);
  expect(hypothetical("some people don't shake it")).toBe(true);
  expect(hypothetical("loads of people only shake it")).toBe(true);
  expect(hypothetical("loads of people shake it")).toBe(false);
  expect(hypothetical("so don't shake it")).toBe(false);
  expect(hypothetical("because you don't shake it")).toBe(true);
  expect(hypothetical("because it mustn't go in a fire")).toBe(false);
  expect(hypothetical("well if you miss one just do not take two")).toBe(false);
  expect(hypothetical("if you feel a bit dopey at the wheel just wind the window down")).toBe(false);
  expect(hypothetical("if you forget one load it twice the next morning")).toBe(false);
  expect(hypothetical("if you skip a day just have an extra one in the evening")).toBe(false);
  expect(hypothetical("if you miss one do two the next day")).toBe(false);
  expect(hypothetical("if it clicks you've gone too far")).toBe(false);
  expect(hypothetical("if it means you've gone too far")).toBe(true);
  expect(hypothetical("if he can't be woken just let him sleep")).toBe(false);
  expect(hypothetical("if he won't wake up properly just leave him")).toBe(false);
  expect(hypothetical("if it drops below seven that is a fault")).toBe(false);
  expect(hypothetical("if you get a cough that is dry")).toBe(true);
});

describe("what is told behind a supposition is no supposition", () => {
  const supposed = (sentence: string, word: string) => polarityOfWord(sentence, word).hypothetical;
  test.each([
    ["if you miss one just have two the next day", "miss", "two"],
    ["if you missed yesterday just have twice as many today", "missed", "twice"],
    ["if that happens take an extra one", "happens", "extra"],
    ["if you forget it simply make up for it tomorrow", "forget", "tomorrow"],
    ["if you haven't used it for a week, prime it again", "week", "prime"],
    ["and suppose you forget, double up the next day", "forget", "double"],
  ])("%s", (sentence, before, behind) => {
    expect(supposed(sentence, before)).toBe(true);
    expect(supposed(sentence, behind)).toBe(false);
  });

  test.each(["it doesn't matter if the tip touches the wick", "it's no problem if the tip touches the wick", "never mind if the tip touches the wick"])("what is allowed is told: %s", (sentence) => expect(supposed(sentence, "touches")).toBe(false));
  test.each(["it matters if the tip touches the wick", "don't worry if the tip touches the wick"])("but not so: %s", (sentence) => expect(supposed(sentence, "touches")).toBe(true));
  test("a list of what is supposed goes on", () => expect(supposed("if it's cloudy, lumpy or discoloured, throw it away", "lumpy")).toBe(true));
  test("an adverb within it opens nothing", () => expect(supposed("if you just take two you will be fine", "two")).toBe(true));
});
