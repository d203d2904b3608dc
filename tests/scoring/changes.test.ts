import { describe, expect, test } from "vitest";
import { changesOf } from "../../src/scoring/changes.ts";
import { CARD, item, markTalk, OPENING } from "./station-card.ts";

const advice = (lines: readonly string[], options = {}) => markTalk([...OPENING, ...lines], options).changes.map((change) => change.advice);

/** Everything of the card but the item that a test leaves out. */
const REST = ["C: Do you have any allergies?", "P: None.", "C: Clean the case once a week and let it dry in the air. The counter shows how many puffs are left. Rinse your mouth for fifteen seconds.", "C: Can you show me how you will use it?", "P: Shake the inhaler, hold my breath."];

describe("the gravest comes first", () => {
  test("an unsafe statement that stands, before everything", () => {
    expect(advice(["C: Shake the inhaler well. You can share it with your family."])[0]).toContain("Never say this");
  });

  test("a critical item that nobody said, before wrong statements and time", () => {
    expect(advice(["C: Hold your breath for thirty seconds.", ...REST])[0]).toContain("Shake before each puff");
  });

  test("a fault of order that is major, before a wrong statement of an item that is not critical", () => {
    const sheet = markTalk([...OPENING, "C: Hold your breath for thirty seconds. Shake the inhaler well.", ...REST]);
    const broken = sheet.order.broken.map((pair) => ({ ...pair, severity: "major" as const }));
    const changes = changesOf({ items: [], unsafe: [], incorrect: [], order: { ...sheet.order, broken }, repeats: [], asides: [], questions: [], time: sheet.time, plan: sheet.plan, total: sheet.total, teachBack: sheet.teachBack });
    expect(changes[0]!.worth).toBe("a major fault of order");
  });
});

test("a change that rests on a mark that says listen says so, and comes behind all that are sure unless the item is critical", () => {
  const sheet = markTalk([...OPENING, ...REST.map((line) => line.replace("Clean the case once a week and let it dry in the air. ", ""))]);
  const changes = (...told: readonly (readonly [id: string, listen: boolean])[]) => {
    const judged = told.map(([id, listen]) => ({ item: CARD.sections.flatMap(({ items }) => items).find((one) => one.id === id)!, result: { ...item(sheet, id), listen }, elements: [], metConfidence: 1 }));
    return changesOf({ items: judged, unsafe: [], incorrect: [], order: { broken: [], inOrder: null }, repeats: [], asides: [], questions: [], time: { ...sheet.time, overTarget: { value: -1, estimated: false } }, plan: sheet.plan, total: sheet.total, teachBack: sheet.teachBack });
  };
  expect(changes(["hold", true], ["wash", false]).map((change) => change.item)).toEqual(["wash", "hold"]);
  expect(changes(["hold", true])[0]!.worth).toContain("listen first, the mark is unsure");
  expect(changes(["wash", false], ["shake", true]).map((change) => change.item)).toEqual(["shake", "wash"]);
  expect(changes(["shake", true])[0]!.worth).toContain("critical item, listen first, the mark is unsure");
});

test("a teach-back that nobody asked for is among the changes, whatever the mark's sureness", () => {
  const sheet = markTalk([...OPENING, "C: Shake the inhaler well. Hold your breath for ten seconds. Clean the case once a week and let it dry in the air."], { target: 60, limit: 60 });
  expect(sheet.teachBack.asked).toBeNull();
  const judged = [{ item: CARD.sections.flatMap(({ items }) => items).find(({ id }) => id === "teach-back")!, result: { ...item(sheet, "teach-back"), listen: true }, elements: [], metConfidence: 1 }];
  const [change] = changesOf({ items: judged, unsafe: [], incorrect: [], order: { broken: [], inOrder: null }, repeats: [], asides: [], questions: [], time: sheet.time, plan: sheet.plan, total: sheet.total, teachBack: sheet.teachBack });
  expect(change!.worth).not.toContain("listen first");
});

