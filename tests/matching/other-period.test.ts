import { expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: later, label: Seldom once it burns well, say: [once it burns well trim it every couple of months] }
`);
const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === "later")!.content;

test.each(["Once it burns well trim it every couple of days.", "Once it burns well you trim it every few days."])("another period is another thing: %s", (says) => expect(content(says)).not.toBe("complete"));
test.each(["Once it burns well trim it every couple of months.", "Once it burns well trim it every month or two, for a couple of years."])("the same: %s", (says) => expect(content(says)).toBe("complete"));
