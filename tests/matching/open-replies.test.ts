import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const CARD = cardWith(
  "      - { id: shelf, label: Keeps spare lanterns on the shelf, say: [keep the spare lanterns on the shelf, spare lanterns belong on the shelf], incorrect: [keep the spare lanterns in the cellar, store spare lanterns in the cellar] }",
  "minimum: 50",
  "  - { id: daily, label: Daily, severity: major, say: [burn the lantern every day, light it every day] }",
);
const sheet = (...lines: string[]) => markTalk([...OPENING, ...lines], {}, CARD);

describe("what a reply leaves out because it was asked belongs to what it states wrongly", () => {
  test("an item, with the reply as its evidence", () => {
    const { items, incorrect } = sheet("P: Where do I keep the spare lanterns?", "C: In the cellar.");
    expect(items[0]!.content).toBe("incorrect");
    expect(incorrect[0]!.evidence.quote).toBe("In the cellar.");
  });
  test("an unsafe statement", () => expect(sheet("P: How often do I light it?", "C: Every day.").unsafe.found.map(({ id }) => id)).toEqual(["daily"]));
});

describe("what a reply leaves out because it was asked belongs to what it states rightly", () => {
  const STORM = cardWith("      - { id: storm, label: Storm, say: [if a storm comes bring it indoors, bring it in when it storms], incorrect: [if a storm comes leave it burning] }", "minimum: 50");
  const content = (...lines: string[]) => markTalk([...OPENING, ...lines], {}, STORM).items[0]!.content;
  test.each([
    ["P: What if a storm comes?", "C: Then bring it in.", "complete"],
    ["P: And if a storm comes?", "C: Bring it indoors.", "complete"],
    ["P: And if a storm comes?", "C: Leave it burning.", "incorrect"],
    ["P: And if a storm comes?", "C: Good question, I'll come to that.", "absent"],
    ["P: And if a storm comes, do I bring it in?", "C: Have you anywhere to put it?", "absent"],
  ])("%s %s", (asked, reply, expected) => expect(content(asked, reply)).toBe(expected));
});

describe("nothing is held against the speaker", () => {
  test.each([
    ["P: Where do I keep the spare lanterns?", "C: On the shelf, they like it warm."],
    ["P: Where do I keep the spare lanterns?", "C: Not in the cellar."],
    ["P: Do I keep the spare lanterns in the cellar?", "C: You can put the empty ones in the cellar."],
    ["P: What happens if I light it every day?", "C: You would run out of oil."],
    ["P: How often do I light it?", "C: Not every day."],
  ])("%s %s", (...lines) => {
    const { incorrect, unsafe } = sheet(...lines);
    expect([...incorrect.map(({ item }) => item), ...unsafe.found.map(({ id }) => id)]).toEqual([]);
  });
});

test("'an hour or two later' has no two of something", () => {
  const card = cardWith("      - { id: shelf, label: Shelf, say: [keep it on the shelf, it belongs on the shelf] }", "minimum: 50", "  - { id: two, label: Two, severity: major, say: [have two if you forget one] }");
  const unsafe = (reply: string) => markTalk([...OPENING, "P: What if I forget one?", `C: ${reply}`], {}, card).unsafe.found.length;
  expect(unsafe("If it comes to you an hour or two later, have it then.")).toBe(0);
  expect(unsafe("Have two.")).toBe(1);
});
