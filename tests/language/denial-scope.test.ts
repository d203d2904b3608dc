import { describe, expect, test } from "vitest";
import { isDenied } from "./spoken.ts";

// Invented.
describe("what need not be known or asked first is not what is to be done", () => {
  test.each([
    ["you don't need to know what she has taken to call nine one one.", "call"],
    ["you don't have to be sure to ring an ambulance.", "ring"],
    ["you don't need to ask anybody to ring us.", "ring"],
    ["you don't have to wait for anybody to ring an ambulance.", "ring"],
  ])("%s: %s", (sentence, word) => expect(isDenied(sentence, word)).toBe(false));

  test.each([
    ["you don't need to know how to inject it.", "inject"],
    ["you don't need to know what she wants to drink.", "drink"],
    ["you don't need to call nine one one.", "call"],
  ])("but %s: %s", (sentence, word) => expect(isDenied(sentence, word)).toBe(true));
});

describe("what need not be told is denied, though 'call' opens a clause elsewhere", () => {
  test.each([
    ["there's no call to tell the dentist.", "tell"],
    ["if you're poorly, no call to tell the clinic.", "tell"],
    ["if you're poorly, no cause to tell the clinic.", "tell"],
    ["if you're poorly and not eating, no need to tell the clinic.", "tell"],
  ])("%s: %s", (sentence, word) => expect(isDenied(sentence, word)).toBe(true));

  test.each([
    ["you're not eating so tell the clinic.", "tell"],
    ["if she's not waking call an ambulance.", "ambulance"],
  ])("but %s: not %s", (sentence, word) => expect(isDenied(sentence, word)).toBe(false));
});

test("how many somebody has is part of what they are told not to do", () => {
  expect(isDenied("don't go fiddling with how many you have off your own bat.", "bat")).toBe(true);
  expect(isDenied("don't rush it you have a minute.", "minute")).toBe(false);
});
