import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: knows, label: Asks what is known, kind: ask, say: [what do you understand about the lantern, do you understand how the lantern works] }
      - { id: back, label: Has it told back, kind: teach-back, say: [show me how you would use the lantern, talk it through, show how you would use the lantern] }
`);
const content = (item: string, says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)?.content;

describe("what was known before is asked", () => {
  test("in so many words", () => expect(content("knows", "What do you understand about the lantern?")).toBe("complete"));
  test("not by asking whether all is understood", () => expect(content("knows", "Do you understand all that about the lantern?")).not.toBe("complete"));
});

describe("a teach-back is asked for", () => {
  test.each(["Show me how you would use the lantern.", "I'll get you to show me how you would use the lantern."])("%s", (says) => expect(content("back", says)).toBe("complete"));
  test.each(["Show your family how you would use the lantern.", "Let's talk it through."])("not by: %s", (says) => expect(content("back", says)).not.toBe("complete"));
});
