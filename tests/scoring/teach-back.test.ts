import { describe, expect, test } from "vitest";
import { item, markTalk, OPENING } from "./station-card.ts";

// All talks are invented.
const TAUGHT = "C: Give it a good shake. Hold your breath for ten seconds. Wash it once a week. The counter shows how many puffs are left.";
const TOLD = "P: Right, shake the inhaler well. Hold my breath for ten seconds. And wash it once a week.";

describe("a teach-back asked for in words that no rubric foresees", () => {
  test.each([
    "C: Imagine you're at the bus stop and you need it, what happens now?",
    "C: Would you take this dummy and be my teacher for a minute?",
    "C: Suppose you are at home tonight. Over to you, out loud.",
  ])("%s", (request) => {
    const sheet = markTalk([...OPENING, TAUGHT, request, TOLD, "C: Lovely."]);
    expect(item(sheet, "teach-back")).toMatchObject({ content: "complete", elicitation: "offered" });
    expect(item(sheet, "teach-back").confidence).toBeLessThan(1);
    expect(sheet.teachBack.asked!.quote).toBe(request.slice(3));
    expect(sheet.teachBack.answered!.quote).toBe(TOLD.slice(3));
    expect(sheet.teachBack.answered!.role).toBe("patient");
  });

  test("a summary that nobody asked for is no teach-back", () => {
    const sheet = markTalk([...OPENING, TAUGHT, TOLD, "C: Lovely."]);
    expect(item(sheet, "teach-back").content).toBe("absent");
    expect(sheet.teachBack.asked).toBeNull();
  });

  test("nor is one behind a check whether it was understood", () => {
    const sheet = markTalk([...OPENING, `${TAUGHT} Does that make sense?`, TOLD, "C: Lovely."]);
    expect(sheet.teachBack.asked).toBeNull();
  });

  test("an echo of one thing is no telling back", () => {
    const sheet = markTalk([...OPENING, TAUGHT, "C: What will you do?", "P: Hold my breath for ten seconds.", "C: Yes."]);
    expect(sheet.teachBack.asked).toBeNull();
  });

  test("the patient's words are evidence of the patient: what was never taught is not credited", () => {
    const sheet = markTalk([...OPENING, "C: Give it a good shake. Hold your breath for ten seconds. Look at the counter on the back.", "C: Imagine it is tonight, off you go.", "P: Shake the inhaler well, hold my breath for ten seconds, look at the counter on the back, then let it dry in the air.", "C: Lovely."]);
    expect(item(sheet, "teach-back").content).toBe("complete");
    expect(item(sheet, "wash").content).toBe("absent");
  });
});

describe("what the patient got wrong in it", () => {
  test("a thing put right behind a correction is an error noticed and corrected, by the name of what was put right", () => {
    const sheet = markTalk([...OPENING, TAUGHT, "C: Imagine it is tonight, off you go.", "P: Shake the inhaler well. Hold my breath for two seconds. And wash it once a week.", "C: All but one. Hold your breath for ten seconds."]);
    expect(sheet.teachBack.errors).toHaveLength(1);
    expect(sheet.teachBack.errors[0]).toMatchObject({ label: "Hold the breath for ten seconds" });
    expect(sheet.teachBack.errors[0]!.corrected).not.toBeNull();
  });

  test("a number of one thing is no error of another, and what is wrong once stands there once", () => {
    const sheet = markTalk([...OPENING, TAUGHT, "C: Now rinse your mouth for fifteen seconds.", "C: Imagine it is tonight, off you go.", "P: Shake the inhaler well. Hold my breath for ten seconds, then rinse my mouth for fifty seconds. And wash it once a week.", "C: Lovely."]);
    expect(sheet.teachBack.errors.filter(({ label }) => label === "Hold the breath for ten seconds")).toEqual([]);
    expect(new Set(sheet.teachBack.errors.map(({ evidence }) => evidence.first)).size).toBe(sheet.teachBack.errors.length);
  });

  test("a reminder of what the patient left out is no error", () => {
    const sheet = markTalk([...OPENING, TAUGHT, "C: Imagine it is tonight, off you go.", TOLD, "C: Brilliant. And remember, the counter shows how many puffs are left."]);
    expect(sheet.teachBack.errors).toEqual([]);
  });
});

describe("what the patient has wrong and the candidate says yes to is an error not noticed", () => {
  const errors = (...talk: string[]) => markTalk([...OPENING, ...talk]).teachBack.errors.map(({ label, noticed }) => [label, noticed]);
  const HOLD = [["Hold the breath for ten seconds", null]];

  test.each(["C: Exactly.", "C: Yes, that's right.", "C: Spot on."])("told as understood, though never taught: %s", (yes) => {
    expect(errors("C: Give it a good shake.", "P: So I hold my breath for two seconds.", yes)).toEqual(HOLD);
  });

  test("asked", () => expect(errors("C: Give it a good shake.", "P: And do I hold my breath for two seconds?", "C: Yes, exactly.")).toEqual(HOLD));
  test("and its question is answered wrongly", () => {
    const sheet = markTalk([...OPENING, "C: Give it a good shake.", "P: And do I hold my breath for two seconds?", "C: Yes, exactly."]);
    expect(sheet.questions.filter(({ asked }) => asked !== null).map(({ answer }) => answer)).toEqual(["incorrect"]);
  });

  test.each(["C: Mm.", "C: Yeah, and what else?", "C: Not quite, ten seconds."])("but nothing never taught is one behind %s", (reply) => {
    expect(errors("C: Give it a good shake.", "P: So I hold my breath for two seconds.", reply)).toEqual([]);
  });
  test("nor what is right", () => expect(errors("C: Give it a good shake.", "P: So I hold my breath for ten seconds.", "C: Exactly.")).toEqual([]));
});
