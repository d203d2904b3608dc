import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: keeper, label: A bang - the keeper in any case, say: [run for the keeper if it bangs, run for the keeper even if it looks fine, if it bangs run for the keeper no matter how it looks] }
      - { id: lit, label: Keeps it lit every night, say: [keep the lamp lit even though nobody comes, keep the lamp lit even when the moon is bright, don't put it out unless the keeper says so] }
      - { id: smoke, label: Smoking - trims the wick, say: [if the lamp smokes trim the wick, trim the wick when the lamp smokes] }
`);
const content = (item: string, says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)!.content;

describe("what is to be done in any case", () => {
  test.each([
    ["keeper", "If it bangs you only run for the keeper if there's a lot of flame."],
    ["keeper", "If it bangs run for the keeper, only when somebody is hurt."],
    ["lit", "Keep the lamp lit, but only till the moon is bright."],
  ])("is not told for one case or up to one time alone: %s %s", (item, says) => expect(content(item, says)).not.toBe("complete"));
  test.each([
    ["keeper", "If it bangs run for the keeper."],
    ["keeper", "You only run for the keeper if it bangs."],
    ["keeper", "If it bangs run for the keeper, not only if there's a lot of flame."],
    ["lit", "Keep the lamp lit even when the moon is bright."],
    ["lit", "Keep the lamp lit even if nobody comes, only stop when the keeper says so."],
  ])("said: %s %s", (item, says) => expect(content(item, says)).toBe("complete"));
});

test("what has its own case may be told for it alone", () => expect(content("smoke", "Only trim the wick if the lamp smokes.")).toBe("complete"));
