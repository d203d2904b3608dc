import { describe, expect, test } from "vitest";
import { isDenied } from "./spoken.ts";

// Invented: a denial reaches over what parts it from what it denies.
describe("a denial is carried", () => {
  test.each([
    ["this is not a toy for the cat", "toy"],
    ["it is not your spare lantern", "lantern"],
    ["polishing it is not a good idea", "polishing"],
    ["never do the following: feed it toast, or sing to it", "toast"],
    ["never do the following: feed it toast, or sing to it", "sing"],
    ["please don't, whatever anyone tells you, feed it toast", "feed"],
    ["you should not, even if you are bored, feed it toast", "feed"],
    ["don't tip it over and then polish it", "polish"],
    ["you may be tempted to feed it toast, but please don't do that", "toast"],
    ["the shop may say feed it toast, ignore that", "toast"],
    ["the worst thing you can do is feed it toast", "feed"],
    ["it's a myth that you can feed it toast", "feed"],
    ["under no circumstances feed it toast", "feed"],
    ["so it has a little hook hold the lantern over the hook and gently lower the ring on to the hook don't let the glass touch the wall", "touch"],
  ])("%s: %s", (sentence, word) => expect(isDenied(sentence, word)).toBe(true));

  test.each([
    ["never do the following: feed it toast. Then polish it", "polish"],
    ["so nothing leaks out and then what you do is polish it", "polish"],
    ["people don't, and have a look inside", "look"],
    ["don't feed it, and then polish it", "polish"],
    ["feed it toast, please", "toast"],
  ])("no further: %s: %s", (sentence, word) => expect(isDenied(sentence, word)).toBe(false));
});
