import { describe, expect, test } from "vitest";
import { compileRubric } from "../../../src/matching/compile.ts";
import { matchStation } from "../../../src/matching/match.ts";
import type { Learnt } from "../../../src/rubric/schema.ts";
import { toldStation, type ToldTurn } from "../../../src/station/told.ts";
import { cardWith } from "../../scoring/station-card.ts";

const card = cardWith(
  `      - id: soak
        label: Soaks the wick for fifteen minutes
        say: ["soak the wick for {quantity}", lay the wick in oil]
        quantity: { value: 15, unit: minute, tolerance: 1 }
      - id: trim
        label: Trims it every two weeks
        say: ["trim it every {quantity}"]
        quantity: { value: 2, unit: week, tolerance: 0 }`,
  "minimum: 50",
);
/** Invented: "tallow" and "ladle" speak of the soaking, "snip" of the trimming. */
const learnt: Learnt = {
  elements: {
    "soak/soak": { label: "Soaks the wick for fifteen minutes", place: 0, about: -3, turned: 0, numbers: false },
    "trim/trim": { label: "Trims it every two weeks", place: 1, about: -3, turned: 0, numbers: false },
  },
  anyhow: 0,
  words: { tallow: [0, 5, 0], ladle: [0, 5, 0], oil: [0, 3, 0], snip: [1, 5, 0] },
};
const TALK: ToldTurn[] = [
  { role: "candidate", says: "Good morning, my name is Robin and I look after the lamps in this house, so ask me anything you like about them today." },
  { role: "patient", says: "Thank you, I will." },
];
const matchOf = (says: string, known: Learnt | null = learnt) => matchStation(toldStation([...TALK, { role: "candidate", says }], "talk"), { ...compileRubric(card), learnt: known }).elements.find(({ item }) => item === "soak");

describe("a number in words that no response has", () => {
  test("is told as wrong where the second reader hears its element", () => {
    expect(matchOf("Tallow from the ladle, thirty minutes of that.", null)).toBeUndefined();
    expect(matchOf("Tallow from the ladle, thirty minutes of that.")).toMatchObject({ verdict: "wrong", reason: "said 'thirty minutes'", quantity: { low: 30, unit: "minute" } });
  });

  test("is no wrong one where the right one is said as well", () => {
    expect(matchOf("Tallow from the ladle, thirty minutes, sorry, fifteen minutes of that.")?.verdict).not.toBe("wrong");
  });

  test("is not right because the words are", () => {
    const sure: Learnt = { ...learnt, words: { ...learnt.words, tallow: [0, 9, -9] } };
    expect(matchOf("Tallow from the ladle and that is all of it.", sure)?.verdict).toBe("right");
    expect(matchOf("Tallow from the ladle and two minutes is all of it.", sure)?.verdict).not.toBe("right");
  });

  test("closes a response that fits and names none", () => {
    expect(matchOf("You lay the wick in oil, from the ladle, tallow and all, thirty minutes.", null)?.verdict).toBe("right");
    expect(matchOf("You lay the wick in oil, from the ladle, tallow and all, thirty minutes.")?.verdict).not.toBe("right");
  });

  test("that sounds like the right one is held against nobody", () => {
    expect(matchOf("Tallow from the ladle, fifty minutes of that.")?.verdict).not.toBe("wrong");
    expect(matchOf("Tallow from the ladle, forty minutes of that.")?.verdict).toBe("wrong");
  });

  test("of another kind says nothing against it", () => {
    expect(matchOf("Tallow from the ladle, in three lamps of the house.")?.verdict).not.toBe("wrong");
  });

  test("that is asked for is no statement", () => {
    expect(matchOf("Would it be tallow from the ladle for thirty minutes?")?.verdict).not.toBe("wrong");
  });

  test("is held against nobody where nothing speaks of the element", () => {
    expect(matchOf("We walk the horses for thirty minutes before the rain comes.")).toBeUndefined();
  });
});
