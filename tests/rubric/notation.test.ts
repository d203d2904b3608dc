import { describe, expect, test } from "vitest";
import { notationFaults } from "../../src/rubric/notation.ts";

const messages = (phrase: string) => notationFaults(phrase).map(({ message }) => message);

describe("the notation of phrases", () => {
  test.each(["shake it well", "shake|rattle it", "(i'm|i am) the pharmacist", "hold for {quantity}|(as long as you can)", "swallow {quantity}, then drink", "take ({quantity}.|all of it)", "my name's {Name}!", "what next?"])("%s can be read", (phrase) => {
    expect(messages(phrase)).toEqual([]);
  });

  test.each([
    ["take {quantitiy} a day", "'{quantitiy}' is no place"],
    ["take {quantity} a day {", "'{' is no place"],
    ["a {quantity}-day course", "'{quantity}-day' is no place"],
    ["take {quantity}{name}", "'{quantity}{name}' is no place"],
    ["take { quantity } a day", "'{' is no place"],
    ["it helps it go (in|down, every day", "never closed"],
    ["it helps it go in|down), every day", "closes nothing"],
    ["((a b)|c) d e", "inside another"],
    ["orange||juice", "an alternative is empty"],
    ["juice | helps", "an alternative is empty"],
    ["helps it|", "an alternative is empty"],
    ["|||", "an alternative is empty"],
    ["()", "an alternative is empty"],
    ["(a b|) c", "an alternative is empty"],
    ["(|a b) c", "an alternative is empty"],
  ])("%s cannot: %s", (phrase, message) => {
    expect(messages(phrase)[0]).toContain(message);
  });
});
