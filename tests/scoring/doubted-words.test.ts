// Invented talk about an invented rubric: behaviour only.
import { describe, expect, test } from "vitest";
import { mark } from "../../src/mark.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import { CARD, item } from "./station-card.ts";

const TALK = ["Hello, my name is Robin and I'm the pharmacist.", "Do you have any allergies?", "P: No, none at all, thank you.", "Give it a good shake.", "Hold your breath for ten seconds.", "Wash it once a week and let it dry in the air.", "Look at the counter on the back.", "Rinse your mouth for fifteen seconds."];

/** @param confidence of the recogniser in a word, or nothing. */
function sheetOf(confidence: (word: string, line: number) => number | undefined, talk: readonly string[] = TALK) {
  const segments = talk.map((line, at) => ({
    speaker: line.startsWith("P: ") ? "Patient" : "Candidate",
    start: at * 5,
    end: at * 5 + 4,
    words: line.replace("P: ", "").split(" ").map((text) => {
      const sure = confidence(text, at);
      return { text, ...(sure !== undefined && { confidence: sure }) };
    }),
  }));
  return mark(readTranscript(JSON.stringify({ segments }), { file: "talk.json" }), CARD);
}

const plain = sheetOf(() => undefined);

describe("words that the recogniser doubts make a mark less sure, and change nothing else", () => {
  test("a critical item that rests on them asks to be listened to, and the result waits for it", () => {
    const doubted = sheetOf((_, line) => (line === 3 ? 0.05 : 0.95));
    expect(item(plain, "shake")).toMatchObject({ content: "complete", listen: false });
    expect(item(doubted, "shake")).toMatchObject({ content: "complete", met: true, listen: true });
    expect(item(doubted, "shake").remarks.join()).toContain("the recogniser doubts");
    expect(doubted.result.reasons.join()).toContain("to be confirmed by listening: Shake before each puff");
    expect(doubted.total).toEqual(plain.total);
  });

  test("said once more without doubt, it is as sure as ever", () => {
    const again = [...TALK, "So remember, give it a good shake."];
    expect(item(sheetOf((_, line) => (line === 3 ? 0.05 : 0.95), again), "shake").listen).toBe(false);
  });

  test("a number is as sure as its least sure word", () => {
    expect(item(sheetOf((word) => (word === "ten" ? 0.2 : 0.95)), "hold").confidence).toBeLessThanOrEqual(0.2);
  });

  test("confidences above the threshold of doubt leave the sheet as it is without any", () => {
    const { items, result, total } = sheetOf(() => 0.6);
    expect({ items, result, total }).toEqual({ items: plain.items, result: plain.result, total: plain.total });
  });

  test("a recogniser that doubts everything raises no total: what no passage came near stays absent", () => {
    const some = TALK.map((line) => (line.startsWith("Look") ? "There is a thing that shows the puffs left." : line));
    const [sure, doubted] = [sheetOf(() => 0.95, some), sheetOf(() => 0.05, some)];
    expect(doubted.items.map(({ id, content }) => [id, content])).toEqual(sure.items.map(({ id, content }) => [id, content]));
    expect(doubted.total).toEqual(sure.total);
  });

  test("where it came near and the doubted word may be the one that lacks, it cannot be told", () => {
    const near = TALK.map((line) => (line.startsWith("Look") ? "The window shows how many puffs are left." : line));
    expect(item(sheetOf(() => 0.95, near), "counter").content).toBe("absent");
    expect(item(sheetOf((word) => (word === "window" ? 0.1 : 0.95), near), "counter").content).toBe("cannot-tell");
  });
});
