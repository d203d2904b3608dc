import { describe, expect, test } from "vitest";
import { timeFigures } from "../../../src/scoring/time/figures.ts";
import { findStation } from "../../../src/station/find.ts";
import { readTranscript } from "../../../src/transcript/read.ts";

// Invented talk. Each tier's pace is worked out below from its own intervals, with nothing of ours in between.
const CANDIDATE: [number, number, string][] = [
  [0, 0.8, ""],
  [0.8, 6.3, "Hello, my name is Robin and I am the pharmacist here today, is now a good time to talk?"],
  [6.3, 8.1, ""],
  [8.1, 17.4, "I am going to show you how to use your new inhaler, then I would like you to show it to me, so that I know I explained it well."],
  [17.4, 21, ""],
  [21, 29.7, "First take the cap off and look inside, then shake it well, and breathe out gently, away from the inhaler."],
];
const PATIENT: [number, number, string][] = [
  [0, 6.5, ""],
  [6.5, 8, "Yes, that is fine, thank you."],
  [8, 17.6, ""],
  [17.6, 20.7, "All right, I have never had one of these before."],
  [20.7, 29.7, ""],
];

const tier = (name: string, place: number, intervals: typeof CANDIDATE) =>
  [
    `    item [${place}]:`, '        class = "IntervalTier"', `        name = "${name}"`, "        xmin = 0", "        xmax = 29.7", `        intervals: size = ${intervals.length}`,
    ...intervals.flatMap(([from, to, text], at) => [`        intervals [${at + 1}]:`, `            xmin = ${from}`, `            xmax = ${to}`, `            text = "${text}"`]),
  ].join("\n");
const GRID = ['File type = "ooTextFile"', 'Object class = "TextGrid"', "", "xmin = 0", "xmax = 29.7", "tiers? <exists>", "size = 2", "item []:", tier("Candidate", 1, CANDIDATE), tier("Patient", 2, PATIENT)].join("\n");

const spoken = (intervals: typeof CANDIDATE) => intervals.filter(([, , text]) => text !== "");
const count = (intervals: typeof CANDIDATE) => spoken(intervals).reduce((sum, [, , text]) => sum + text.split(" ").length, 0);

describe("words a minute recomputed from the intervals of a TextGrid", () => {
  const time = timeFigures(findStation(readTranscript(new TextEncoder().encode(GRID), { file: "invented.TextGrid" })), { limit: 60, target: 50 });

  test("words are counted alike", () => expect([time.candidateWords, time.patientWords]).toEqual([count(CANDIDATE), count(PATIENT)]));

  test("talking pace is equal to 1%", () => {
    const seconds = spoken(CANDIDATE).reduce((sum, [from, to]) => sum + to - from, 0);
    expect(Math.abs(time.articulation.value! / ((60 * count(CANDIDATE)) / seconds) - 1)).toBeLessThan(0.01);
  });

  test("overall pace is equal to 1%: from the first word at 0.8 s to the last at 29.7 s", () => {
    expect(Math.abs(time.wordsPerMinute.value! / ((60 * count(CANDIDATE)) / 28.9) - 1)).toBeLessThan(0.01);
  });

  test("the intervals' own silences are shorter than a pause", () => expect(time.pauses).toMatchObject({ value: { count: 0 } }));
});
