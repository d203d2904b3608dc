import { describe, expect, test } from "vitest";
import { compileRubric } from "../../src/matching/compile.ts";
import { postingsOf } from "../../src/matching/postings.ts";
import { streamOf } from "../../src/matching/stream.ts";
import { windowsFor } from "../../src/matching/windows.ts";
import { toldStation } from "../../src/station/told.ts";
import { cardWith } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const rubric = compileRubric(cardWith(`
      - { id: clips, label: Takes the clips out, say: [take the clips out], incorrect: [you can leave your clips in when you use them] }
`));
const coverage = (says: string) => {
  const stream = streamOf(toldStation([{ role: "candidate", says }], "talk"), ["candidate"]);
  return Math.max(0, ...windowsFor(rubric.elements[0]!.incorrect[0]!, postingsOf(stream, rubric), stream, 0.5).map((window) => window.coverage));
};

describe("a word of the next sentence that can stand for one of the response does not hide what fits without it", () => {
  const alone = coverage("You can leave your clips in, that is fine. Wash your hands.");
  test.each(["Then take the cap off.", "Then you are ready. You can take the cap off."])("%s", (next) => expect(coverage(`You can leave your clips in, that is fine. ${next}`)).toBeCloseTo(alone, 10));
  test("in its own sentence it adds", () => expect(coverage("You can leave your clips in when you use them.")).toBeGreaterThan(alone));
});
