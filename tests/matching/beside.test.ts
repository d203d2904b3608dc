import { describe, expect, test } from "vitest";
import { BESIDE_FIGURES, besideOf, turnedBy } from "../../src/matching/beside.ts";
import { compileRubric } from "../../src/matching/compile.ts";
import { candidatePassages, counts } from "../../src/matching/likelihood.ts";
import type { Passage } from "../../src/matching/passages.ts";
import { postingsOf } from "../../src/matching/postings.ts";
import { streamOf, type Stream } from "../../src/matching/stream.ts";
import { toldStation } from "../../src/station/told.ts";
import { cardWith } from "../scoring/station-card.ts";

const RUBRIC = compileRubric(cardWith("      - { id: dry, label: Left to dry, say: [leave the lantern glass to dry overnight, let the glass dry on the rack], incorrect: [dry the glass with a towel] }", "minimum: 50"));

/** The passage of the element that fits best, counting or not. */
function fitting(says: string): { passage: Passage; stream: Stream } {
  const stream = streamOf(toldStation([{ role: "candidate", says }], "talk"), ["candidate"]);
  const [passage] = candidatePassages(RUBRIC, postingsOf(stream, RUBRIC), stream).filter(({ element, verdict }) => element.item === "dry" && verdict === "right");
  return { passage: passage!, stream };
}

const beside = (says: string) => {
  const { passage, stream } = fitting(says);
  const { figures, words } = besideOf(passage, stream, RUBRIC.elements);
  return { words, figure: (name: (typeof BESIDE_FIGURES)[number]) => figures[BESIDE_FIGURES.indexOf(name)]! };
};

describe("what stands beside a passage", () => {
  test("the other words of its sentence, one by one and in pairs; not those that carry it, nor the next sentence's", () => {
    const { words } = beside("You leave the lantern glass to dry overnight on the sill. Mind the cat.");
    expect(words).toContain("sill");
    expect(words).toContain("* on");
    expect(words).not.toContain("lantern");
    expect(words).not.toContain("cat");
  });

  test("a filler says nothing", () => {
    expect(beside("Leave the lantern glass to, um, dry overnight.").words).not.toContain("um");
  });

  test("a denied word is told from the same word affirmed", () => {
    expect(beside("Leave the lantern glass to dry overnight, don't polish it.").words).toContain("not polish");
    expect(beside("Leave the lantern glass to dry overnight, polish it.").words).not.toContain("not polish");
  });

  test("words of the element's wrong statements and of its other responses are counted apart", () => {
    const wrong = "tokens beside that its wrong statements have and its responses have not (log)";
    expect(beside("Leave the lantern glass to dry overnight by the towel.").figure(wrong)).toBeCloseTo(Math.log(2));
    expect(beside("Leave the lantern glass to dry overnight on the rack.").figure(wrong)).toBe(0);
    expect(beside("Leave the lantern glass to dry overnight on the rack.").figure("that its responses have alone (log)")).toBeGreaterThan(0);
  });
});

describe("a passage turned by what stands beside it", () => {
  test("says its element less likely than the same words by themselves", () => {
    const chance = (says: string) => {
      const { passage, stream } = fitting(says);
      return turnedBy(besideOf(passage, stream, RUBRIC.elements));
    };
    expect(chance("No need to bother, but you like that, so leave the lantern glass to dry overnight, it means nothing.")).toBeGreaterThan(chance("Leave the lantern glass to dry overnight please, because it rusts."));
  });

  test("does not count, and the gate says why", () => {
    const { passage } = fitting("Leave the lantern glass to dry overnight.");
    expect(counts(passage)).toBe(true);
    expect(counts({ ...passage, closed: ["turned"] })).toBe(false);
  });

  test("the chance is a logistic curve: nothing beside is turned by no word", () => {
    const { passage, stream } = fitting("Leave the lantern glass to dry overnight.");
    const seen = besideOf(passage, stream, RUBRIC.elements);
    expect(turnedBy({ ...seen, words: new Set(["a word that nobody said"]) })).toBe(turnedBy({ ...seen, words: new Set() }));
  });
});
