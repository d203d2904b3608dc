import nlp from "compromise/three";
import parseDuration from "parse-duration";
import { describe, expect, test } from "vitest";
import { readNumber } from "../../src/language/number-words.ts";
import { DAYS } from "../../src/language/quantity-frequency.ts";
import { findQuantities } from "../../src/language/quantity.ts";
import { tokenise } from "../../src/language/token.ts";

/*
 * Other people's readers beside ours, as a check only: none of them is good enough for doses in speech.
 */
const find = (text: string) => findQuantities(tokenise(text.split(/\s+/)));

interface Spelled {
  numbers(): { toText(): { text(): string }; json(): { number: { num: number | null } }[] };
}
const english = (text: string) => nlp(text) as unknown as Spelled;

describe("number words beside compromise", () => {
  // Spelled by compromise, read by us: two hands. Above 99,999 it spells wrongly ("nine hundred thousand ninety nine thousand").
  const spelled = [...Array(1200).keys(), ...Array.from({ length: 400 }, (_, place) => 1200 + place * 247)].filter((value) => value < 100_000);

  test(`${spelled.length} whole numbers that it spells out are read as the numbers they are`, () => {
    const misread = spelled.filter((value) => {
      const tokens = tokenise(english(String(value)).numbers().toText().text().split(" "));
      const reading = readNumber(tokens, 0);
      return reading?.value !== value || reading.end !== tokens.length;
    });
    expect(misread).toEqual([]);
  });

  // What compromise 14 makes of the same words, written down when the two were compared.
  test.each<[said: string, ours: number[], theirs: (number | null)[], why: string]>([
    ["fifteen minutes", [15], [15], "alike"],
    ["a hundred and twenty doses", [120], [120], "alike"],
    ["two and a half hours", [2.5], [2.5], "alike"],
    ["one point five ml", [1.5], [1.5], "alike"],
    ["two fifty micrograms", [250], [250], "alike"],
    ["28 days", [28], [28], "alike"],
    ["ten seconds", [10], [5], "it takes 'seconds' for halves"],
    ["thirty seconds before the second puff", [30], [15, 2], "halves again, and an ordinal taken as a number"],
    ["ten, fifteen seconds", [10], [17.5], "it adds ten to fifteen halves; a range for us"],
    ["half a minute", [0.5], [0], "'half a' has no value for it"],
    ["a couple of minutes", [2], [], "unknown to it"],
    ["an hour and a half", [1.5], [], "unknown to it"],
    ["a dozen puffs", [12], [], "unknown to it"],
    ["one of them", [], [1], "a pronoun for us"],
    ["half past eight", [], [8], "a clock time for us"],
    ["nine nine nine", [], [9, 9, 9], "a telephone number for us"],
    ["the fourth of march nineteen eighty two", [], [4, 19, 80, 2], "a date for us"],
  ])("'%s': %j for us, %j for it: %s", (said, ours, theirs, why) => {
    expect(find(said).map(({ low }) => low)).toEqual(ours);
    expect(english(said).numbers().json().map(({ number }) => number.num)).toEqual(theirs);
    if (why === "alike") expect(ours).toEqual(theirs);
  });
});

describe("durations beside parse-duration", () => {
  /** In seconds. */
  const ours = (said: string) => find(said).map(({ low, unit }) => low * DAYS[unit!]! * 86_400);
  const theirs = (said: string) => parseDuration(said, "s");

  test.each(["10 seconds", "10s", "90 sec", "1 minute", "2 mins", "1.5 hours", "1 hour 15 minutes", "2 minutes and 30 seconds", "3 days", "2 weeks", "1 hr", "20 hrs"])(
    "'%s' is as long for both", (said) => {
      expect(ours(said)).toHaveLength(1);
      expect(ours(said)[0]).toBeCloseTo(theirs(said)!, 6);
    },
  );

  test.each<[string, number, number | null, string]>([
    ["1 month", 30 * 86_400, 30.4375 * 86_400, "30 days for a frequency here; 365.25/12 there; comparisons take 28 to 31 days"],
    ["1 year", 365 * 86_400, 365.25 * 86_400, "a leap day shared out there"],
    ["1 fortnight", 14 * 86_400, null, "unknown to it"],
  ])("'%s': %d s for us, %s s for it: %s", (said, here, there) => {
    expect(ours(said)).toEqual([here]);
    expect(theirs(said)).toBe(there);
  });

  test("it reads no words: 'ten seconds' is nothing to it", () => {
    expect(theirs("ten seconds")).not.toBe(10);
    expect(ours("ten seconds")).toEqual([10]);
  });
});