test("what was said after the limit is to be said sooner, not for the first time", () => {
  const text = advice(["C: Shake the inhaler well. Hold your breath for ten seconds.", ...REST.slice(3), "@70 C: Clean the case once a week and let it dry in the air."]).join(" ");
  expect(text).toContain("Say this before the time is up: Clean the case.");
});

test("a critical item that was shown and not said is to be said aloud", () => {
  const card = { ...CARD, sections: CARD.sections.map((section) => ({ ...section, items: section.items.map((one) => ({ ...one, critical: one.id === "hold" })) })) };
  const sheet = markTalk([...OPENING, "C: Shake the inhaler well. And you keep your breath in, like this, you see.", ...REST], {}, card);
  expect(item(sheet, "hold").content).toBe("cannot-tell");
  expect(sheet.changes[0]).toMatchObject({ advice: "Say it aloud as well as showing it: Hold the breath for ten seconds.", item: "hold" });
});

describe("time", () => {
  test("what was found to cut is named: repeats and asides", () => {
    const lines = ["C: Shake the inhaler well. You drop the tablet into a tall glass of lukewarm water.", "C: My uncle kept bees for years and he lost a whole hive in the flood.", "C: So the tablet, you drop that into your tall glass of water, lukewarm.", ...REST];
    const text = advice(lines, { target: 20, limit: 30 }).join(" ");
    expect(text).toMatch(/Say each thing once \(1 needless repeat, \d+ s\) and keep to the station \(1 aside, \d+ s\)\./);
  });

  test("where nothing was found to cut, only how much is too much", () => {
    expect(advice(["C: Shake the inhaler well.", ...REST], { target: 20, limit: 30 }).join(" ")).toMatch(/Say it in about \d+ words fewer/);
  });
});

describe("what is a little over the target", () => {
  const sheet = markTalk([...OPENING, ...REST]);
  const question = { id: "swim", label: "Can I swim with it?", asked: null, answer: "ignored" as const, evidence: null, scripted: true };
  const aside = { evidence: sheet.items.flatMap(({ elements }) => elements.flatMap(({ evidence }) => evidence))[0]!, words: 40, seconds: 10 };
  const changes = (over: number) =>
    changesOf({
      items: [], unsafe: [], incorrect: [], order: { broken: [], inOrder: null }, repeats: [], asides: [aside], questions: [question], total: sheet.total, teachBack: sheet.teachBack,
      time: { ...sheet.time, target: 300, overTarget: { value: over, estimated: false }, overLimit: { value: -60, estimated: false } },
      plan: { ...sheet.plan, costs: [{ what: "asides", words: 40, seconds: 10 }] },
    });

  test("is worth less than a question left open; a twentieth of the target is not a little", () => {
    expect(changes(14).map(({ item: id }) => id)).toEqual(["question/swim", undefined]);
    expect(changes(15).map(({ item: id }) => id)).toEqual([undefined, "question/swim"]);
  });

  test("is told beside what could be saved, or said to be met by it", () => {
    expect(changes(10).at(-1)!.worth).toBe("10 s: enough to meet the target");
    expect(changes(11).at(-1)!.worth).toBe("10 s of the 11 s over the target");
  });
});

test("an item of which one part came late and another not at all is not put right by saying it sooner", () => {
  const text = advice(["C: Shake the inhaler well. Hold your breath for ten seconds.", ...REST.slice(0, 2), "C: The counter shows how many puffs are left. Rinse your mouth for fifteen seconds.", ...REST.slice(3), "@70 C: Let it dry in the air."]).join(" ");
  expect(text).toContain("Say this: Clean the case.");
  expect(text).not.toContain("before the time is up");
});

test("what was half heard is not advised to be said aloud as well as shown", () => {
  const card = { ...CARD, sections: CARD.sections.map((section) => ({ ...section, items: section.items.map((one) => ({ ...one, critical: one.id === "hold" })) })) };
  const sheet = markTalk([...OPENING, "C: Shake the inhaler well. And you keep your breath in for [inaudible].", ...REST], {}, card);
  expect(item(sheet, "hold").content).toBe("cannot-tell");
  expect(sheet.changes.map(({ advice: text }) => text).join()).not.toContain("as well as showing");
});
