import { describe, expect, test } from "vitest";
import { compileRubric } from "../../../src/matching/compile.ts";
import { LearntReader } from "../../../src/matching/learnt/learnt.ts";
import curves from "../../../src/matching/learnt/curves.json" with { type: "json" };
import { SIGNS } from "../../../src/matching/learnt/saying-signs.ts";
import { learntReading } from "../../../src/matching/learnt/reading.ts";
import { STATED_SIGNS, UNSAFE_SIGNS } from "../../../src/matching/learnt/unsafe-by-reader.ts";
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
  elements: { "dry/dry": { label: LABEL, place: 0, about: -3, turned: -3, numbers: true } },
  anyhow: 0,
  words: { hearth: [0, 4, 0], hob: [0, 4, 0], soot: [0, 4, 0], singe: [0, 2, 9], scorch: [0, 2, 9], crisp: [0, 2, 9] },
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
    expect(reader.read({ numbers: wording, numberless: new Map() })).toEqual([{ about: -3 + 4 + 1, turned: -3 + 4.5, anyhow: 0 }]);
  });

  test("and what sounds wrong whatever it is said of, in the place behind the elements'", () => {
    const reader = new LearntReader({ ...learnt, anyhow: -1, words: { ...learnt.words, skip: [1, 0, 2] } });
    const skip = new Map([["skip", 1]]);
    expect(reader.read({ numbers: skip, numberless: skip })).toEqual([{ about: -3, turned: -3 - 1 + 2, anyhow: -1 + 2 }]);
  });

  test("of an element with a quantity reads the words in which all numbers are one", () => {
    const reader = new LearntReader({ ...learnt, elements: { "dry/dry": { ...learnt.elements["dry/dry"]!, numbers: false } } });
    expect(reader.read({ numbers: new Map([["hearth", 1]]), numberless: new Map([["soot", 0.5]]) })).toEqual([{ about: -1, turned: -3, anyhow: 0 }]);
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

  test("holds no words against anybody that say another element rightly", () => {
    const two = cardWith(`      - { id: dry, label: ${LABEL}, say: [leave the glass to dry overnight], incorrect: [dry the glass with a towel] }
      - { id: oil, label: Oils it, say: [hearth hob soot singe scorch crisp] }`, "minimum: 50");
    const verdicts = (says: string) => matchStation(toldStation([...TALK, { role: "candidate", says }], "talk"), { ...compileRubric(two), learnt }).elements.map(({ item, verdict }) => `${item} ${verdict}`);
    expect(verdicts("Hearth hob soot singe scorch crisp.")).toEqual(["oil right"]);
    expect(matchOf("Hearth hob soot singe scorch crisp.", learnt)?.verdict).toBe("wrong");
  });

  test("finds an unsafe statement in words that the rubric does not have", () => {
    const rubric = compileRubric(cardWith("      - { id: dry, label: Left to dry, say: [leave the glass to dry] }", "minimum: 50", `
  - { id: singe, label: Dries it over the fire, severity: major, say: [dry the glass over the fire], contradicts: [dry/dry] }
`));
    const known: Learnt = { elements: { "unsafe:singe": { label: "Dries it over the fire", place: 0, about: -3, turned: 0, numbers: true }, "dry/dry": { label: LABEL, place: 1, about: -9, turned: 0, numbers: true } }, anyhow: 0, words: { hearth: [0, 4, 0], hob: [0, 4, 0], scorch: [0, 4, 0, 1, 0, 3], crisp: [0, 4, 0, 1, 0, 3] } };
    const unsafe = (says: string, learnt: Learnt | null) => matchStation(toldStation([...TALK, { role: "candidate", says }], "talk"), { ...rubric, learnt }).unsafe.map(({ statement }) => statement);
    expect(unsafe("Scorch it on the hob hearth crisp.", null)).toEqual([]);
    expect(unsafe("Scorch it on the hob hearth crisp.", known)).toEqual(["singe"]);
    expect(unsafe("Never dry the glass over the fire, you'd scorch it on the hob hearth crisp.", known)).toEqual([]);
    expect(unsafe("Feed the horses before the rain comes.", known)).toEqual([]);
    const alone = matchStation(toldStation([{ role: "candidate", says: "Scorch it on the hob hearth crisp." }], "talk"), { ...rubric, learnt: known });
    expect(alone.unsafe, "where hardly anything else is said").toEqual([]);
  });

  test("lets an unsafe statement go that fits where nothing speaks of it", () => {
    const rubric = compileRubric(cardWith("      - { id: dry, label: Left to dry, say: [leave the glass to dry] }", "minimum: 50", `
  - { id: singe, label: Dries it over the fire, severity: major, say: [dry over the fire], contradicts: [dry/dry] }
`));
    const element = { label: LABEL, place: 1, about: -3, turned: -3, numbers: true };
    const of = (about: number): Learnt => ({ elements: { "unsafe:singe": { label: "Dries it over the fire", place: 0, about, turned: 0, numbers: true }, "dry/dry": element }, anyhow: 0, words: {} });
    const unsafe = (learnt: Learnt | null) => matchStation(toldStation([...TALK, { role: "candidate", says: "When the weather is dry we sit out over by the fire with the horses." }], "talk"), { ...rubric, learnt }).unsafe.map(({ statement }) => statement);
    expect(unsafe(null)).toEqual(["singe"]);
    expect(unsafe(of(-5))).toEqual([]);
    expect(unsafe(of(5))).toEqual(["singe"]);
  });

  test("hears a question as what asks, and what is told as no question", () => {
    const rubric = compileRubric(cardWith("      - { id: dry, label: Asks about drying, kind: ask, say: [how do you dry it] }", "minimum: 50"));
    const asked = (says: string) => matchStation(toldStation([...TALK, { role: "candidate", says }], "talk"), { ...rubric, learnt }).elements.find(({ item }) => item === "dry")?.verdict;
    expect(asked("And have you ever hearth hob soot?")).toBe("right");
    expect(asked("Hearth beside the hob soot and all.")).toBeUndefined();
    expect(asked("And have you ever hearth hob soot singe scorch crisp?")).not.toBe("wrong");
  });

  test("keeps how likely each element is said, rightly and wrongly, found or not", () => {
    const judged = (says: string) => matchStation(toldStation([...TALK, { role: "candidate", says }], "talk"), { ...compileRubric(card), learnt }).judged[0]!;
    expect(judged("Feed the horses before the rain comes.")).toEqual({ item: "dry", element: "dry", right: expect.any(Number) as number, wrong: expect.any(Number) as number });
    expect(judged("Hearth beside the hob soot and all.").right).toBeGreaterThan(judged("Feed the horses before the rain comes, hearth.").right);
    expect(judged("Hearth hob soot singe scorch it crisp.").wrong).toBeGreaterThan(judged("Hearth beside the hob soot and all.").wrong);
  });

  test("says nothing where the words are of something else", () => {
    expect(matchOf("We should feed the horses before the rain comes.", learnt)).toBeUndefined();
  });

  test("makes a fit less likely whose other words turn it", () => {
    const judged = (says: string) => matchStation(toldStation([...TALK, { role: "candidate", says }], "talk"), { ...compileRubric(card), learnt }).judged[0]!;
    const [plain, turned] = [judged("Leave the lantern glass to dry overnight, polish it and wipe it clean."), judged("Leave the lantern glass to dry overnight, singe it and scorch it crisp.")];
    expect(turned.right).toBeLessThan(plain.right);
    expect(turned.wrong).toBeGreaterThan(plain.wrong);
  });

  test("leaves alone what the rubric's author wrote, said whole and by itself", () => {
    const turned: Learnt = { ...learnt, words: { lantern: [0, 4, 9], glass: [0, 4, 9], overnight: [0, 4, 9] } };
    expect(matchOf("Leave the lantern glass to dry overnight.", turned)?.verdict).toBe("right");
  });

  test("knows nothing of an element that is worded otherwise now", () => {
    const of = (label: string) => readLearnt(JSON.stringify({ saidwell: "learnt@1", id: "lantern", ...learnt }), "learnt.json", "lantern", new Map([["dry/dry", label]]));
    const stream = streamOf(toldStation(TALK, "talk"), ["candidate"]);
    const place = (label: string) => learntReading({ learnt: of(label) }, stream)!.placeOf("dry/dry");
    expect(place(LABEL)).toBe(0);
    expect(place("Left to dry for an hour")).toBeUndefined();
  });

  test.each(["company", "lonely"] as const)("every sign has its weight, in %s", (company) => {
    const { right, wrong, stated } = curves[company];
    expect([right, wrong, stated].map(({ signs }) => signs.length)).toEqual([SIGNS, SIGNS, STATED_SIGNS].map(({ length }) => length));
    expect(curves.company.unsafe.signs).toHaveLength(UNSAFE_SIGNS.length);
  });

  test("is not asked where nothing was learnt", () => {
    expect(matchOf("Leave the lantern glass to dry overnight.", { elements: {}, anyhow: 0, words: {} })?.verdict).toBe("right");
  });
});
