import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findQuantities } from "../../src/language/quantity.ts";
import { tokenise } from "../../src/language/token.ts";

const find = (text: string) => findQuantities(tokenise(text.split(/\s+/)));

/** One mention in short: "10 second", "2-3 puff ~", "at-most 8 puff", "? 10" for a bare number, with (soft) where it cannot contradict. */
function short(text: string): string {
  return find(text)
    .map(({ low, high, unit, bound, approximate, firm, kind }) =>
      [
        bound === "exact" ? "" : bound,
        low === high ? String(Number(low.toFixed(4))) : `${Number(low.toFixed(4))}-${Number(high.toFixed(4))}`,
        unit ?? "?",
        approximate ? "~" : "",
        kind === "amount" ? "" : kind,
        firm ? "" : "(soft)",
      ].filter(Boolean).join(" "),
    )
    .join(" | ");
}

const table = (rows: readonly (readonly [string, string])[]) => test.each(rows)("%s", (said, expected) => expect(short(said)).toBe(expected));
const none = (rows: readonly string[]) => test.each(rows)("%s", (said) => expect(short(said)).toBe(""));

describe("numbers with a unit", () => {
  table([
    ["hold your breath for ten seconds", "10 second"],
    ["wait 30s", "30 second"],
    ["twenty-five minutes", "25 minute"],
    ["a hundred and twenty doses", "120 dose"],
    ["ten of the tablets", "10 tablet"],
    ["a single wee drop", "1 drop"],
    ["after one day it goes", "1 day"],
    ["one day you will do it yourself", "1 day (soft)"],
    ["three of your little capsules", "3 capsule"],
    ["one hundred twenty doses", "120 dose"],
    ["two hundred sprays", "200 spray"],
    ["twelve hundred units", "1200 unit"],
    ["1,500 units", "1500 unit"],
    ["two thousand five hundred units", "2500 unit"],
    ["one point five ml", "1.5 millilitre"],
    ["nought point two five mg", "0.25 milligram"],
    ["is one five milligram tablet", "5 milligram"],
    ["you have a single one, five milligrams it is", "5 milligram"],
    ["a pair up the left and a pair up the right", "2 ? (soft) | 2 ? (soft)"],
    ["two 2.5 mg tablets", "2 ? (soft) | 2.5 milligram"],
    ["one five milligrams", "15 milligram"],
    ["point five of a ml", "0.5 millilitre"],
    ["five mils", "5 millilitre"],
    ["half a litre", "500 millilitre"],
    ["2 teaspoons", "10 millilitre"],
    ["250 mcg", "250 microgram"],
    ["100 µg", "100 microgram"],
    ["two squirts", "2 spray"],
    ["two finger widths", "2 finger"],
    ["two fingers' width from the navel", "2 finger"],
    ["a 4 mm needle", "4 millimetre"],
    ["a four mil needle", "4 millimetre"],
    ["two inches from the navel", "5.08 centimetre"],
    ["a ninety degree angle", "90 degree"],
    ["25°C", "25 degree-celsius"],
    ["98.6 degrees Fahrenheit", "98.6 degree-fahrenheit"],
    ["70 per cent alcohol", "70 percent"],
    ["5.5 mmol/L", "5.5 millimole-per-litre"],
    ["90 mg/dL", "90 milligram-per-decilitre"],
    ["one capsule and two pills", "1 capsule | 2 tablet"],
    ["three slow deep breaths", "3 breath"],
    ["two um puffs", "2 puff"],
    ["ten ten seconds", "10 second"],
    ["two tiny eye drops", "2 drop"],
    ["three things to bring", "3 number"],
    ["a thirty second wait", "30 second"],
  ]);
});

describe("halves, quarters and mixed units", () => {
  table([
    ["half a minute", "0.5 minute"],
    ["half an hour", "0.5 hour"],
    ["a half-hour", "0.5 hour"],
    ["quarter of an hour", "0.25 hour"],
    ["three quarters of an hour", "0.75 hour"],
    ["half a tablet", "0.5 tablet"],
    ["½ a tablet", "0.5 tablet"],
    ["2 1/2 tablets", "2.5 tablet"],
    ["two and a half hours", "2.5 hour"],
    ["one and a half hours", "1.5 hour"],
    ["an hour and a half", "1.5 hour"],
    ["one minute thirty", "1.5 minute"],
    ["two minutes and thirty seconds", "2.5 minute"],
    ["1 hour 15 minutes", "1.25 hour"],
    ["half a dozen puffs", "6 puff"],
    ["a dozen puffs", "12 puff"],
    ["a fortnight", "2 week"],
  ]);
});

