import { describe, expect, test } from "vitest";
import { heardSkeleton, saidTogether, skeletonOf } from "../../src/language/sound-skeleton.ts";

/** Of words said one behind the other. */
const sounds = (words: string) => heardSkeleton(words.split(" ").map(skeletonOf).reduce(saidTogether));

// Invented mis-hearings; what they were is common practice, no source.
describe("pieces of a word sound as the word does", () => {
  test.each([
    ["wharf a ring", "warfarin"],
    ["war fare in", "warfarin"],
    ["eye be profane", "ibuprofen"],
    ["in jacked", "inject"],
    ["glue coze", "glucose"],
    ["para seat a mall", "paracetamol"],
    ["meth oh tricks eight", "methotrexate"],
    ["farmer cyst", "pharmacist"],
    ["knee dull", "needle"],
    ["in hay ler", "inhaler"],
    ["emerge in see", "emergency"],
    ["vack seen", "vaccine"],
    ["re salts", "results"],
  ])("%s: %s", (pieces, word) => expect(sounds(pieces)).toBe(sounds(word)));
});

describe("other syllables or consonants make another word", () => {
  test.each([
    ["lovely to", "leaflet"],
    ["parrot set a mall", "paracetamol"],
    ["in sort", "insert in"],
    ["blue cose", "glucose"],
  ])("%s: not %s", (pieces, word) => expect(sounds(pieces)).not.toBe(sounds(word)));
});

test("an r is heard before a vowel only, also of the next piece", () => {
  expect(sounds("war")).toBe("WA");
  expect(sounds("war in")).toBe("WARAN");
});
