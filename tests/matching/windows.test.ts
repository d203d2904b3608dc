import { describe, expect, test } from "vitest";
import { compileRubric } from "../../src/matching/compile.ts";
import { postingsOf } from "../../src/matching/postings.ts";
import { streamOf } from "../../src/matching/stream.ts";
import { bestWindows } from "../../src/matching/windows.ts";
import { toldStation } from "../../src/station/told.ts";
import { cardWith } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const weighed = (says: string, say: string[]) => {
  const rubric = compileRubric(cardWith(`
      - { id: nightly, label: Never every night, say: [${say.join(", ")}] }
`));
  const stream = streamOf(toldStation([{ role: "candidate", says }], "talk"), ["candidate"]);
  return bestWindows(rubric.elements[0]!.say, postingsOf(stream, rubric), stream, 0.34, "anywhere").map(({ response }) => response.text);
};

describe("of the responses that fit one spot the best two are weighed, and one of the other polarity besides", () => {
  const affirming = ["every night is poison", "every single night is poison", "every night it is poison"];
  test("one that denies, where the best affirm: polarity may close on the ones and not on the other", () => {
    const found = weighed("Please don't light it every night, it is poison.", [...affirming, "do not light the wick every night"]);
    expect(found).toHaveLength(3);
    expect(found[2]).toBe("do not light the wick every night");
  });
  test("no third that affirms", () => {
    expect(weighed("Please don't light it every night, it is poison.", affirming)).toHaveLength(2);
  });
});
