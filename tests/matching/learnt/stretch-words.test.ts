import { describe, expect, test } from "vitest";
import { stretchWords } from "../../../src/matching/learnt/stretch-words.ts";
import { tokenise } from "../../../src/language/token.ts";

const words = (text: string, { numbers = true, denied = [] as string[] } = {}) => {
  const tokens = tokenise(text.split(" "));
  return stretchWords(tokens, tokens.map((token) => denied.includes(token.text)), numbers);
};

describe("the words that a stretch is known by", () => {
  test("each word by its stem, and each with the one before it", () => {
    const known = words("keeping the lantern dry");
    expect([...known.keys()]).toEqual(expect.arrayContaining(["keep", "lantern", "dry", "keep the", "the lantern", "lantern dry"]));
  });

  test("no pair reaches over a sentence end", () => {
    expect(words("dry it. Lantern oil").has("it lantern")).toBe(false);
  });

  test("a denied word stands there once more", () => {
    const known = words("leave lantern lit", { denied: ["lit"] });
    expect(known.has("!lit")).toBe(true);
    expect(known.has("!lantern")).toBe(false);
  });

  test("a word that carries nothing by itself counts less than one that does", () => {
    const known = words("the lantern");
    expect(known.get("the")!).toBeLessThan(known.get("lantern")! / 2);
  });

  test("where numbers are read elsewhere all of them are one", () => {
    expect([...words("fill ten lanterns", { numbers: false }).keys()]).toEqual([...words("fill 12 lanterns", { numbers: false }).keys()]);
    expect(words("fill ten lanterns").has("ten")).toBe(true);
  });

  test("a long stretch says no more than a short one, and one of two words less", () => {
    const strength = (text: string) => Math.sqrt([...words(text).values()].reduce((sum, share) => sum + share * share, 0));
    const long = "polish brass lantern every second evening before supper while candles cool outside near grandfather's workshop window";
    expect(strength(`${long} ${long.split(" ").reverse().join(" ")}`)).toBeCloseTo(strength(long));
    expect(strength("polish brass")).toBeLessThan(strength(long));
  });
});
