import { describe, expect, test } from "vitest";
import { cardWith, item, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const readingCard = cardWith(`
      - { id: reading, label: A funny reading is tested again, say: [test a funny reading again], incorrect: ["ignore|disregard a funny reading"] }
`);
const readingContent = (says: string) => item(markTalk([...OPENING, `C: ${says}`], {}, readingCard), "reading").content;

describe("a wrong statement that tells to let a thing be", () => {
  test.each(["Ignore a funny reading.", "You can just ignore a funny reading."])("is told: %s", (says) => expect(readingContent(says)).toBe("incorrect"));
  test.each(["Never ignore a funny reading.", "Don't just ignore a funny reading.", "You mustn't ever ignore a funny reading."])("and not by who forbids that: %s", (says) => expect(readingContent(says)).not.toBe("incorrect"));
});