describe("an article before a length of time is one; before a thing it can confirm one, but deny nothing", () => {
  table([
    ["wait a minute", "1 minute"],
    ["after an hour", "1 hour"],
    ["for a full minute", "1 minute"],
    ["put a drop in each eye", "1 drop (soft)"],
    ["if you miss a dose", "1 dose (soft)"],
    ["take a single puff", "1 puff"],
  ]);
});

describe("ranges", () => {
  table([
    ["two to three puffs", "2-3 puff"],
    ["2 to 3 puffs", "2-3 puff"],
    ["6-10 seconds", "6-10 second"],
    ["6–10 seconds", "6-10 second"],
    ["three or four times", "3-4 time"],
    ["ten or fifteen seconds", "10-15 second"],
    ["between five and ten minutes", "5-10 minute"],
    ["from two to four weeks", "2-4 week"],
    ["two, three seconds", "2-3 second ~"],
    ["ten fifteen minutes", "10-15 minute ~"],
    ["not one, two drops", "2 drop"],
    ["a minute or two", "1-2 minute ~"],
    ["one puff or two", "1-2 puff ~"],
    ["thirty seconds to a minute", "0.5-1 minute"],
    ["half to one hour", "0.5-1 hour"],
    ["between two and eight degrees", "2-8 degree"],
    ["ten, maybe fifteen minutes", "10-15 minute"],
    ["a good ten, better twelve seconds", "at-least 10-12 second"],
    ["two, or three if it's bad", "2 ? (soft) | 3 ? (soft)"],
    ["one or it's two", "1-2 ? (soft)"],
    ["it's the one or it's the two", "1-2 ? (soft)"],
  ]);
});

describe("hedges", () => {
  table([
    ["about ten seconds", "10 second ~"],
    ["an hour or so", "1 hour ~"],
    ["ten or so seconds", "10 second ~"],
    ["ten-ish seconds", "10 second ~"],
    ["at least ten seconds", "at-least 10 second"],
    ["ten seconds at least", "at-least 10 second"],
    ["ten seconds or more", "at-least 10 second"],
    ["no less than ten seconds", "at-least 10 second"],
    ["up to four puffs", "at-most 4 puff"],
    ["no more than eight puffs", "at-most 8 puff"],
    ["a maximum of 8 puffs", "at-most 8 puff"],
    ["8 puffs max", "at-most 8 puff"],
    ["less than a minute", "at-most 1 minute"],
    ["below 25 degrees", "at-most 25 degree"],
    ["over twelve years", "at-least 12 year"],
    ["within four weeks", "at-most 4 week"],
    ["a couple of minutes", "2 minute ~"],
    ["a few days", "3-5 day ~"],
    ["several weeks", "3-7 week ~"],
    ["for the past few days", "3-5 day ~"],
    ["getting on for twenty-four hours", "24 hour ~"],
    ["the best part of a week", "1 week ~"],
    ["ten minutes, thereabouts", "10 minute ~"],
    ["I want to say a week", "1 week ~"],
    ["I'd say ten seconds", "10 second ~"],
  ]);

  test("a denial turns 'more than' round: it is the most, not the least", () => {
    expect(short("more than eight puffs")).toBe("at-least 8 puff");
    expect(short("do not take more than eight puffs")).toBe("at-most 8 puff");
    expect(short("you shouldn't ever be using any more than eight puffs")).toBe("at-most 8 puff");
    expect(short("don't leave it for less than ten seconds")).toBe("at-least 10 second");
  });

  test("the least and the most told one after the other are a range", () => {
    expect(short("no lower than three and no higher than four")).toBe("3-4 ? (soft)");
    expect(short("at least two puffs, and no more than four")).toBe("2-4 puff");
    expect(short("no more than four puffs but at least two")).toBe("2-4 puff");
    expect(short("never under four or over seven")).toBe("4-7 ? (soft)");
  });

  test("and none where they are apart, or the least is more than the most", () => {
    expect(short("under four or over seven")).toBe("at-most 4 ? (soft) | at-least 7 ? (soft)");
    expect(short("wait at least ten seconds. No more than twelve puffs")).toBe("at-least 10 second | at-most 12 puff");
    expect(short("at least one tablet at night and then no more than four tablets")).toBe("at-least 1 tablet | at-most 4 tablet");
  });

  test("a denial in the sentence before turns nothing round", () => {
    expect(short("No. More than eight puffs and you should call us")).toBe("at-least 8 puff");
  });

  test("'over ten seconds' with a slow push is how long it takes", () => {
    expect(short("inject it slowly over ten seconds")).toBe("10 second");
    expect(short("for just over ten seconds")).toBe("at-least 10 second");
  });
});

