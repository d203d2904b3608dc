import { describe, expect, test } from "vitest";
import { cardWith, item, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const CARD = cardWith(
  [
    "      - { id: shake, label: Shakes the lantern, say: [shake the lantern, give the lantern a shake] }",
    "      - { id: polish, label: Polishes the glass every evening, say: [polish the glass every evening, rub the glass every evening], incorrect: [no need to polish the glass, polish it only on Sundays] }",
    "      - { id: fill, label: Fills it before the first walk, say: [fill it with oil before the first walk, fill it before your first walk] }",
  ].join("\n"),
  "minimum: 50",
);
const sheet = (...lines: string[]) => markTalk([...OPENING, ...lines], {}, CARD);
const held = (...lines: string[]) => sheet(...lines).incorrect.map(({ item }) => item);

describe("who asks whether a thing must be done and is told no was told that it need not be done", () => {
  test.each([
    ["shake", "P: Do I have to shake the lantern?", "C: No."],
    ["shake", "P: Should I shake the lantern?", "C: Nah, don't bother."],
    ["shake", "P: Do I need to shake the lantern?", "C: Not really."],
    ["shake", "P: Do I need to shake the lantern?", "C: Oh, you don't have to."],
    ["shake", "P: Have I to shake the lantern?", "C: You haven't."],
    ["shake", "P: Do I shake the lantern?", "C: You don't, no."],
    ["polish", "P: Do I really have to polish the glass every evening?", "C: Not unless you see a smear."],
    ["polish", "P: Do I have to polish the glass every evening?", "C: No, only on Sundays."],
  ])("%s: %s %s", (id, said, reply) => {
    const marked = sheet(said, reply);
    expect(item(marked, id).content).toBe("incorrect");
    expect(marked.incorrect[0]).toMatchObject({ item: id, reason: "the patient asked whether it must be done, and was told no", evidence: { role: "patient" } });
  });
});

describe("nothing is held against the candidate", () => {
  test.each([
    ["who says that it must", "P: Do I have to shake the lantern?", "C: No, you do, always shake it."],
    ["who says that it is best", "P: Do I have to shake the lantern?", "C: No, but it's best if you do."],
    ["who says yes", "P: Do I have to shake the lantern?", "C: Yes, every time."],
    ["who tells it rightly elsewhere", "C: So first shake the lantern.", "P: Do I have to shake the lantern?", "C: No, no, leave that for now."],
    ["where more is asked than must be done", "P: Do I have to shake the lantern twice?", "C: No, once is enough."],
    ["where it is asked whether that is all", "P: Do I have to just shake the lantern?", "C: No, you fill it as well."],
    ["where only the first time is right", "P: Do I have to fill it with oil before each walk?", "C: No, before the first."],
    ["who says only no to whether it is done", "P: Do I shake the lantern?", "C: No, gently, like this."],
    ["who says after all that it is", "P: Do I shake the lantern?", "C: You don't, no, but it's best if you do."],
    ["where it is no question of need", "P: Can I shake the lantern?", "C: No."],
  ])("%s", (_, ...lines) => expect(held(...lines)).toEqual([]));
});

test("'do that' is whatever was spoken of before", () => {
  const card = cardWith("      - { id: nightly, label: Every evening, say: [every single evening, each evening] }", "minimum: 50");
  const found = (asked: string) => markTalk([...OPENING, "C: You wind the clock.", `P: ${asked}`, "C: No, once a week."], {}, card).incorrect.length;
  expect(found("Do I have to, every single evening?")).toBe(1);
  expect(found("Do I have to do that every single evening?")).toBe(0);
});
