import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: dust, label: The lantern is dusted, say: [dust the lantern with a feather, hold it still for ten seconds] }
      - { id: hum, label: It hums, say: [the lantern hums at night] }
`);
const content = (item: string, says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)?.content;

describe("what the speaker tells of themselves teaches nothing", () => {
  test.each(["I once dusted the lantern with a feather.", "My daughter would dust the lantern with a feather.", "I've to find a form, hold it still for ten seconds while I get that."])("%s", (says) => expect(content("dust", says)).not.toBe("complete"));
  test.each(["Dust the lantern with a feather.", "I wrote it down: dust the lantern with a feather.", "I had a cousin who broke his, so dust the lantern with a feather.", "And hold it still for ten seconds."])("but: %s", (says) => expect(content("dust", says)).toBe("complete"));
});

describe("what is called a fault is not told as what happens", () => {
  test.each(["If the lantern hums at night it's broken, so bring it back.", "The lantern hums at night, that means the oil's gone off."])("%s", (says) => expect(content("hum", says)).not.toBe("complete"));
  test.each(["The lantern hums at night, that's how it works.", "The lantern hums at night, it isn't broken.", "The lantern hums at night, and if it's broken you bring it back."])("but: %s", (says) => expect(content("hum", says)).toBe("complete"));
});
