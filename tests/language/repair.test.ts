import { describe, expect, test } from "vitest";
import { findQuantities } from "../../src/language/quantity.ts";
import { repairsIn } from "../../src/language/repair.ts";
import { tokenise } from "../../src/language/token.ts";

/** What is left of a sentence when the words taken back are out. Invented speech. */
function left(says: string): string {
  const tokens = tokenise(says.split(" "));
  const { withdrawn } = repairsIn(tokens, findQuantities(tokens), new Set());
  return tokens.filter((_, place) => !withdrawn.has(place)).map(({ text }) => text).join(" ");
}

describe("what a speaker takes back is withdrawn", () => {
  test.each([
    ["a number by another number", "hold it for five, sorry, ten seconds", "hold it for sorry ten seconds"],
    ["every number that is replaced", "good for two, tut, three, sorry, four months", "good for tut sorry four months"],
    ["a number behind a look at the label", "take three puffs, what does it say, two puffs", "take what does it say two puffs"],
    ["a number behind a call to listen", "take three, no listen, two puffs", "take no listen two puffs"],
    ["a direction by its opposite", "breathe in, no, out", "breathe no out"],
    ["a manner by a stronger one", "breathe in softly, no, strongly", "breathe in no strongly"],
    ["all that was broken off for something else", "chin down to your, sorry, i am thinking of the nose spray, chin up", "sorry i am thinking of the nose spray chin up"],
    ["what was told of another thing", "hold it for ten, no, what am i saying, that is the other kind, you breathe straight out", "no what am i saying that is the other kind you breathe straight out"],
    ["what was told of one that the speaker was thinking of", "just the mornings, no, sorry, that's the old one i'm thinking of, morning and night", "no sorry that is the old one i am thinking of morning and night"],
    ["what is denied where it is said anew", "first you whip the, no, you don't whip it off", "first no you do not whip it off"],
    ["a number behind a call to scrap it", "wait ten minutes, no, scrap that, two hours", "wait no scrap that two hours"],
    ["a manner by what is called its opposite", "a quick, no, the opposite, a slow one", "a no the opposite a slow one"],
    ["a time by another", "wash it every day, i mean, every week", "wash it i mean every week"],
    ["what is denied in the same breath, with its denial's words", "you use it every day, well, not every day, only when it hurts", "you use it well not only when it hurts"],
    ["a direction that is denied in the same breath", "press it before, well no, not before, as you breathe", "press it well no not as you breathe"],
    ["what is denied behind a sigh in the same breath", "you use it every day, erm, ach, not every day, only when it hurts", "you use it erm ach not only when it hurts"],
    ["behind a sigh and a no", "evenings, ach no, mornings", "ach no mornings"],
    ["behind a click of the tongue", "before, tch, after your breakfast", "tch after your breakfast"],
    ["a thing by another named alike", "they live in the fridge, what am i saying, the cupboard.", "they live in what am i saying the cupboard"],
    ["what is denied straight behind it", "go in the side, not the side, the middle", "go in not the middle"],
    ["one word that is denied behind a no", "fast sugar, no, not sugar, bread", "fast no not bread"],
    ["a word whose opposite has the editing term behind it", "pull the upper, the lower lid i mean, down", "pull the the lower lid i mean down"],
    ["a number whose other has the editing term behind it", "it is two drops, one drop sorry, in each eye", "it is one drop sorry in each eye"],
    ["what was told and broken off by what is told instead", "leave, no, what am i saying, take that one", "no what am i saying take that one"],
    ["a verb of 'you' that was broken off", "then you twist, sorry, pull the cap", "then you sorry pull the cap"],
    ["all from a word that is said anew", "you press it i mean you press as you breathe", "i mean you press as you breathe"],
  ])("%s", (_, said, meant) => expect(left(said)).toBe(meant));
});

