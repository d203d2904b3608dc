import { expect, test } from "vitest";
import { decide } from "../../src/scoring/result.ts";
import type { StatementResult } from "../../src/scoring/types.ts";
import { CARD, item, markTalk, OPENING } from "./station-card.ts";

// Invented talk about an invented rubric: behaviour only.
const REST = ["C: Hold your breath for ten seconds. Wash it once a week and let it dry in the air. Look at the counter on the back. Rinse your mouth for fifteen seconds.", "C: Do you have any allergies?", "P: No."];

test("a critical item that is surely missing fails", () => {
  const sheet = markTalk([...OPENING, ...REST]);
  expect(item(sheet, "shake")).toMatchObject({ content: "absent", listen: false });
  expect(sheet.result.outcome).toBe("fail");
  expect(sheet.critical).toMatchObject({ missed: ["shake"], doubted: [] });
});

test("a critical item whose mark is unsure fails nobody: the result is provisional and names it", () => {
  const sheet = markTalk([...OPENING, "C: Do you know that you should shake it before each puff?", "P: Hm.", ...REST]);
  expect(item(sheet, "shake")).toMatchObject({ content: "absent", listen: true });
  expect(sheet.result.outcome).toBe("provisional");
  expect(sheet.result.reasons.join()).toContain("to be confirmed by listening: Shake before each puff");
  // Missed as far as the words go, and told apart from what surely is.
  expect(sheet.critical).toMatchObject({ missed: ["shake"], doubted: ["shake"] });
});

test("a sheet that fails anyway names the critical items in doubt as well", () => {
  const sheet = markTalk([...OPENING, "C: Do you know that you should shake it before each puff?", "P: Hm.", ...REST, "C: You can share it with your family."]);
  const doubted = sheet.result.reasons.filter((reason) => reason.startsWith("critical item to be confirmed by listening"));
  expect(sheet.result.outcome).toBe("fail");
  expect(doubted).toHaveLength(1);
});

test("the rule counts unsafe statements, not the places where one was said", () => {
  const sheet = markTalk([...OPENING, ...REST, "C: You can share it with your family.", "P: Oh?", "C: Yes, you can share it with your family."]);
  expect(sheet.unsafe.found.map(({ id, corrected }) => [id, corrected])).toEqual([["share", false], ["share", false]]);
  expect(sheet.result.reasons.filter((reason) => reason.includes("unsafe statement"))).toHaveLength(1);
});

test("a statement that stands in one place and may be mis-heard in another is one statement, and no second one to listen to", () => {
  const rubric = { ...CARD, pass: { ...CARD.pass, unsafe: { ...CARD.pass.unsafe, major: 1 } } };
  const sheet = markTalk([...OPENING, "C: Shake the inhaler well.", ...REST, "C: You can share it with your family."], {}, rubric);
  const said = sheet.unsafe.found[0]!;
  const outcome = (unsafe: StatementResult[]) => decide(rubric, [], { earned: 1, available: 1, percent: 100, provisional: false }, { total: 0, met: 0, missed: [], doubted: [], unsure: [] }, unsafe, sheet.time, 100);
  expect(outcome([said, { ...said, listen: true }]).reasons.join()).not.toContain("possible");
  expect(outcome([said, { ...said, id: "other", listen: true }]).reasons.join()).toContain("possible major unsafe statement");
});
