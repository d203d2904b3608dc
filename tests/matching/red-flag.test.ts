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
  test.each(["Glowing ears are just your age.", "Glowing ears, that happens at your age.", "Glowing ears are perfectly normal with these.", "Glowing ears are usually nothing.", "If your ears start to glow it's only the lamp.", "Your ears start to glow, that just means it's working.", "Glowing ears are just one of those things.", "If your ears start to glow, give it a few days.", "Glowing ears, there's no need to ring the doctor.", "Glowing ears, well, that comes with it.", "Even if you get glowing ears it's only from the lamp."])("%s", (says) => expect(content("glow", says)).toBe("incorrect"));
});

describe("who names it as a red flag says it", () => {
  test.each(["Glowing ears are not normal, so ring us.", "If your ears start to glow, ring the clinic.", "Sneezing is nothing to worry about. Glowing ears, though, ring us at once.", "Your ears start to glow: that's nothing to wait with, ring us.", "Glowing ears are nothing to be ashamed of.", "Glowing ears are nothing to sit on.", "Don't ignore glowing ears.", "Glowing ears are usually nothing, but ring us.", "If your ears start to glow, don't give it a few days, ring.", "If your ears start to glow, don't just put it down to the lamp.", "If your ears start to glow, don't think it's just the lamp.", "Glowing ears, and any warmth that comes with it, want seeing to.", "Glowing ears, even if you think it's only from the lamp, want seeing to.", "Don't worry about your ears unless they start to glow.", "Glowing ears, at your age, want looking at.", "If your ears start to glow, don't think it's just your age.", "Glowing ears aren't something you just carry on with.", "Glowing ears, people say ah it's only the lamp, ring us.", "If your ears start to glow some people think it's only the lamp and sit on it."])("%s", (says) => expect(content("glow", says)).toBe("complete"));
});

describe("and so does who says so in the next sentence, of nothing else", () => {
  test.each(["You may get glowing ears. I wouldn't worry about that.", "Your ears start to glow. That's normal.", "Your ears start to glow. It's normal to get that.", "If your ears start to glow. It's nothing to worry about, just carry on."])("%s", (says) => expect(content("glow", says)).toBe("incorrect"));
  test.each(["You may get glowing ears. Then ring us. Sneezing is normal.", "Glowing ears, ring us about those. That's normal, people do ring.", "You may get glowing ears. Small blisters are normal.", "You may get glowing ears. That's not normal.", "You may get glowing ears. Don't worry about the late hour, just come in.", "You may get glowing ears. That's normal, but ring us the same day.", "Watch for glowing ears. It's normal to feel a bit low the day after.", "Watch for glowing ears. Don't worry about it, just tell us."])("%s", (says) => expect(content("glow", says)).toBe("complete"));
});

describe("and who replies so to a patient who names it", () => {
  const reply = (asks: string, says: string) => markTalk([...OPENING, `P: ${asks}`, `C: ${says}`], {}, card).items.find(({ id }) => id === "glow")?.content;
  test("that is normal", () => expect(reply("What if I get glowing ears?", "That's perfectly normal with these.")).toBe("incorrect"));
  test.each(["Don't worry about it now, but ring us that day.", "Don't worry about that yet, I'll come to that.", "Nothing to worry about as long as you tell us."])("but not: %s", (says) => expect(reply("What if I get glowing ears?", says)).not.toBe("incorrect"));
});

test("what is no red flag may be called harmless", () => expect(content("sneeze", "You may sneeze, that's perfectly normal.")).toBe("complete"));

describe("who says that a question is not asked has not asked it", () => {
  test.each(["Any allergies, I won't ask about that today.", "You don't need to tell me whether you're allergic to anything."])("%s", (says) => expect(content("allergies", says)).not.toBe("complete"));
  test("who asks has asked", () => expect(content("allergies", "Do you have any allergies?")).toBe("complete"));
});

describe("what the reply tells to do behind it stays unsafe, whatever it asks for besides", () => {
  const risky = cardWith("      - { id: glow, label: Ears that glow must alarm, red_flag: true, say: [glowing ears] }", "minimum: 50", "  - { id: stop, label: Stops the lamp oil when unwell, severity: major, say: [stop your lamp oil when you are unwell] }");
  const unsafe = (says: string) => markTalk([...OPENING, "P: What do I do with my lamp oil when I'm unwell?", `C: ${says}`], {}, risky).unsafe.found.map(({ id }) => id);
  test("stopped", () => expect(unsafe("Nothing to worry about, stop your lamp oil and call us.")).toEqual(["stop"]));
  test.each(["Don't worry about that yet, I'll come to that.", "Nothing to worry about, keep on with it and call us."])("but not: %s", (says) => expect(unsafe(says)).toEqual([]));
});
