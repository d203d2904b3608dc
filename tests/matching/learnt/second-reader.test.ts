import { describe, expect, test } from "vitest";
import { besideOf, turnedBy } from "../../../src/matching/beside.ts";
import { compileRubric } from "../../../src/matching/compile.ts";
import { LearntReader } from "../../../src/matching/learnt/learnt.ts";
import curves from "../../../src/matching/learnt/curves.json" with { type: "json" };
import { turnedSigns } from "../../../src/matching/learnt/second-reading.ts";
import { candidatePassages } from "../../../src/matching/likelihood.ts";
import { likelihoodOf } from "../../../src/matching/curve.ts";
import { postingsOf } from "../../../src/matching/postings.ts";
import { streamOf } from "../../../src/matching/stream.ts";
import { matchStation } from "../../../src/matching/match.ts";
import { readLearnt } from "../../../src/rubric/learnt.ts";
import type { Learnt } from "../../../src/rubric/schema.ts";
import { toldStation, type ToldTurn } from "../../../src/station/told.ts";
import { cardWith } from "../../scoring/station-card.ts";

const LABEL = "Left to dry";
const card = cardWith(`      - { id: dry, label: ${LABEL}, say: [leave the lantern glass to dry overnight, let the glass dry on the rack], incorrect: [dry the glass with a towel] }`, "minimum: 50");
/** Invented: "hearth" speaks of the drying, "singe" of doing it wrongly. */
const learnt: Learnt = {
  elements: { "dry/dry": { label: LABEL, place: 0, about: -3, turned: -2, numbers: true } },
  words: { hearth: [0, 4, 0], hob: [0, 4, 0], soot: [0, 4, 0], singe: [0, 2, 6], scorch: [0, 2, 6], crisp: [0, 2, 6] },
};
const TALK: ToldTurn[] = [
  { role: "candidate", says: "Good morning, my name is Robin and I look after the lamps in this house, so ask me anything you like about them today." },
  { role: "patient", says: "Thank you, I will." },
];
const matchOf = (says: string, known: Learnt | null) => matchStation(toldStation([...TALK, { role: "candidate", says }], "talk"), { ...compileRubric(card), learnt: known }).elements.find(({ item }) => item === "dry");

