import { describe, expect, test } from "vitest";
import { item, markTalk, OPENING } from "./station-card.ts";

// An invented card and invented talk: behaviour only.

test("what was said wrongly and stands comes before what was put right, though it was said later", () => {
  const { incorrect } = markTalk([...OPENING, "C: Hold your breath for thirty seconds.", "P: Thirty?", "C: Sorry, hold your breath for ten seconds.", "P: Right.", "C: Rinse your mouth for three seconds."]);
  expect(incorrect.map(({ item: id, corrected }) => [id, corrected])).toEqual([["fifteen", false], ["hold", true]]);
});

describe("of many places that say a thing", () => {
  const again = Array.from({ length: 5 }, (_, place) => [`C: Shake the inhaler well.`, `P: Number ${place}, yes.`]).flat();

  test("three are shown at most, in the order in which they were said", () => {
    const { evidence } = item(markTalk([...OPENING, ...again]), "shake").elements[0]!;
    expect(evidence).toHaveLength(3);
    expect([...evidence].sort((a, b) => a.first - b.first)).toEqual(evidence);
  });
});

test("a target later than the limit is the limit", () => {
  expect(markTalk(OPENING, { limit: 30, target: 50 }).time).toMatchObject({ limit: 30, target: 30 });
});
