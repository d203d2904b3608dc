import { describe, expect, test } from "vitest";
import { tokenise } from "../../src/language/token.ts";

const texts = (text: string) => tokenise(text.split(/\s+/)).map((token) => token.text).join(" ");
const stems = (text: string) => tokenise(text.split(/\s+/)).map((token) => token.stem);

describe("written words become tokens", () => {
  test.each([
    ["Don't shake it", "do not shake it"],
    ["dont shake it", "do not shake it"],
    ["You can’t, you won’t", "you can not you will not"],
    ["it's the patient's inhaler", "it is the patient inhaler"],
    ["metered-dose inhaler", "metered dose inhaler"],
    ["wait 10-15s", "wait 10 to 15 s"],
    ["5ml or 2.5 ml", "5 ml or 2.5 ml"],
    ["30°C, 1,000 units", "30 degrees celsius 1000 units"],
    ["½ a tablet", "half a tablet"],
    ["1½ hours", "1.5 hours"],
    [".5 ml", "0.5 ml"],
    ["wait.", "wait"],
    ["both parents' names 'quoted'", "both parents names quoted"],
    ["okay... so — um", "okay so um"],
    ["café", "cafe"],
  ])("%s", (written, expected) => expect(texts(written)).toBe(expected));

  test("each token knows its written word and the punctuation behind it", () => {
    expect(tokenise(["Don't", "shake,", "okay?"]).map(({ text, word, after }) => [text, word, after])).toEqual([
      ["do", 0, ""],
      ["not", 0, ""],
      ["shake", 1, ","],
      ["okay", 2, "?"],
    ]);
  });

  test("inflections of one word share a stem, irregular ones too", () => {
    expect(new Set(stems("shake shakes shaking shaken shook")).size).toBe(1);
    expect(new Set(stems("hold holding held holds")).size).toBe(1);
    expect(new Set(stems("breathe breathing breath")).size).toBe(1);
  });

  // Porter 1980, "An algorithm for suffix stripping", Program 14(3), examples in the text of steps 1a to 5b.
  test.each([
    ["caresses", "caress"], ["ponies", "poni"], ["cats", "cat"], ["agreed", "agre"], ["plastered", "plaster"],
    ["motoring", "motor"], ["conflated", "conflat"], ["hopping", "hop"], ["falling", "fall"], ["happy", "happi"],
    ["relational", "relat"], ["conditional", "condit"], ["operator", "oper"], ["triplicate", "triplic"],
    ["formative", "form"], ["revival", "reviv"], ["adjustable", "adjust"], ["probate", "probat"], ["controlling", "control"],
  ])("the stem of %s is Porter's %s", (word, expected) => expect(stems(word)).toEqual([expected]));
});
