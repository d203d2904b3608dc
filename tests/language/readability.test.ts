import { describe, expect, test } from "vitest";
import { countText, fleschKincaidGrade } from "../../src/language/readability.ts";

// Lincoln, address at Gettysburg, 1863 (public domain): the first two sentences, counted by hand.
// 1: Four score and seven years ago our fathers brought forth on this continent, a new nation, conceived in Liberty, and
//    dedicated to the proposition that all men are created equal. 30 words, syllables:
//    four1 score1 and1 seven2 years1 ago2 our1 fathers2 brought1 forth1 on1 this1 continent3 a1 new1 nation2 conceived2
//    in1 liberty3 and1 dedicated4 to1 the1 proposition4 that1 all1 men1 are1 created3 equal2 = 47 (our, years as one).
// 2: Now we are engaged in a great civil war, testing whether that nation, or any nation so conceived and so dedicated,
//    can long endure. 24 words: now1 we1 are1 engaged2 in1 a1 great1 civil2 war1 testing2 whether2 that1 nation2 or1 any2
//    nation2 so1 conceived2 and1 so1 dedicated4 can1 long1 endure2 = 36.
const ADDRESS =
  "Four score and seven years ago our fathers brought forth on this continent, a new nation, conceived in Liberty, and dedicated to the proposition that all men are created equal. Now we are engaged in a great civil war, testing whether that nation, or any nation so conceived and so dedicated, can long endure.";

describe("the Flesch-Kincaid grade", () => {
  test("is the published formula, worked by hand: 0.39 * 54/2 + 11.8 * 83/54 - 15.59 = 13.08", () => {
    expect(fleschKincaidGrade({ sentences: 2, words: 54, syllables: 83 })).toBeCloseTo(0.39 * 27 + (11.8 * 83) / 54 - 15.59, 10);
    expect(fleschKincaidGrade({ sentences: 2, words: 54, syllables: 83 })).toBeCloseTo(13.08, 2);
  });

  test("the text is counted as by hand, syllables within two", () => {
    const counts = countText(ADDRESS.split(" "));
    expect(counts.sentences).toBe(2);
    expect(counts.words).toBe(54);
    expect(Math.abs(counts.syllables - 83)).toBeLessThanOrEqual(2);
  });

  test("of nothing is refused, not guessed", () => {
    expect(() => fleschKincaidGrade(countText([]))).toThrow(RangeError);
  });

  test("a title's stop ends no sentence", () => {
    expect(countText("I saw Dr. Vale today. It went well.".split(" ")).sentences).toBe(2);
  });
});
