import natural from "natural/lib/natural/phonetics/double_metaphone.js";
import jaroWinkler from "natural/lib/natural/distance/jaro-winkler_distance.js";
import { describe, expect, test } from "vitest";
import { SoundIndex, soundKeys } from "../../src/language/sound.ts";

describe("sound keys agree with published values", () => {
  // Philips 2000, C/C++ Users Journal 18(6), and the examples in the Double Metaphone documentation of its author's
  // reference code: the two codes of a name (from memory).
  test.each([
    ["smith", ["SM0", "XMT"]],
    ["schmidt", ["XMT", "SMT"]],
    ["thompson", ["TMPSN"]],
  ])("%s", (word, keys) => expect(soundKeys(word)).toEqual(keys));

  test("natural's own version drops a letter in 'dispenser', which is why it is not used", () => {
    const codes = new (natural as unknown as new () => { process(word: string): [string, string] })().process("dispenser");
    expect(codes[0]).toBe("TPNSR");
    expect(soundKeys("dispenser")).toEqual(["TSPNSR"]);
  });
});

describe("Jaro-Winkler agrees with the published table", () => {
  // Winkler 1990, "String comparator metrics and enhanced decision rules in the Fellegi-Sunter model of record
  // linkage", Proceedings of the Section on Survey Research Methods, table of examples.
  test.each([
    ["MARTHA", "MARHTA", 0.961],
    ["DWAYNE", "DUANE", 0.84],
    ["DIXON", "DICKSONX", 0.813],
  ])("%s and %s: %f", (a, b, expected) => expect(jaroWinkler(a, b)).toBeCloseTo(expected, 3));
});

describe("a mis-heard word finds the rubric's word", () => {
  const index = new SoundIndex(["nozzle", "spray", "septum", "puff", "not", "breath"]);
  test.each([
    ["nozzel", ["nozzle"]],
    ["septem", ["septum"]],
  ])("%s", (heard, words) => expect(index.alike(heard)).toEqual(words));

  test("short words and words that do not look alike find nothing", () => {
    expect(index.alike("nut")).toEqual([]);
    expect(index.alike("broth")).not.toContain("spray");
  });
});
