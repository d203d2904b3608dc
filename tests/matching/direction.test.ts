import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: dust, label: Dusts the lamp first, say: [dust the lamp before you light it, dust the lamp], incorrect: [dust the lamp straight after you light it, lighting it first then dusting the lamp] }
      - { id: squeeze, label: Squeezes as the arm turns, say: [squeeze the handle as you turn the lever] }
      - { id: hand, label: Opposite hand, say: [use your right hand for the left ear] }
      - { id: rags, label: Rags go in the iron tub, say: [the old rags go in the iron tub, oily rags go in the tub], incorrect: [put the rags in the household rubbish] }
      - { id: soot, label: Soot must alarm, say: [a sooty chimney, ring us about a sooty chimney], incorrect: [hang a curtain over a sooty chimney and carry on] }
      - { id: oil, label: Oils it on another day, say: [oil the crank on another day] }
      - { id: cover, label: Cover off before the oil, say: [the cover off before the oil goes in, the cover has to come off first] }
      - { id: lens, label: The lens after the mirror, say: [the lens can come after the mirror, set the lens after the mirror] }
      - { id: wicks, label: Two wicks, say: ["put {quantity} wicks in each holder"], not_with: [turn], quantity: { value: 2, unit: number } }
`);
const content = (says: string, item: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)!.content;

describe("what goes another way than the response does not say it", () => {
  test.each([
    ["Dust the lamp after you light it.", "dust"],
    ["Squeeze the handle before you turn the lever.", "squeeze"],
    ["Use your right hand for the right ear and your left hand for the left ear.", "hand"],
    ["The old rags go in the household rubbish.", "rags"],
    ["Hang a curtain over a sooty chimney and carry on.", "soot"],
    ["Oil the crank on the same day.", "oil"],
    ["Dust the lamp, before, no, hang on, listen to me, I mean after you light it.", "dust"],
    ["You set the lens first and then the mirror.", "lens"],
    ["The cover comes off after the oil, not before.", "cover"],
  ])("%s", (says, item) => expect(content(says, item)).not.toBe("complete"));

  test.each([
    ["Dust the lamp before you light it.", "dust"],
    ["Don't light it and dust the lamp after, dust the lamp before you light it.", "dust"],
    ["Squeeze the handle as you turn the lever.", "squeeze"],
    ["Right, use your right hand for the left ear.", "hand"],
    ["The old rags go in the iron tub.", "rags"],
    ["Ring us about a sooty chimney before you hang the curtain.", "soot"],
    ["Oil the crank on another day, the same one each week.", "oil"],
    ["The cover comes off before the oil, not after.", "cover"],
    ["The cover comes off first, and after the oil you dust it.", "cover"],
    ["After you've washed your hands the cover has to come off.", "cover"],
    ["The mirror first, then set the lens after the mirror.", "lens"],
  ])("said all the same: %s", (says, item) => expect(content(says, item)).toBe("complete"));
});

describe("a word of `not_with`", () => {
  test("closes in the same instruction", () => expect(content("Put two wicks in each holder with a turn.", "wicks")).not.toBe("complete"));
  test("does not in the next one, though nothing parts them", () => expect(content("Put two wicks in each holder turn the lever to the left.", "wicks")).toBe("complete"));
});