describe("nothing is withdrawn", () => {
  test.each([
    ["by 'as well' before a no", "finish off the old one as well no point wasting it one puff from each and one off the new"],
    ["where a noun is told of", "after the drop, sorry, put the lid on"],
    ["where what is told is said again", "take, sorry, take two puffs"],
    ["where what was told has been said to the end", "twist it, sorry, pull the lid up"],
    ["by what rings", "they live in the fridge, sorry, the phone keeps ringing on me, and not in the door"],
    ["where one of two is denied", "prick the side, not the middle, of the finger"],
    ["where what is meant is only explained", "in the morning, before you eat i mean to say"],
    ["by two that are listed", "two drops, then one drop sorry, i lost my place"],
    ["behind an apology", "sorry to hear that, take two puffs"],
    ["by a no that answers", "no, you take two puffs"],
    ["where a second number adds to the first", "take two puffs in the morning and two at night"],
    ["where the next sentence has another number", "hold for ten seconds. Sorry, that was the door."],
    ["by what the needle is made to do", "dial two units to make the needle spit, then dial twelve units"],
    ["by a number of another kind", "two sprays into each nostril, sorry, once a day"],
    ["by what is done next", "hold it for ten seconds, sorry, I've lost my place, then wait thirty seconds"],
    ["by the same number again", "ten puffs, hang on, I'll write that down, ten puffs"],
    ["by what is said to be of somebody else", "two puffs, sorry that was the other pharmacist on the phone, hold it for ten seconds"],
    ["by what is said to be right", "twice a day, no, that's right, twice a day"],
    ["by hold on for", "press for two seconds and hold on for ten seconds"],
    ["by a denial that puts nothing right", "you use it every day, not every other day"],
    ["by a second denial of the same", "do not use it every day, well, not every day of the week"],
    ["behind an apology for what the speaker is", "two puffs, sorry i am late, then wait"],
    ["by what is only thought of", "use them every day, i am thinking of the future too"],
    ["by what is told for something else", "turn the base half a turn, that is for the other hand, and open the cap"],
    ["by hold on to", "press it and hold on to it for ten seconds"],
  ])("%s", (_, said) => expect(left(said)).toBe(tokenise(said.split(" ")).map(({ text }) => text).join(" ")));
});

describe("a number that is all of what follows stands where the one that it replaces was said", () => {
  /** What each number taken back stands for: the words it was said in, value and unit. */
  const restated = (says: string) => {
    const tokens = tokenise(says.split(" "));
    return repairsIn(tokens, findQuantities(tokens), new Set()).restated.map(({ first, low, unit }) => [tokens[first]!.text, low, unit]);
  };
  test.each([
    ["in the same sentence", "dial up twelve, sorry, twenty.", ["twelve", 20, null]],
    ["behind a full stop", "Dial up twelve. Sorry, twenty.", ["twelve", 20, null]],
    ["in the unit of the other", "Two sprays up each nostril. Sorry, three.", ["two", 3, "spray"]],
    ["one, which is mostly a pronoun", "Two sprays up each nostril. Sorry, one.", ["two", 1, "spray"]],
    ["behind a plain no", "Two sprays up each nostril. No, one.", ["two", 1, "spray"]],
  ])("%s", (_, says, meant) => expect(restated(says)).toEqual([meant]));
  test.each(["Two sprays up each nostril. Sorry, one moment.", "Two sprays up each nostril. Sorry, ten seconds.", "Two sprays up each nostril. No, one is not enough.", "Hold it for ten. Sorry, that was the door.", "Do you have two? No, one."])("not in: %s", (says) => expect(restated(says)).toEqual([]));
});

describe("the words that take something back are told apart", () => {
  const editing = (says: string) => {
    const tokens = tokenise(says.split(" "));
    const found = repairsIn(tokens, findQuantities(tokens), new Set()).editing;
    return tokens.filter((_, place) => found.has(place)).map(({ text }) => text).join(" ");
  };

  test.each([
    ["take four, no, hang on, two puffs", "no hang on"],
    ["hang on, let me get the leaflet", ""],
  ])("%s: '%s'", (says, words) => expect(editing(says)).toBe(words));
});
