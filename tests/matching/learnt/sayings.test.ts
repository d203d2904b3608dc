import { describe, expect, test } from "vitest";
import { sayingsOf } from "../../../src/matching/learnt/sayings.ts";
import { streamOf } from "../../../src/matching/stream.ts";
import { toldStation, type ToldTurn } from "../../../src/station/told.ts";

function sayings(turns: ToldTurn[]): string[] {
  const stream = streamOf(toldStation(turns, "talk"), ["candidate"]);
  return sayingsOf(stream).map(({ first, end }) => stream.tokens.slice(first, end).map(({ text }) => text).join(" "));
}
const candidate = (says: string): ToldTurn => ({ role: "candidate", says });

describe("stretches that are read as one saying", () => {
  test("each sentence, and two that follow each other", () => {
    expect(sayings([candidate("Trim the wick first. Fill the lamp after.")])).toEqual(["trim the wick first", "trim the wick first fill the lamp after", "fill the lamp after"]);
  });

  test("a short turn of several sentences once more as a whole", () => {
    expect(sayings([candidate("Trim the wick first. Fill the lamp after. Then light it.")])).toContain("trim the wick first fill the lamp after then light it");
  });

  test("no two of different turns", () => {
    expect(sayings([candidate("Trim the wick first."), { role: "patient", says: "And what do I do with all of the oil that is left?" }, candidate("Fill the lamp after.")])).toEqual(["trim the wick first", "fill the lamp after"]);
  });

  test("windows over speech without sentence ends, each word in at least one", () => {
    const words = Array.from({ length: 70 }, (_, place) => `word${"abcdefghij"[place % 10]}${"klmnopq"[Math.floor(place / 10)]}`);
    const found = sayings([candidate(words.join(" "))]);
    expect(found.length).toBeGreaterThan(4);
    expect(words.every((word) => found.some((saying) => saying.includes(word)))).toBe(true);
    expect(Math.max(...found.map((saying) => saying.split(" ").length))).toBeLessThanOrEqual(32);
  });

  test("one or two words are none", () => {
    expect(sayings([candidate("Right then.")])).toEqual([]);
  });
});
