import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: noticed, label: Noticed late - pours oil, say: ["pour the oil in when you realise if it's not too late"] }
`);
const content = (says: string, item: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)!.content;

describe("a time without what is done then tells nothing", () => {
  test("when it is noticed", () => expect(content("By the time you realise, it's too late, leave that evening out.", "noticed")).not.toBe("complete"));
});

describe("with it, it does", () => {
  test("when it is noticed", () => expect(content("Pour the oil in when you realise.", "noticed")).toBe("complete"));
});
