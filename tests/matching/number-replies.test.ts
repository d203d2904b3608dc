import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const CARD = cardWith(`
      - { id: drops, label: One drop, say: ["squeeze out {quantity} for the flame", "put {quantity} in the lamp"], quantity: { value: 1, unit: drop } }
      - { id: often, label: Twice a day, say: ["fill the lamp {quantity}", "light it {quantity}"], quantity: { value: 2, unit: time-per-day } }
      - { id: wick, label: Wick, say: ["trim the wick {quantity}", "leave the wick to soak for {quantity}"], quantity: { value: 10, unit: minute } }
      - { id: burn, label: Burning, say: ["let the flame burn for {quantity}"], quantity: { value: 3, unit: hour } }`);
const marks = (question: string, reply: string) => {
  const { items } = markTalk([...OPENING, `P: ${question}`, `C: ${reply}`], {}, CARD);
  return Object.fromEntries(items.filter(({ content }) => content !== "absent").map(({ id, content }) => [id, content]));
};

describe("a number that was asked for says the element that it is the number of", () => {
  test.each([
    ["How often do I do it?", "Twice a day.", { often: "complete" }],
    ["How many times a day do I have it?", "Two.", { often: "complete" }],
    ["How often?", "Well, it's twice a day.", { often: "complete" }],
    ["How many drops?", "One.", { drops: "complete" }],
    ["And how many drops is it?", "Oh, just the one.", { drops: "complete" }],
    ["How long do I let it burn?", "Three hours.", { burn: "complete" }],
  ])("rightly: %s %s", (question, reply, expected) => expect(marks(question, reply)).toEqual(expected));

  test.each([
    ["How often do I do it?", "Once a day.", { often: "incorrect" }],
    ["How many times a day do I have it?", "Four.", { often: "incorrect" }],
    ["How many drops do I have?", "Three, I think.", { drops: "incorrect" }],
    ["How many of the drops do I have?", "Three, I think.", { drops: "incorrect" }],
    ["How long do I let it burn?", "Ten minutes.", { burn: "incorrect" }],
  ])("wrongly: %s %s", (question, reply, expected) => expect(marks(question, reply)).toEqual(expected));
});

describe("how long the treatment lasts is asked without naming it", () => {
  const course = cardWith(`
      - { id: course, label: Seven evenings, say: ["a {quantity} course", "light it for {quantity}"], quantity: { value: 7, unit: day } }
      - { id: wick, label: Wick, say: ["leave the wick to soak for {quantity}"], quantity: { value: 2, unit: day } }`);
  const content = (question: string, reply: string) => markTalk([...OPENING, `P: ${question}`, `C: ${reply}`], {}, course).items.find(({ id }) => id === "course")!.content;
  test.each(["How long is he on it?", "And how long do I take them?", "How long do I have to give it for?"])("%s", (question) => {
    expect(content(question, "Seven days.")).toBe("complete");
    expect(content(question, "It's a week.")).toBe("complete");
    expect(content(question, "Three days.")).toBe("incorrect");
  });
  test("of something else it says nothing", () => expect(content("How long have you been on the road?", "Seven days.")).toBe("absent"));
});

describe("it says nothing where the question may be about something else", () => {
  test.each([
    ["How often do I polish the glass?", "Once a week."],
    ["How many drops are in the bottle?", "Two hundred."],
    ["How many drops are left?", "Six."],
    ["How long have I got?", "Three hours."],
    ["How often?", "Once a week."],
    ["Do I do it often?", "Once a day will be enough for the cat."],
  ])("%s %s", (question, reply) => expect(marks(question, reply)).toEqual({}));
});

describe("nor where the reply does not give the number", () => {
  test.each([
    ["How often do I do it?", "It depends, some have it four times a day."],
    ["How often do I do it?", "Not three times a day."],
    ["How many drops do I have?", "Let me look at the label first and then I'll come back to you, it may be three."],
  ])("%s %s", (question, reply) => expect(marks(question, reply)).toEqual({}));
});
