import { describe, expect, test } from "vitest";
import { compiledRubric } from "../../src/mark.ts";
import { matchStation } from "../../src/matching/match.ts";
import { contextOf } from "../../src/scoring/context.ts";
import { judgeElement } from "../../src/scoring/elements.ts";
import { toldStation } from "../../src/station/told.ts";
import { CARD, item, markTalk, OPENING } from "./station-card.ts";

// The precedence table of the design (What a mark is): a test a row. All talks are invented.
describe("what happened, and the mark", () => {
  test("wrong, then put right by the candidate before the station ends: complete, the slip is listed", () => {
    const sheet = markTalk([...OPENING, "C: Hold your breath for two seconds.", "P: Okay.", "C: Sorry, I meant hold your breath for ten seconds."]);
    expect(item(sheet, "hold").content).toBe("complete");
    expect(sheet.incorrect).toEqual([expect.objectContaining({ item: "hold", corrected: true })]);
  });

  test("right, then contradicted and left so: incorrect", () => {
    const sheet = markTalk([...OPENING, "C: Hold your breath for ten seconds.", "P: Okay.", "C: So you hold your breath for two seconds, that's all."]);
    expect(item(sheet, "hold").content).toBe("incorrect");
    expect(item(sheet, "hold").earned).toBe(0);
    expect(sheet.incorrect).toEqual([expect.objectContaining({ item: "hold", corrected: false })]);
  });

  test.each([
    [0.7, "incorrect"],
    [0.8, "complete"],
  ])("wrong, and right later with a confidence of %f: %s, for what is hardly said puts nothing right", (confidence, content) => {
    const station = toldStation([{ role: "candidate", says: "Hold your breath for two seconds." }, { role: "patient", says: "Okay." }, { role: "candidate", says: "So you hold your breath for ten seconds." }], "talk.txt");
    const matches = matchStation(station, compiledRubric(CARD));
    const hold = CARD.sections.flatMap(({ items }) => items).find(({ id }) => id === "hold")!;
    const elements = matches.elements.map((match) => ({ ...match, confidence: match.verdict === "right" ? confidence : 0.95 }));
    expect(elements.filter(({ item }) => item === "hold").map(({ verdict }) => verdict)).toEqual(["wrong", "right"]);
    const context = contextOf(station, CARD, { ...matches, elements }, CARD.time.limit, CARD.time.target);
    expect(judgeElement(context, "hold", hold.elements[0]!).content).toBe(content);
  });

  test("the patient repeats it wrongly, the candidate corrects it: as first said; a misunderstanding corrected is listed", () => {
    const sheet = markTalk([
      ...OPENING,
      "C: Hold your breath for ten seconds. Can you show me how you will use it?",
      "P: I hold my breath for two seconds.",
      "C: Not quite, hold your breath for ten seconds.",
    ]);
    expect(item(sheet, "hold").content).toBe("complete");
    expect(sheet.teachBack.errors).toHaveLength(1);
    expect(sheet.teachBack.errors[0]!.corrected).not.toBeNull();
    expect(sheet.repeats).toEqual([]);
  });

  test("the patient repeats it wrongly and nobody notices: the error is listed as left", () => {
    const sheet = markTalk([...OPENING, "C: Hold your breath for ten seconds. Can you show me how you will use it?", "P: I hold my breath for two seconds.", "C: Perfect, thank you."]);
    expect(sheet.teachBack.errors[0]).toMatchObject({ noticed: null, corrected: null });
  });

  test("part offered, rest after a question: complete, elicitation by the later part", () => {
    const sheet = markTalk([...OPENING, "C: Wash it once a week.", "P: And how should I dry it?", "C: Let it dry in the air."]);
    expect(item(sheet, "wash")).toMatchObject({ content: "complete", elicitation: "after-question" });
  });

  test("said after the time limit: earns nothing, listed apart", () => {
    const sheet = markTalk([...OPENING, "C: Shake the inhaler well.", "@70 C: Hold your breath for ten seconds."]);
    expect(item(sheet, "shake").content).toBe("complete");
    expect(item(sheet, "hold")).toMatchObject({ content: "absent", earned: 0 });
    expect(sheet.time.afterLimit?.items).toEqual(["hold"]);
    expect(item(sheet, "hold").remarks.join()).toContain("after the time limit");
  });

  test('asked "do you know how to ...?", nothing taught: absent', () => {
    const sheet = markTalk([...OPENING, "C: Do you know how to shake the inhaler well?", "P: Yes.", "C: Great."]);
    expect(item(sheet, "shake").content).toBe("absent");
  });

  test("the patient says it, the candidate confirms: elicited and confirmed, earning as the item says", () => {
    const sheet = markTalk([...OPENING, "C: How long will you hold your breath?", "P: I hold my breath for ten seconds.", "C: That's right, exactly."]);
    expect(item(sheet, "hold")).toMatchObject({ content: "complete", elicitation: "confirmed", earned: 1 });
  });

  test("a bare yes to a leading question earns nothing", () => {
    const sheet = markTalk([...OPENING, "C: And do you hold your breath for ten seconds?", "P: Yes.", "C: Exactly."]);
    expect(item(sheet, "hold").content).toBe("absent");
  });

  test('"like this, you see": cannot tell, outside the denominator, result provisional', () => {
    const sheet = markTalk([...OPENING, "C: Shake the inhaler well. And you keep your breath in, like this, you see."]);
    expect(item(sheet, "hold").content).toBe("cannot-tell");
    expect(sheet.total.provisional).toBe(true);
    const weights = sheet.items.filter(({ content }) => ["complete", "partial", "absent", "incorrect"].includes(content)).reduce((sum, { weight }) => sum + weight, 0);
    expect(sheet.total.available).toBe(weights);
  });

  test("a sound-alike that changes the meaning (fifteen and fifty): cannot tell, listen; never unsafe", () => {
    const sheet = markTalk([...OPENING, "C: Rinse your mouth for fifty seconds."]);
    expect(item(sheet, "fifteen")).toMatchObject({ content: "cannot-tell", listen: true });
    expect(sheet.unsafe.found).toEqual([]);
  });
});

