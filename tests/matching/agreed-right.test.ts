import { describe, expect, test } from "vitest";
import { cardWith, item, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const CARD = cardWith(
  [
    "      - { id: shelf, label: Spare lanterns on the shelf, say: [keep the spare lanterns on the shelf, put the spare lanterns on the shelf], incorrect: [keep the spare lanterns in the cellar] }",
    "      - { id: council, label: Old ones to the council or the shop, say: [the council collects the old lanterns, bring the old lanterns back to the shop] }",
    "      - { id: flicker, label: It may flicker, say: [the lantern may flicker in the wind, it can flicker when it blows] }",
    "      - { id: call, label: Rings the keeper, say: [you need to ring the keeper, always ring the keeper], incorrect: [you don't need to ring the keeper] }",
  ].join("\n"),
  "minimum: 50",
);
const sheet = (...lines: string[]) => markTalk([...OPENING, ...lines], {}, CARD);

describe("what the patient has right and the candidate says yes to earns what is confirmed", () => {
  test.each([
    ["shelf", "P: The spare lanterns, do I put those on the shelf?", "C: Yes."],
    ["shelf", "P: So I put the spare lanterns on the shelf?", "C: Spot on."],
    ["shelf", "P: So I put the spare lanterns on the shelf?", "C: You do, every single one."],
    ["shelf", "P: So I put the spare lanterns on the shelf?", "C: You do indeed."],
    ["shelf", "P: So I put the spare lanterns on the shelf?", "C: Exactly that."],
    ["shelf", "P: I thought I'd put the spare lanterns on the shelf, would that do?", "C: That's the idea."],
    ["shelf", "P: I put the spare lanterns on the shelf. Is that right?", "C: It is, yes."],
    ["shelf", "P: They told me to put the spare lanterns on the shelf.", "C: They did, and mind you don't drop them."],
    ["council", "P: The council collects the old lanterns, or I bring the old lanterns back to the shop?", "C: Yeah, either of those."],
    ["flicker", "P: Will the lantern flicker in the wind?", "C: Now and then it does, yes."],
  ])("%s: %s %s", (id, said, reply) => {
    expect(item(sheet(said, reply), id)).toMatchObject({ content: "complete", elicitation: "confirmed", elements: [{ evidence: expect.arrayContaining([expect.objectContaining({ role: "patient" })]) }] });
  });

  test("half, where the rubric says nothing else", () => {
    expect(item(sheet("P: So I put the spare lanterns on the shelf?", "C: Spot on."), "shelf").earned).toBe(0.5);
  });
});

describe("nothing is earned", () => {
  test.each([
    ["by a yes to the candidate's own question", "C: Do you put the spare lanterns on the shelf?", "P: I do, always, and my sister too.", "C: Yes."],
    ["by a noise of listening", "P: I put the spare lanterns on the shelf.", "C: Yeah."],
    ["by wondering at it", "P: I put the spare lanterns on the shelf.", "C: You do, do you?"],
    ["by asking back", "P: My brothers put the spare lanterns on the shelf.", "C: They do?"],
    ["by the way somebody else has it", "P: So I put the spare lanterns on the shelf?", "C: That's the way my uncle told it."],
    ["by a no", "P: So I put the spare lanterns on the shelf?", "C: No, not those."],
    ["by a yes that is taken back", "P: So I put the spare lanterns on the shelf?", "C: Yes, but not yet."],
    ["by a yes to one of two", "P: Do I put the spare lanterns on the shelf or in the box?", "C: Yes."],
    ["by a yes to another thing", "P: I put the spare lanterns on the shelf. Can I buy another wick here while I wait?", "C: Yes."],
    ["by another matter", "P: So I put the spare lanterns on the shelf?", "C: Right, where did I leave my keys?"],
  ])("%s", (_, ...lines) => expect(sheet(...lines).items.map(({ content }) => content)).not.toContain("complete"));
});

describe("a reply that takes up what the patient denied", () => {
  test("denies it too: what is wrong in it is told to be right", () => {
    expect(item(sheet("P: I don't need to ring the keeper, do I?", "C: You don't, no."), "call").content).toBe("incorrect");
  });
  test("affirms it: that is told rightly", () => {
    expect(item(sheet("P: I don't need to ring the keeper, do I?", "C: You do, every time."), "call")).toMatchObject({ content: "complete", elicitation: "after-question" });
  });
});
