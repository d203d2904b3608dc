import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: glow, label: Ears that glow must alarm, red_flag: true, say: [glowing ears, your ears start to glow] }
      - { id: sneeze, label: Sneezing is harmless, say: [you may sneeze] }
      - { id: allergies, label: Asks about allergies, kind: ask, say: [do you have any allergies, are you allergic to anything] }
`);
const content = (item: string, says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)?.content;

describe("who names a red flag and says that it is nothing states it wrongly", () => {
  test.each(["Glowing ears are perfectly normal with these.", "If your ears start to glow it's only the lamp.", "Your ears start to glow, that just means it's working.", "Glowing ears are just one of those things.", "If your ears start to glow, give it a few days.", "Glowing ears, there's no need to ring the doctor."])("%s", (says) => expect(content("glow", says)).toBe("incorrect"));
});

describe("who names it as a red flag says it", () => {
  test.each(["Glowing ears are not normal, so ring us.", "If your ears start to glow, ring the clinic.", "Sneezing is nothing to worry about. Glowing ears, though, ring us at once.", "Your ears start to glow: that's nothing to wait with, ring us.", "Glowing ears are nothing to be ashamed of.", "Glowing ears are nothing to sit on.", "Don't ignore glowing ears.", "If your ears start to glow, don't give it a few days, ring."])("%s", (says) => expect(content("glow", says)).toBe("complete"));
});

test("what is no red flag may be called harmless", () => expect(content("sneeze", "You may sneeze, that's perfectly normal.")).toBe("complete"));

describe("who says that a question is not asked has not asked it", () => {
  test.each(["Any allergies, I won't ask about that today.", "You don't need to tell me whether you're allergic to anything."])("%s", (says) => expect(content("allergies", says)).not.toBe("complete"));
  test("who asks has asked", () => expect(content("allergies", "Do you have any allergies?")).toBe("complete"));
});