describe("beside the table", () => {
  test("another country's value differs from this station's guidance: it earns nothing and is not held to be wrong", () => {
    const sheet = markTalk([...OPENING, "C: Hold your breath for five seconds."]);
    expect(sheet.differs).toEqual([expect.objectContaining({ item: "hold", reason: "five seconds in an invented country" })]);
    expect(item(sheet, "hold").content).toBe("absent");
    expect(sheet.incorrect).toEqual([]);
  });

  test("an item for a condition that the scenario lacks does not apply", () => {
    expect(item(markTalk(OPENING), "child").content).toBe("not-applicable");
  });

  test("a cue that the patient never gave leaves the item outside the denominator", () => {
    expect(item(markTalk(OPENING), "arthritis").content).toBe("not-offered");
    expect(item(markTalk([...OPENING, "P: My hands are stiff.", "C: I see."]), "arthritis").content).toBe("absent");
  });

  test("an unsafe statement is counted apart and fails the station whatever else was said", () => {
    const sheet = markTalk([...OPENING, "C: Do you have any allergies? Shake the inhaler well. Hold your breath for ten seconds. You can share it with your family."]);
    expect(sheet.unsafe.found).toEqual([expect.objectContaining({ id: "share", corrected: false })]);
    expect(sheet.result.outcome).toBe("fail");
  });

  test("a yes to an unsafe question is the unsafe statement; a no is not", () => {
    const after = (reply: string) => markTalk([...OPENING, "P: Can other people use my inhaler?", `C: ${reply}`]).unsafe.found.map(({ id }) => id);
    expect(after("Yes, that's fine.")).toEqual(["share"]);
    expect(after("No, please don't.")).toEqual([]);
    expect(after("Well, it is yours alone.")).toEqual([]);
  });

  test("the same words under a denial are not unsafe", () => {
    expect(markTalk([...OPENING, "C: You can't share it with your family."]).unsafe.found).toEqual([]);
  });

  test("an unsafe statement taken back is listed, not counted", () => {
    const sheet = markTalk([...OPENING, "C: You can share it with your family, no sorry, you can't share it with your family."]);
    expect(sheet.unsafe.found).toEqual([expect.objectContaining({ corrected: true })]);
  });

  test("prompted words earn as the item says", () => {
    const sheet = markTalk([...OPENING, "E: How long should the breath be held?", "C: Hold your breath for ten seconds."]);
    expect(item(sheet, "hold")).toMatchObject({ content: "complete", elicitation: "prompted", earned: 1 });
  });

  test("order pairs said the wrong way round are listed", () => {
    expect(markTalk([...OPENING, "C: Hold your breath for ten seconds. Shake the inhaler well."]).order.broken).toHaveLength(1);
    expect(markTalk([...OPENING, "C: Shake the inhaler well. Hold your breath for ten seconds."]).order.broken).toEqual([]);
  });

  test("a needless repeat is listed with its cost; a repeat that the patient asked for is not", () => {
    const filler = "C: This is a nice small device and it lives in your bag and people find that it comes in handy in the day when they are out and about with their friends and family on a walk.";
    const repeated = markTalk([...OPENING, "C: Shake the inhaler well.", filler, "C: Shake the inhaler well."]);
    expect(repeated.repeats).toHaveLength(1);
    expect(repeated.repeats[0]!.seconds).toBeGreaterThan(0);
    expect(markTalk([...OPENING, "C: Shake the inhaler well.", filler, "P: Sorry, can you repeat that?", "C: Shake the inhaler well."]).repeats).toEqual([]);
  });

  test("the patient's questions are answered, deferred, ignored or wrongly answered", () => {
    const answer = (reply: string) => markTalk([...OPENING, "P: How will I know when it is empty?", `C: ${reply}`]).questions.find(({ id }) => id === "empty")!.answer;
    expect(answer("The counter shows how many puffs are left.")).toBe("answered");
    expect(answer("I'm not sure, let me check and get back to you.")).toBe("deferred");
    expect(answer("Okay.")).toBe("ignored");
    const swim = markTalk([...OPENING, "P: Can I go swimming with it?", "C: You must never swim."]);
    expect(swim.questions.find(({ id }) => id === "swim")!.answer).toBe("incorrect");
    expect(swim.questions.find(({ id }) => id === "empty")!.answer).toBe("not-asked");
  });

  test("what nobody said is absent, and the sheet of an empty talk fails nothing it could not measure", () => {
    const sheet = markTalk(OPENING);
    expect(item(sheet, "introduce").content).toBe("complete");
    expect(item(sheet, "shake").content).toBe("absent");
    expect(sheet.critical.missed).toEqual(["shake"]);
  });
});
