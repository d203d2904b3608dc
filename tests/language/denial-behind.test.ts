import { describe, expect, test } from "vitest";
import { isDenied } from "./spoken.ts";

// Invented.
describe("what is bad in a case only names the case, and denies nothing of what is done then", () => {
  test.each([
    ["wear both if it is bad", "wear"],
    ["wear both if the pain is bad", "both"],
    ["take it when the nights are dangerous", "take"],
    ["wear both if that is bad", "both"],
    ["wear both when this is bad", "wear"],
    ["if your neighbour's lantern is bad she could try yours", "lantern"],
    ["if your neighbour's lantern is bad give him yours", "give"],
  ])("%s: not %s", (sentence, word) => expect(isDenied(sentence, word)).toBe(false));

  test.each([
    ["wearing both is bad", "wearing"],
    ["never wear both if it is bad", "wear"],
  ])("but %s: %s", (sentence, word) => expect(isDenied(sentence, word)).toBe(true));
});
