import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: prime, label: A new lamp is pumped until it spits, say: [pump a new lamp until it spits, pump it until it spits the first time, pump it until it spits] }
      - { id: wipe, label: Wipes the glass at every use, say: [wipe the glass every time, wipe the glass before each use, wipe the glass] }
      - { id: oil, label: Oils the crank, say: [oil the crank] }
`);
const content = (item: string, says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)!.content;

describe("what is done to a new one", () => {
  test.each(["Before each use pump it until it spits.", "Every time you use it pump it until it spits."])("is not told of every use: %s", (says) => expect(content("prime", says)).not.toBe("complete"));
  test.each(["Pump it until it spits.", "When it's new pump it until it spits.", "Before the first use pump it until it spits, not before each use.", "Don't do it every time you use it, pump it until it spits."])("said: %s", (says) => expect(content("prime", says)).toBe("complete"));
});

describe("what is done at every use", () => {
  test.each(["Wipe the glass only the first time.", "You wipe the glass only when it's new."])("is not told of the first alone: %s", (says) => expect(content("wipe", says)).not.toBe("complete"));
  test.each(["Wipe the glass before each use.", "Wipe the glass, not just the first time.", "The first time, wipe the glass."])("said: %s", (says) => expect(content("wipe", says)).toBe("complete"));
});

test("what is of neither may be told of either", () => {
  expect(content("oil", "Oil the crank every time you use it.")).toBe("complete");
  expect(content("oil", "Oil the crank just the first time.")).toBe("complete");
});
