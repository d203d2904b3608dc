import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: hold, label: Counts before the wick comes out, say: ["count to {quantity} before you pull it out", "hold it for {quantity} then slide the wick out", "count to {quantity}"], quantity: { value: 10, unit: second } }
      - { id: gloves, label: Gloves on first, say: [gloves on before you pour, put your gloves on then pour, put your gloves on] }
      - { id: glass, label: Wipes the glass, say: [wipe the glass] }
`);
const content = (item: string, says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)!.content;

describe("two steps told the other way round tell neither", () => {
  test.each(["When it's lit, pull the wick out, and then count to ten seconds.", "Slide it out of the lamp and then count to ten seconds."])("%s", (says) => expect(content("hold", says)).not.toBe("complete"));
  test.each(["Pour first, then put your gloves on.", "Do your pouring first, and only then put your gloves on."])("%s", (says) => expect(content("gloves", says)).not.toBe("complete"));
});

describe("as it should be, or about something else", () => {
  test.each([
    "Count to ten seconds before you pull it out.",
    "Pull the cover off, push it in, count to ten seconds and then pull it out.",
    "Push it in, turn the key, and then count to ten seconds.",
    "Before you pull the wick out, stop and then count to ten seconds.",
    "The wick comes out afterwards, and then count to ten seconds.",
  ])("%s", (says) => expect(content("hold", says)).toBe("complete"));
  test.each(["Put your gloves on first, then pour.", "Gloves on first and then you pour.", "Every time, first use or fiftieth, put your gloves on."])("%s", (says) => expect(content("gloves", says)).toBe("complete"));
});

test("what is no first of two steps may stand behind 'then'", () => expect(content("glass", "Pour first, and then wipe the glass.")).toBe("complete"));
