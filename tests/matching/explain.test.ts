import { describe, expect, test } from "vitest";
import { explain } from "../../src/mark.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import { CARD, cardWith } from "../scoring/station-card.ts";

const talk = (lines: string[]) => readTranscript(lines.join("\n"), { file: "talk.txt" });
const OPENING = ["Candidate: Hello, my name is Robin and I'm the pharmacist.", "Patient: Hello there."];
const items = CARD.sections.flatMap((section) => section.items);
/** An invented item that is told, with a plain wording of its own. */
const told = items.find((item) => item.id === "shake")!;
const element = told.elements[0]!;
const wording = element.say.find((phrase) => !/[|(){}]/.test(phrase))!;

describe("what explain shows of an item", () => {
  test("a passage that counts, with the words that stand for the response", () => {
    const shown = explain(talk([...OPENING, `Candidate: ${wording}.`]), CARD, told.id)!;
    const best = shown.elements.find(({ id }) => id === element.id)!.passages[0]!;
    expect(best).toMatchObject({ counts: true, closed: [], verdict: "right" });
    expect(best.aligned.length).toBeGreaterThan(0);
    expect(best.likelihood).toBeGreaterThanOrEqual(best.likely);
  });

  test("a question that teaches nothing, and the gate that closed on it", () => {
    const shown = explain(talk([...OPENING, `Candidate: Do you know whether you should ${wording}?`]), CARD, told.id)!;
    const best = shown.elements.find(({ id }) => id === element.id)!.passages[0]!;
    expect(best.counts).toBe(false);
    expect(best.closed).toContain("speech-act");
  });

  test("agrees with the sheet: an element is complete just when a passage counts", () => {
    const shown = explain(talk([...OPENING, `Candidate: ${wording}.`]), CARD, told.id)!;
    for (const each of shown.elements) {
      const counted = each.passages.some(({ counts, verdict }) => counts && verdict === "right");
      expect(counted).toBe(shown.item.elements.find(({ id }) => id === each.id)!.content === "complete");
    }
  });

  test("a passage whose words belong to an unsafe statement, which the sheet leaves out too", () => {
    const card = cardWith("      - { id: lend, label: Who may use it, say: [your family may use the lantern] }", "minimum: 50", "  - { id: alone, label: Alone with it, severity: major, say: [let your family use the lantern alone in the shed] }");
    const shown = explain(talk([...OPENING, "Candidate: Let your family use the lantern alone in the shed."]), card, "lend")!;
    const [passage] = shown.elements[0]!.passages;
    expect(shown.item.content).toBe("absent");
    expect(passage).toMatchObject({ counts: false, closed: ["unsafe-words"] });
  });

  test("nothing for an item that the rubric does not have", () => {
    expect(explain(talk(OPENING), CARD, "no-such-item")).toBeNull();
  });
});
