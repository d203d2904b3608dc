import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: others, label: Other medicines, kind: ask, say: ["any other tablets, creams or inhalers"] }
      - { id: count, label: Counts to ten with the lid shut, say: [keep the lid shut and count to ten, count to ten] }
      - { id: scratchy, label: May feel scratchy, say: [it may feel scratchy, scratchy and sore] }
      - { id: sugar, label: Sugar first, say: [have some sugar tablets, a few glucose tablets] }
      - { id: cool, label: Kept cool, say: [keep it somewhere cool, a cool place] }
`);
const content = (item: string, says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)!.content;

describe("what is said of another device is not said of this one, though an item asks for it", () => {
  test.each([
    ["count", "With your brown inhaler it's hold your breath and count slowly to ten."],
    ["scratchy", "The nasal spray you had last year may sting a touch and leave you scratchy and sore."],
    ["cool", "Your blood pressure machine wants to be kept in a cool place."],
    ["cool", "Your cholesterol tablets want to be kept in a cool place."],
    ["cool", "Keep your loyalty card somewhere cool."],
  ])("%s: %s", (item, says) => expect(content(item, says)).not.toBe("complete"));
});

describe("a device that is only named beside closes nothing", () => {
  test.each([
    ["count", "Not the inhaler, this one: count slowly to ten."],
    ["count", "Unlike your old inhaler, you count to ten."],
    ["count", "That was the inhaler, with these you count to ten."],
    ["count", "You've an inhaler at home. Count to ten with this."],
    ["sugar", "A few glucose tablets, that's the first thing."],
    ["cool", "Next to your bus pass if you like, in a cool place."],
    ["cool", "She may go through a bad patch in summer so a cool place is best."],
  ])("%s: %s", (item, says) => expect(content(item, says)).toBe("complete"));
});
