import { describe, expect, test } from "vitest";
import { isDenied } from "./spoken.ts";

// Invented.
describe("a list without 'or' is denied as a whole", () => {
  test.each([
    ["no ibuprofen, aspirin, naproxen.", "naproxen"],
    ["please don't take ibuprofen, aspirin, naproxen.", "naproxen"],
    ["you must never take ibuprofen, aspirin, naproxen.", "aspirin"],
    ["don't take aspirin, ibuprofen, anything like that.", "ibuprofen"],
  ])("%s: %s", (sentence, word) => expect(isDenied(sentence, word)).toBe(true));

  test.each([
    ["no aspirin, paracetamol is fine.", "paracetamol"],
    ["don't wait, have some juice, then biscuits.", "juice"],
    ["no appetite, itching, dark urine.", "urine"],
    ["call us if you can't breathe, sweating, shaking.", "shaking"],
    ["no rush, shake it, press it.", "press"],
  ])("but %s: not %s", (sentence, word) => expect(isDenied(sentence, word)).toBe(false));
});
