import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: gloves, label: Gloves off before the oil, say: [your gloves have to come off, gloves off before the oil goes in, pull off your gloves before the oil, your gloves have to come off before you pour] }
      - { id: glass, label: Wipes the glass, say: [wipe the glass, wipe the glass after the oil] }
`);
const content = (item: string, says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)!.content;

describe("what comes before something", () => {
  test.each(["After the oil's gone in, that's when your gloves have to come off.", "Your gloves have to come off after the oil."])("is not told for after it: %s", (says) =>
    expect(content("gloves", says)).not.toBe("complete"));
  test.each([
    "Your gloves have to come off.",
    "Gloves off before the oil goes in.",
    "After you've washed, your gloves have to come off.",
    "Your gloves have to come off, not after the oil's in.",
    "Your gloves have to come off, and after the oil wait a minute.",
    "Your gloves have to come off before the oil goes in, and once the oil is in they go back on.",
  ])("said: %s", (says) => expect(content("gloves", says)).toBe("complete"));
});

test("what comes before nothing may be told for after it", () => expect(content("glass", "After the oil's in, wipe the glass.")).toBe("complete"));