describe("the second reader", () => {
  test("adds what each word is worth to where the element starts", () => {
    const reader = new LearntReader(learnt);
    const wording = new Map([["hearth", 1], ["singe", 0.5], ["nobody", 1]]);
    expect(reader.read({ numbers: wording, numberless: new Map() })).toEqual([{ about: -3 + 4 + 1, turned: -2 + 3 }]);
  });

  test("of an element with a quantity reads the words in which all numbers are one", () => {
    const reader = new LearntReader({ ...learnt, elements: { "dry/dry": { ...learnt.elements["dry/dry"]!, numbers: false } } });
    expect(reader.read({ numbers: new Map([["hearth", 1]]), numberless: new Map([["soot", 0.5]]) })).toEqual([{ about: -1, turned: -2 }]);
  });

  test("finds what no response has, said rightly", () => {
    expect(matchOf("Hearth beside the hob soot and all.", null)).toBeUndefined();
    expect(matchOf("Hearth beside the hob soot and all.", learnt)).toMatchObject({ verdict: "right", reason: expect.stringContaining("marked as right") as string });
  });

  test("and what is said wrongly", () => {
    expect(matchOf("Hearth hob soot singe scorch it crisp.", null)).toBeUndefined();
    expect(matchOf("Hearth hob soot singe scorch it crisp.", learnt)).toMatchObject({ verdict: "wrong", reason: expect.stringContaining("marked as wrong") as string });
  });

  test("hears a question as no answer", () => {
    expect(matchOf("Is it hearth hob soot singe scorch crisp that you do?", learnt)).toBeUndefined();
  });

  test("holds against nobody what is told of somebody else", () => {
    expect(matchOf("We had a gentleman who did hearth hob soot singe scorch crisp.", learnt)?.verdict).not.toBe("wrong");
  });

  test("finds an unsafe statement in words that the rubric does not have", () => {
    const rubric = compileRubric(cardWith("      - { id: dry, label: Left to dry, say: [leave the glass to dry] }", "minimum: 50", `
  - { id: singe, label: Dries it over the fire, severity: major, say: [dry the glass over the fire], contradicts: [dry/dry] }
`));
    const known: Learnt = { elements: { "unsafe:singe": { label: "Dries it over the fire", place: 0, about: -3, turned: 0, numbers: true }, "dry/dry": { label: LABEL, place: 1, about: -9, turned: 0, numbers: true } }, words: { hearth: [0, 4, 0], hob: [0, 4, 0], scorch: [0, 4, 0, 1, 0, 3], crisp: [0, 4, 0, 1, 0, 3] } };
    const unsafe = (says: string, learnt: Learnt | null) => matchStation(toldStation([...TALK, { role: "candidate", says }], "talk"), { ...rubric, learnt }).unsafe.map(({ statement }) => statement);
    expect(unsafe("Scorch it on the hob hearth crisp.", null)).toEqual([]);
    expect(unsafe("Scorch it on the hob hearth crisp.", known)).toEqual(["singe"]);
    expect(unsafe("Never dry the glass over the fire, you'd scorch it on the hob hearth crisp.", known)).toEqual([]);
    expect(unsafe("Feed the horses before the rain comes.", known)).toEqual([]);
  });

  test("says nothing where the words are of something else", () => {
    expect(matchOf("We should feed the horses before the rain comes.", learnt)).toBeUndefined();
  });

  test("makes a fit less likely whose other words turn it", () => {
    const turned = (says: string) => {
      const rubric = { ...compileRubric(card), learnt };
      const stream = streamOf(toldStation([...TALK, { role: "candidate", says }], "talk"), ["candidate"]);
      const [passage] = candidatePassages(rubric, postingsOf(stream, rubric), stream).filter(({ element, verdict }) => element.item === "dry" && verdict === "right");
      return likelihoodOf(curves.turned, turnedSigns(passage!, turnedBy(besideOf(passage!, stream, rubric.elements)), rubric, stream)!);
    };
    expect(turned("Leave the lantern glass to dry overnight, singe it and scorch it crisp.")).toBeGreaterThan(turned("Leave the lantern glass to dry overnight, polish it and wipe it clean."));
  });

  test("leaves alone what the rubric's author wrote, said whole and by itself", () => {
    const turned: Learnt = { ...learnt, words: { lantern: [0, 4, 9], glass: [0, 4, 9], overnight: [0, 4, 9] } };
    expect(matchOf("Leave the lantern glass to dry overnight.", turned)?.verdict).toBe("right");
  });

  test("knows nothing of an element that is worded otherwise now", () => {
    const says = "Leave the lantern glass to dry overnight, singe it and scorch it crisp.";
    const rubric = compileRubric(card);
    const stream = streamOf(toldStation([...TALK, { role: "candidate", says }], "talk"), ["candidate"]);
    const [passage] = candidatePassages({ ...rubric, learnt: null }, postingsOf(stream, rubric), stream).filter(({ element, verdict }) => element.item === "dry" && verdict === "right");
    const of = (label: string) => readLearnt(JSON.stringify({ saidwell: "learnt@1", id: "lantern", ...learnt }), "learnt.json", "lantern", new Map([["dry/dry", label]]));
    const signs = (label: string) => turnedSigns(passage!, 0.5, { ...rubric, learnt: of(label) }, stream);
    expect(signs(LABEL)).not.toBeNull();
    expect(signs("Left to dry for an hour")).toBeNull();
  });

  test("is not asked where nothing was learnt", () => {
    expect(matchOf("Leave the lantern glass to dry overnight.", { elements: {}, words: {} })?.verdict).toBe("right");
  });
});
