import { describe, expect, test } from "vitest";
import { timeFigures } from "../../../src/scoring/time/figures.ts";
import { PACE_CAUTION, timePlan, type PlanInput } from "../../../src/scoring/time/plan.ts";
import { stationOf, talk } from "./station-of.ts";

/** Candidate 300 words in 120 s (150 a minute), a silence of 20 s, patient 60 s: 200 s in all. */
const station = stationOf([
  { role: "candidate", text: talk(300), from: 0, to: 120 },
  { role: "patient", text: talk(100), from: 140, to: 200 },
]);
const plan = (target: number, more: Partial<PlanInput> = {}) => timePlan({ time: timeFigures(station, { limit: 400, target }), repeats: [], asides: [], ...more });

describe("what could be saved", () => {
  test("repeats, fillers, asides and pauses with their words and seconds", () => {
    const spoken = stationOf([{ role: "candidate", text: `um um uh, you know, ${talk(55)}`, from: 0, to: 24 }, { role: "candidate", text: "shake", from: 30, to: 30.4 }]);
    const { costs } = timePlan({ time: timeFigures(spoken, { limit: 60, target: 50 }), repeats: [{ words: 10, seconds: 4 }, { words: 5, seconds: 2.5 }], asides: [{ words: 30, seconds: 12 }] });
    expect(costs).toEqual([
      { what: "repeats", words: 15, seconds: 6.5 },
      // Four fillers of five words ("you know" has two) at 61 words in 24.4 s.
      { what: "fillers", words: 5, seconds: 2 },
      { what: "asides", words: 30, seconds: 12 },
      { what: "pauses", words: 0, seconds: 6 },
    ]);
  });

  test("the projected time is without repeats, fillers and asides; pauses may be the patient's and are not promised", () => {
    expect(plan(180, { repeats: [{ words: 25, seconds: 10 }], asides: [{ words: 50, seconds: 20 }] }).projected).toEqual({ value: 170, estimated: true });
  });
});

describe("what meeting the target takes", () => {
  test("20 s over at 150 words a minute are 50 words to cut", () => {
    expect(plan(180).wordsToCut).toEqual({ value: 50, estimated: true });
  });

  test("or all 300 words in the 100 s that are left to the candidate: 180 a minute, which people follow", () => {
    expect(plan(180)).toMatchObject({ paceNeeded: { value: 180, estimated: true }, caution: null });
  });

  test("a pace beyond that of an interview brings the caution with its sources", () => {
    // 300 words in 80 s: 225 a minute.
    expect(plan(160)).toMatchObject({ paceNeeded: { value: 225, estimated: true }, caution: PACE_CAUTION });
    expect(PACE_CAUTION).toMatch(/Tauroza and Allison 1990.*Foulke and Sticht 1969.*Foulke 1971/);
  });

  test("a target that is met asks for nothing", () => {
    expect(plan(200)).toMatchObject({ wordsToCut: { value: 0 }, paceNeeded: { value: null, why: "the target is met at the present pace" }, caution: null });
  });

  test("a target that the patient's talk and the silences alone exceed cannot be met by words, and it says so", () => {
    const { wordsToCut, paceNeeded } = plan(70);
    expect(wordsToCut).toEqual({ value: null, why: "the others' talk and the silences alone take longer than the target" });
    expect(paceNeeded).toEqual(wordsToCut);
  });

  test("cutting the words makes the time: the plan is consistent with itself", () => {
    for (const target of [90, 120, 150, 180]) {
      const { wordsToCut, paceNeeded } = plan(target);
      expect(200 - (60 * wordsToCut.value!) / 150).toBeCloseTo(target, 0);
      expect(80 + (60 * 300) / paceNeeded.value!).toBeCloseTo(target, 0);
    }
  });
});

test("without times words are counted and seconds are not", () => {
  const silent = stationOf([{ role: "candidate", text: `um ${talk(50)}` }]);
  const why = "the transcript has no times";
  expect(timePlan({ time: timeFigures(silent, { limit: 400, target: 300 }), repeats: [{ words: 7, seconds: null }], asides: [] })).toEqual({
    costs: [
      { what: "repeats", words: 7, seconds: null },
      { what: "fillers", words: 1, seconds: null },
      { what: "asides", words: 0, seconds: 0 },
      { what: "pauses", words: 0, seconds: null },
    ],
    projected: { value: null, why },
    wordsToCut: { value: null, why },
    paceNeeded: { value: null, why },
    caution: null,
  });
});