describe("how often", () => {
  table([
    ["use it twice a day", "2 time-per-day frequency"],
    ["three times daily", "3 time-per-day frequency"],
    ["once a day", "1 time-per-day frequency"],
    ["daily", "1 time-per-day frequency"],
    ["every morning", "1 time-per-day frequency"],
    ["up to four times in 24 hours", "at-most 4 time-per-day frequency"],
    ["3x daily", "3 time-per-day frequency"],
    ["one a day", "1 time-per-day frequency"],
    ["two checks in the day", "2 time-per-day frequency"],
    ["four goes a day", "4 time-per-day frequency"],
    ["in the morning and at night", "2 time-per-day frequency (soft)"],
    ["two or three times a week", "0.2857-0.4286 time-per-day frequency"],
    ["every four hours", "4 hour interval"],
    ["every four to six hours", "4-6 hour interval"],
    ["four-hourly", "4 hour interval"],
    ["three-monthly", "3 month interval"],
    ["a two weekly blood test", "2 week interval"],
    ["take four weekly", "0.5714 time-per-day frequency"],
    ["every other day", "2 day interval"],
    ["every second day", "2 day interval"],
    ["on alternate days", "2 day interval"],
    ["weekly", "1 week interval"],
    ["once a week", "1 week interval"],
    ["press it once", "1 time"],
    ["twice", "2 time"],
    ["once or twice a day", "1-2 time-per-day ~ frequency"],
    ["eight puffs a day", "8 puff | 1 time-per-day frequency (soft)"],
    ["three evenings a week", "3 number | 0.1429 time-per-day frequency (soft)"],
    ["a couple of glasses a week", "2 number ~ | 0.1429 time-per-day frequency (soft)"],
  ]);

  // Arithmetic on ISO 8601 facts: a day has 24 hours, a week 7 days.
  test.each([
    ["every four hours", 6],
    ["twice a day", 2],
    ["every other day", 0.5],
    ["once a week", 1 / 7],
    ["four-hourly", 6],
    ["every twelve hours", 2],
  ])("'%s' makes %d a day", (said, perDay) => {
    const [mention] = find(said);
    expect(mention!.perDay![0]).toBeCloseTo(perDay, 9);
    expect(mention!.perDay![1]).toBeCloseTo(perDay, 9);
  });
});

describe("counting aloud", () => {
  table([
    ["one two three four five", "5 ? ~ count (soft)"],
    ["one, two, three... four, five and breathe out", "5 ? ~ count (soft)"],
    ["ten nine eight seven", "10 ? ~ count (soft)"],
    ["count to ten", "10 second ~"],
    ["count slowly to five", "5 second ~"],
    ["a slow count of ten", "10 second ~"],
    ["count one to six in your head", "6 second ~"],
    ["one and two and three and so on up to ten", "10 ? ~ count (soft)"],
    ["one, two, three to four days", "3 ? ~ count (soft) | 4 day"],
  ]);
});

describe("seconds told off by a long word", () => {
  table([
    ["one elephant, two elephants, and then out with it", "2 second ~"],
    ["one potato, two potato, all the way to ten", "10 second ~"],
    ["one banana, two banana, and on up to ten bananas", "10 second ~"],
    ["one mississippi, right up to ten", "10 second ~"],
    ["one thousand, two thousand, three thousand", "3 second ~"],
    ["two thousand units", "2000 unit"],
    ["take two bananas and ten potatoes", "2 number | 10 number"],
  ]);
  none(["one potato with your dinner"]);
});

describe("a bare number", () => {
  table([
    ["hold it for ten", "10 ? (soft)"],
    ["no more than eight", "at-most 8 ? (soft)"],
    ["dial up twelve", "12 ? (soft)"],
  ]);
});

describe("doses read out digit by digit, as is taught so that sixteen is not heard as sixty", () => {
  table([
    ["one six units", "16 unit"],
    ["six zero units", "60 unit"],
    ["sixteen units", "16 unit"],
    ["two fifty micrograms", "250 microgram"],
    // A range or twenty-three: the range, but it cannot contradict.
    ["two three units", "2-3 unit ~ (soft)"],
  ]);
});

describe("'second' the ordinal is no second", () => {
  table([
    ["wait thirty seconds before the second puff", "30 second"],
    ["just for a second", "1 second"],
    ["a second or two", "1-2 second ~"],
  ]);
  none(["take the second puff", "a second puff", "the second one", "the first time you use it", "for the third time", "your second dose"]);
});

describe("'one' the pronoun counts nothing", () => {
  none(["this one or that one", "one of them", "the blue one", "another one", "one at a time", "each one", "no one"]);
});

