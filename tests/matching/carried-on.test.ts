import { describe, expect, test } from "vitest";
import { cardWith, item, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const CARD = cardWith(
  [
    "      - id: trim",
    "        label: Trims the wick for ten seconds",
    '        say: ["turn the wick down for {quantity}", "keep the wick low for {quantity}"]',
    "        quantity: { value: 10, unit: second, tolerance: 1 }",
    "      - id: polish",
    "        label: Polishes the glass with a dry cloth",
    "        say: [polish the glass with a dry cloth, rub the glass with a dry cloth]",
    "        incorrect: [polish|rub|wipe the glass with a wet sponge]",
  ].join("\n"),
  "minimum: 50",
  "  - { id: cellar, label: Cellar, severity: major, say: [the spare lanterns go down in the cellar, spare lanterns live in the cellar] }",
);
const sheet = (...lines: string[]) => markTalk([...OPENING, ...lines], {}, CARD);
const held = (...lines: string[]) => {
  const { incorrect, unsafe } = sheet(...lines);
  return [...incorrect.map(({ item }) => item), ...unsafe.found.map(({ id }) => id)];
};

describe("a yes to what the patient asks of the candidate's last sentence is a yes to both together", () => {
  test("a number", () => expect(item(sheet("C: Then you turn the wick down.", "P: For a second or two?", "C: Yeah, that's plenty."), "trim").content).toBe("incorrect"));
  test.each([
    ["C: Then you polish the glass.", "P: With a wet sponge?", "C: Yes, that's fine."],
    ["C: Then you polish the glass.", "P: Can I do that with a wet sponge?", "C: Yes, of course."],
    ["C: Right, so then you polish the glass.", "P: And with a wet sponge?", "C: Exactly."],
  ])("a wrong statement: %s %s %s", (...lines) => expect(held(...lines)).toEqual(["polish"]));
  test("an unsafe statement", () => {
    const { unsafe } = sheet("C: The spare lanterns, you put those away.", "P: Down in the cellar?", "C: Yes, that's right.");
    expect(unsafe.found).toEqual([expect.objectContaining({ id: "cellar", evidence: expect.objectContaining({ quote: "Yes, that's right." }) })]);
  });
});

describe("nothing is held against the candidate", () => {
  test.each([
    ["who says no", "C: Then you polish the glass.", "P: With a wet sponge?", "C: No, a dry cloth."],
    ["who only listens", "C: Then you polish the glass.", "P: I once used a wet sponge.", "C: Right, and then you light it."],
    ["who has asked", "C: How do you polish the glass?", "P: With a wet sponge?", "C: Okay, let me show you."],
    ["where the patient answers", "C: Then you polish the glass.", "P: Yes, I have a wet sponge.", "C: Perfect."],
    ["where the patient says two things", "C: Then you polish the glass.", "P: I see. My wet sponge is at home?", "C: Yes, that's fine."],
    ["where the patient offers two", "C: Then you polish the glass.", "P: With a dry cloth or a wet sponge?", "C: Yes, the cloth."],
  ])("%s", (_, ...lines) => expect(held(...lines)).toEqual([]));
});
