import { describe, expect, test } from "vitest";
import { markTalk, OPENING } from "./station-card.ts";

const STEP = "C: Shake the inhaler well and hold your breath for ten seconds.";
const quotes = (...lines: string[]) => markTalk([...OPENING, ...lines]).asides.map(({ evidence }) => evidence.quote);

describe("an aside is talk of the candidate or of other people that tells the patient nothing", () => {
  test("a story of somebody else, with its tail", () => {
    expect(quotes("C: My uncle kept bees for years, he lost a whole hive in the flood. Poor man. Shake the inhaler well.")).toEqual(["My uncle kept bees for years, he lost a whole hive in the flood. Poor man."]);
  });

  test("a story of oneself", () => {
    expect(quotes(STEP, "C: We went to the coast on Sunday and I dropped the whole picnic on the sand.", "P: Oh dear.")).toEqual(["We went to the coast on Sunday and I dropped the whole picnic on the sand."]);
  });

  test("a question by the way, and what is said to its answer", () => {
    expect(quotes("C: By the way, was that parade noisy where the market is?", "P: Very.", "C: Terrible drums. Shake the inhaler well.")).toEqual(["By the way, was that parade noisy where the market is?", "Terrible drums."]);
  });

  test("what comes in from outside and is said to others in the room, questions and all", () => {
    const interruption = "Sorry, is that the phone? Can somebody get that? I'll just ask my colleague to answer it. Are we still getting the delivery at three? Okay, right, where were we.";
    expect(quotes(`C: ${interruption} Shake the inhaler well.`)).toEqual([interruption]);
  });

  test("its words and seconds are counted, and the time plan is made of them", () => {
    const sheet = markTalk([...OPENING, "@10 C: My uncle kept bees for years and he lost a whole hive in the flood.", "@20 P: Oh."]);
    expect(sheet.asides).toMatchObject([{ words: 15, seconds: expect.any(Number) }]);
    expect(sheet.plan.costs.find(({ what }) => what === "asides")).toMatchObject({ words: 15, seconds: Math.round(sheet.asides[0]!.seconds! * 10) / 10 });
  });
});

describe("no aside", () => {
  test.each([
    ["what the patient is told to do", "C: You had better keep your uncle's old one away from the bees and from the flood."],
    ["what the rubric lists, whoever it tells of", "C: He gives his a good shake, my uncle, and he keeps his breath in for ten seconds."],
    ["what is said of this talk", "C: As I said at the start and as we said a moment ago."],
    ["a promise to find out", "C: I was told once but I'm not sure, let me check and get back to you."],
    ["a colleague who is asked for the patient", "C: I'll just ask my colleague about that and come straight back."],
    ["whether somebody can help the patient", "C: Is there a neighbour, or can somebody at home help you with the cap of it?"],
    ["the candidate's name and role", "C: My name is Robin and I am the pharmacist here."],
    ["a word of comfort", "C: Oh dear, poor you."],
  ])("%s", (_, line) => expect(quotes(line)).toEqual([]));
});
