import { describe, expect, test } from "vitest";
import { compileRubric } from "../../src/matching/compile.ts";
import { Fitting, itemsOf } from "../../src/matching/company.ts";
import { counts, doubtsOf, SIGNS, signsOfSaying, withLikelihood } from "../../src/matching/likelihood.ts";
import weights from "../../src/matching/likelihood.json";
import { passagesFor, type Passage } from "../../src/matching/passages.ts";
import { postingsOf } from "../../src/matching/postings.ts";
import { streamOf, type Stream } from "../../src/matching/stream.ts";
import { toldStation } from "../../src/station/told.ts";
import { cardWith } from "../scoring/station-card.ts";

// An invented rubric and invented talk: behaviour only. What the curve is fitted on: npm run fit:likelihood.
const RUBRIC = compileRubric(cardWith(`
      - id: keeping
        label: Keeping it
        needs: 2
        elements:
          - { id: cupboard, label: In a cool cupboard, say: [keep it in a cool cupboard] }
          - { id: sun, label: Out of the sunlight, say: [keep it out of the sunlight] }
      - { id: wick, label: Trims the wick, say: [trim the wick with the scissors] }
`));

const OTHER_TALK = "So you light it with a long match and you let the flame settle for a while, and then you turn the little wheel until it burns as high as you like, and you carry it by the handle, never by the glass.";

function read(says: string): { passages: Passage[]; stream: Stream } {
  const stream = streamOf(toldStation([{ role: "candidate", says }], "talk"), ["candidate"]);
  const postings = postingsOf(stream, RUBRIC);
  return { stream, passages: withLikelihood(RUBRIC.elements.flatMap((element) => passagesFor(element, postings, stream, "candidate")), stream, RUBRIC.elements) };
}

function best(says: string, element: string): number {
  return Math.max(0, ...read(says).passages.filter((passage) => passage.element.element === element).map(({ likelihood }) => likelihood ?? 0));
}

describe("how likely a passage says its element", () => {
  test("more likely beside another element of its item", () => {
    const loose = "The cool one stays in the cupboard.";
    expect(best(`${OTHER_TALK} Keep it out of the sunlight. ${loose}`, "cupboard")).toBeGreaterThan(best(`${OTHER_TALK} ${loose}`, "cupboard"));
  });

  test("less likely with words between that are none of the response's", () => {
    expect(best(`${OTHER_TALK} Keep it in the cool old oak cupboard.`, "cupboard")).toBeGreaterThan(best(`${OTHER_TALK} Keep it, my neighbour bought a cool painted farmhouse cupboard.`, "cupboard"));
  });

  test("a full fit counts wherever it stands", () => {
    for (const says of ["Keep it in a cool cupboard.", `${OTHER_TALK} Keep it in a cool cupboard.`]) expect(read(says).passages.some((passage) => passage.element.element === "cupboard" && counts(passage))).toBe(true);
  });

  test("a poor fit with nothing around it is not even weighed", () => {
    const { passages } = read("Cool cupboard.");
    for (const passage of passages) if (passage.coverage < 0.6) expect(passage.likelihood).toBeUndefined();
    expect(read("The cupboard.").passages.filter(counts)).toEqual([]);
  });

  test("what a gate closed on has no likelihood", () => {
    const { passages } = read(`${OTHER_TALK} You don't need to trim the wick with the scissors.`);
    const closed = passages.filter((passage) => passage.closed.length > 0 || passage.verdict !== "right");
    expect(closed.length).toBeGreaterThan(0);
    for (const passage of closed) expect(passage.likelihood).toBeUndefined();
  });

  test("explain is told what speaks against a loose fit", () => {
    const { passages, stream } = read(`${OTHER_TALK} My aunt has a cupboard somewhere, and a cool hallway.`);
    const loose = passages.find((passage) => passage.element.element === "cupboard")!;
    expect(doubtsOf(loose, passages, stream, RUBRIC.elements)).toContain("nothing-else-of-its-item");
  });

  test("a weight for every sign", () => {
    for (const { signs } of [weights.first, weights.second]) expect(signs).toHaveLength(SIGNS.length);
    const { passages, stream } = read("Keep it in a cool cupboard.");
    expect(signsOfSaying(passages[0]!, new Fitting(passages), stream, itemsOf(RUBRIC.elements), ({ coverage }) => coverage)).toHaveLength(SIGNS.length);
  });
});