describe("numbers are never guessed from words that only sound like them", () => {
  none(["for you to take too", "I ate it", "I won", "keep it to yourself", "for to be sure"]);
});

describe("idioms", () => {
  none(["just a minute", "hang on a second", "give me a minute", "got a minute", "once you have done that", "once opened", "at once", "a few", "half way", "half full", "two thirds full", "the same time"]);
  table([
    ["keep it in for just a minute", "1 minute"],
    ["I'll show you in a minute", "1 minute (soft)"],
    ["two weeks ago", "2 week (soft)"],
    ["she's six years old", "6 year (soft)"],
  ]);
});

describe("numbers that name something are left out", () => {
  none([
    "call 999 or 112",
    "ring nine nine nine",
    "call triple nine",
    "nine one one",
    "oh seven seven double oh nine",
    "07700 900123",
    "the fourth of march nineteen eighty two",
    "the twenty second of june",
    "born on the twelfth of june nineteen sixty four",
    "date of birth four three eighty two",
    "date of birth 04/03/1982",
    "it expires in 2027",
    "June 22nd",
    "half past eight",
    "eight o'clock",
    "between eight and nine o'clock",
    "at six, in the morning, no, in the evening, six in the evening",
    "8 am",
    "at ten p.m.",
    "quarter to nine in the evening",
    "at eight and again at ten",
    "ten to eight",
    "a hundred and twenty over eighty",
    "type two diabetes",
    "step three",
    "24/7",
  ]);

  test("but not out of a quantity that has such digits", () => {
    expect(short("2000 units")).toBe("2000 unit");
    expect(short("112 doses")).toBe("112 dose");
    expect(short("two in the morning, two in the evening")).toBe("2 ? (soft) | 2 ? (soft)");
    expect(short("take one tablet at eight in the morning")).toBe("1 tablet");
  });
});

describe("a mention", () => {
  test("gives token positions with its hedges inside, and the words said", () => {
    const [mention] = find("Hold it, for at least ten whole seconds, then breathe");
    expect(mention).toMatchObject({ first: 3, end: 8, text: "at least ten whole seconds", low: 10, high: 10 });
  });

  test("never reaches over the end of a sentence", () => {
    expect(short("I have two. Puffs are counted")).toBe("2 ? (soft)");
    expect(short("Take two, puffs of it")).toBe("2 ? (soft)");
  });

  test("holds in whole stretches of speech, in order", () => {
    expect(short("so you take two puffs twice a day and wait thirty seconds between them, no more than eight puffs in any 24 hours and throw it away after three months")).toBe(
      "2 puff | 2 time-per-day frequency | 30 second | at-most 8 puff | 1 time-per-day frequency (soft) | 3 month",
    );
  });

  test("whatever is said, mentions come in order, do not overlap, stay inside the tokens and have low at most high", () => {
    const word = fc.constantFrom(
      ..."one two three ten fifteen twenty hundred thousand a an half quarter and point of to or at least up more than not second seconds minute minutes hour day times puff puffs every once twice few couple dozen between from 10 6-10 2.5 999 count for the o'clock past march nineteen eighty unit, ten. ml mil oh double x 3x is".split(" "),
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 14 }), (words) => {
        const tokens = tokenise(words);
        let last = 0;
        for (const { first, end, low, high, text } of findQuantities(tokens)) {
          expect(first).toBeGreaterThanOrEqual(last);
          expect(end).toBeGreaterThan(first);
          expect(end).toBeLessThanOrEqual(tokens.length);
          expect(Number.isFinite(low) && Number.isFinite(high) && low <= high && low >= 0).toBe(true);
          expect(text).not.toBe("");
          last = end;
        }
      }),
      { numRuns: 3000 },
    );
  });

  test("of two numbers said the wrong way round the smaller is the low end", () => {
    expect(findQuantities(tokenise("twice or once".split(" ")))[0]).toMatchObject({ low: 1, high: 2 });
  });

  // Four times as long takes about four times as long to read; sixteen times where every number looks at all others.
  test.each([
    ["a long unbroken run of numbers", ["one", "two", "hundred", "to", "and"]],
    ["a counted run of any length", ["eleven", "twelve"]],
  ])("%s is read in time that grows as its length does", (_run, words) => {
    const timeFor = (length: number) => {
      const tokens = tokenise(Array.from({ length }, (_, place) => words[place % words.length]!));
      const times = Array.from({ length: 5 }, () => {
        const start = performance.now();
        findQuantities(tokens);
        return performance.now() - start;
      });
      return Math.min(...times);
    };
    timeFor(1_000);
    expect(timeFor(20_000) / timeFor(5_000)).toBeLessThan(10);
  });
});
