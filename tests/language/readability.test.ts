import { dictionary } from "cmu-pronouncing-dictionary";
import { fleschKincaid } from "flesch-kincaid";
import readability from "text-readability";
import { describe, expect, test } from "vitest";
import { countText, fleschKincaidGrade } from "../../src/language/readability.ts";

// Lincoln, address at Gettysburg, 1863 (public domain): the first two sentences, counted by hand.
// 1: Four score and seven years ago our fathers brought forth on this continent, a new nation, conceived in Liberty, and
//    dedicated to the proposition that all men are created equal. 30 words, syllables:
//    four1 score1 and1 seven2 years1 ago2 our1 fathers2 brought1 forth1 on1 this1 continent3 a1 new1 nation2 conceived2
//    in1 liberty3 and1 dedicated4 to1 the1 proposition4 that1 all1 men1 are1 created3 equal2 = 48 (our, years as one).
// 2: Now we are engaged in a great civil war, testing whether that nation, or any nation so conceived and so dedicated,
//    can long endure. 24 words: now1 we1 are1 engaged2 in1 a1 great1 civil2 war1 testing2 whether2 that1 nation2 or1 any2
//    nation2 so1 conceived2 and1 so1 dedicated4 can1 long1 endure2 = 36.
const OPENING =
  "Four score and seven years ago our fathers brought forth on this continent, a new nation, conceived in Liberty, and dedicated to the proposition that all men are created equal. Now we are engaged in a great civil war, testing whether that nation, or any nation so conceived and so dedicated, can long endure.";

// The rest of it, Bliss copy: 272 words in ten sentences, as is commonly said of it.
const REST =
  "We are met on a great battle-field of that war. We have come to dedicate a portion of that field, as a final resting place for those who here gave their lives that that nation might live. It is altogether fitting and proper that we should do this. But, in a larger sense, we can not dedicate -- we can not consecrate -- we can not hallow -- this ground. The brave men, living and dead, who struggled here, have consecrated it, far above our poor power to add or detract. The world will little note, nor long remember what we say here, but it can never forget what they did here. It is for us the living, rather, to be dedicated here to the unfinished work which they who fought here have thus far so nobly advanced. It is rather for us to be here dedicated to the great task remaining before us -- that from these honored dead we take increased devotion to that cause for which they gave the last full measure of devotion -- that we here highly resolve that these dead shall not have died in vain -- that this nation, under God, shall have a new birth of freedom -- and that government of the people, by the people, for the people, shall not perish from the earth.";
const ADDRESS = `${OPENING} ${REST}`;

// Carroll, Alice's Adventures in Wonderland, 1865 (public domain), opening: 57 words, one sentence, by hand.
const ALICE =
  "Alice was beginning to get very tired of sitting by her sister on the bank, and of having nothing to do: once or twice she had peeped into the book her sister was reading, but it had no pictures or conversations in it, “and what is the use of a book,” thought Alice “without pictures or conversations?”";

describe("the Flesch-Kincaid grade", () => {
  test("is the published formula, worked by hand: 0.39 * 54/2 + 11.8 * 84/54 - 15.59 = 10.53 + 18.356 - 15.59 = 13.30", () => {
    expect(fleschKincaidGrade({ sentences: 2, words: 54, syllables: 84 })).toBeCloseTo(13.2956, 4);
  });

  test("the opening is counted as by hand", () => {
    expect(countText(OPENING.split(" "))).toEqual({ sentences: 2, words: 54, syllables: 84 });
  });

  test("the whole address has 272 words in ten sentences, 'battle-field' taken as two", () => {
    const { sentences, words } = countText(ADDRESS.replace("battle-field", "battle field").split(" "));
    expect({ sentences, words }).toEqual({ sentences: 10, words: 272 });
  });

  test("its syllables are within one in a hundred of the CMU Pronouncing Dictionary's", () => {
    const spoken = ADDRESS.toLowerCase().match(/[a-z]+/g)!;
    const published = spoken.map((word) => (dictionary[word]?.match(/\d/g) ?? []).length);
    expect(spoken.filter((_, place) => published[place] === 0)).toEqual([]);
    const total = published.reduce((sum, count) => sum + count, 0);
    expect(Math.abs(countText(ADDRESS.split(" ")).syllables - total) / total).toBeLessThan(0.01);
  });

  test("a question in quotation marks ends its sentence", () => {
    expect(countText(ALICE.split(" "))).toMatchObject({ sentences: 1, words: 57 });
  });

  test("of nothing is refused, not guessed", () => {
    expect(() => fleschKincaidGrade(countText([]))).toThrow(RangeError);
  });

  test("a title's stop ends no sentence", () => {
    expect(countText("I saw Dr. Vale today. It went well.".split(" ")).sentences).toBe(2);
  });

  test("a stop inside a number ends no sentence", () => {
    expect(countText("Take 2.5 ml now. Then rest.".split(" ")).sentences).toBe(2);
  });
});

describe("beside other packages", () => {
  test("flesch-kincaid gives the same grade for the same counts", () => {
    for (const counts of [{ sentences: 1, words: 1, syllables: 1 }, { sentences: 2, words: 54, syllables: 84 }, { sentences: 10, words: 272, syllables: 374 }, { sentences: 7, words: 300, syllables: 700 }]) {
      expect(fleschKincaidGrade(counts)).toBeCloseTo(fleschKincaid({ sentence: counts.sentences, word: counts.words, syllable: counts.syllables }), 9);
    }
  });

  // text-readability rounds words a sentence and syllables a word to one decimal first, which moves a grade by up to
  // 0.39 * 0.05 + 11.8 * 0.05 and its own rounding by 0.05 more.
  const ROUNDING = 0.39 * 0.05 + 11.8 * 0.05 + 0.05;

  test.each([["the opening of the address", OPENING], ["the opening of Alice", ALICE]])("text-readability counts %s alike, and grades it alike but for its early rounding", (_, text) => {
    const counts = countText(text.split(" "));
    expect(readability.lexiconCount(text)).toBe(counts.words);
    expect(readability.sentenceCount(text)).toBe(counts.sentences);
    expect(Math.abs(readability.fleschKincaidGrade(text) - fleschKincaidGrade(counts))).toBeLessThanOrEqual(ROUNDING);
  });

  test("text-readability leaves out sentences of one or two words, which we count: speech is full of them", () => {
    const text = "Good. Now shake the inhaler well before you use it. Like that.";
    expect(countText(text.split(" ")).sentences).toBe(3);
    expect(readability.sentenceCount(text)).toBe(1);
  });
});
