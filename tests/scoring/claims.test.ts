import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "./station-card.ts";

const claims = (...lines: string[]) => markTalk([...OPENING, ...lines]).claims.map(({ evidence }) => evidence.quote);

describe("other statements with numbers are clinical ones that the rubric does not list", () => {
  test("a dose of something else", () => {
    expect(claims("C: Swallow forty milligrams at supper.")).toEqual(["Swallow forty milligrams at supper."]);
  });

  test("an amount beside words that come near an element and do not earn it", () => {
    expect(claims("C: Clean the case in forty millilitres.")).toEqual(["Clean the case in forty millilitres."]);
  });

  test("a time beside a word of the station", () => {
    expect(claims("C: The grip wears out within six months.")).toEqual(["The grip wears out within six months."]);
  });

  test("a time that has nothing to do with the station is none", () => {
    expect(claims("C: The bus reaches the square within twenty minutes.")).toEqual([]);
  });

  test("small talk with a number is none", () => {
    expect(claims("C: My uncle kept bees for thirty years, he lost a hive within a week of the flood.")).toEqual([]);
  });

  test("a number that an element of the rubric waits for, in other words, is none", () => {
    expect(claims("C: With all that breath inside, count slowly, it is ten seconds until you may let go.")).toEqual([]);
  });

  test("a number that contradicts the element it comes near is shown to a person", () => {
    const sheet = markTalk([...OPENING, "C: That case, nine times a day."]);
    expect([...sheet.claims.map(({ evidence }) => evidence.quote), ...sheet.incorrect.map(({ evidence }) => evidence.quote)].join(" ")).toContain("nine times a day");
  });

  test("how often a day, with nothing else said, is one where the rubric asks how often a day", () => {
    const asked = ["P: How often is it?", "C: It's twice a day."];
    expect(claims(...asked)).toEqual(["It's twice a day."]);
    const other = cardWith(`      - id: shake
        label: Shakes it
        weight: 1
        elements:
          - { id: shake, label: Shakes it, say: [shake it well, give it a shake, shake the bottle hard] }`);
    expect(markTalk([...OPENING, ...asked], {}, other).claims).toEqual([]);
  });
});
