import { expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: late, label: Late - waits for the next evening, say: [forget about it and light the next one as normal, just carry on with the next lamp on monday], incorrect: ["(still light it on)|(still have it on) friday|saturday"] }
`);
const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === "late")!.content;

test.each(["You can still light it on Friday, and carry on with the Monday one."])("a wrong statement said whole beside a poor fit of what is right: %s", (says) => expect(content(says)).not.toBe("complete"));
test.each(["Forget about it and light the next one as normal.", "People still light it on Friday, never do that, just carry on with the next lamp on Monday."])("right: %s", (says) => expect(content(says)).toBe("complete"));
