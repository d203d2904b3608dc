import { describe, expect, test } from "vitest";
import { explain } from "../../src/mark.ts";
import { renderExplanation } from "../../src/report/explanation.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import { cardWith } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(
  "\n      - { id: needle, label: A new needle each time, say: [put on a new needle every time] }\n",
  "minimum: 50",
  "\n  - { id: reuse, label: Uses a needle again, severity: major, say: [one lasts you the week], contradicts: [needle/needle] }\n",
);
const page = (...lines: string[]) => {
  const transcript = readTranscript(["Candidate: Hello, my name is Robin and I'm the pharmacist.", "Patient: Hello there.", ...lines].join("\n"), { file: "talk.txt" });
  return renderExplanation(explain(transcript, card, "needle")!, { format: "text", width: 100, colour: false, ascii: false }).replace(/\s+/g, " ");
};

describe("an element that no passage of the candidate's alone decides", () => {
  test("says what stands on the sheet, where, and why", () => {
    const shown = page("Candidate: One lasts you the week.");
    expect(shown).toContain("incorrect");
    expect(shown).toContain('candidate "lasts you the week."');
    expect(shown).toContain("stands on the sheet: it is the unsafe statement 'Uses a needle again'");
  });
  test("and nothing of the kind where a passage counts", () => expect(page("Candidate: Put on a new needle every time.")).not.toContain("stands on the sheet"));
  test("or where nothing was said", () => expect(page("Candidate: Mind how you go.")).not.toContain("stands on the sheet"));
});
