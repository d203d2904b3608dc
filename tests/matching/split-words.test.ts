import { describe, expect, test } from "vitest";
import { SplitIndex } from "../../src/matching/split-words.ts";
import { tokenise } from "../../src/language/token.ts";

// Invented mis-hearings.
const index = SplitIndex.of(["warfarin", "ibuprofen", "glucose", "inject", "needle", "pharmacist", "breathing", "everyday", "internet", "button", "lancet", "whatever", "begin"]);

/** Words that the first of these, with those behind it, may have been. */
const heard = (says: string) => index.at(tokenise(says.split(" ")), 0);

describe("little words that say a long one together are found as it", () => {
  test.each([
    ["wharf a ring tablets", "warfarin", 3],
    ["glue coast tablets", "glucose", 2],
    ["in jacked slowly", "inject", 2],
    ["knee dell on", "needle", 2],
    ["farmer cyst said", "pharmacist", 2],
  ])("%s: %s", (says, text, parts) => expect(heard(says)).toEqual([{ text, parts }]));
});

describe("everyday words are what they are", () => {
  test.each(["hand on it", "what if i", "goes in", "back in", "but on the", "knee, dull", "glue in the"])("%s", (says) => expect(heard(says)).toEqual([]));
});
