import { describe, expect, test } from "vitest";
import { PAUSE, pausesOf } from "../../../src/scoring/time/pauses.ts";
import { findStation } from "../../../src/station/find.ts";
import { readTranscript } from "../../../src/transcript/read.ts";
import { stationOf } from "./station-of.ts";

const word = (from: number, to: number, role: "candidate" | "patient" = "candidate", timing: "measured" | "estimated" = "measured") => ({ role, text: "shake", from, to, timing });

describe(`a pause is a silence of at least ${PAUSE} s between any two words`, () => {
  test("counted, summed, the longest first: gaps of 3, 1.9, 2 and 5.5 s", () => {
    const station = stationOf([word(0, 1), word(4, 5), word(6.9, 7.5, "patient"), word(9.5, 10), word(15.5, 16)]);
    expect(pausesOf(station)).toEqual({
      value: { count: 3, seconds: 10.5, longest: [{ at: 10, seconds: 5.5 }, { at: 1, seconds: 3 }, { at: 7.5, seconds: 2 }] },
      estimated: false,
    });
  });

  test("no silence while somebody else talks: the patient's long turn covers the gap", () => {
    const station = stationOf([word(0, 1), { role: "patient", text: "a long tale", from: 0.5, to: 6 }, word(6.5, 7)]);
    expect(pausesOf(station)).toMatchObject({ value: { count: 0, seconds: 0, longest: [] } });
  });

  test("only three are listed, all are counted", () => {
    const station = stationOf([word(0, 1), word(4, 5), word(8, 9), word(12, 13), word(16, 17)]);
    expect(pausesOf(station)).toMatchObject({ value: { count: 4, seconds: 12, longest: [{}, {}, {}] } });
  });

  test("what lies before the station's start and after its end is none", () => {
    const station = stationOf([word(0, 1), word(10, 11), word(12, 13), word(30, 31)]);
    const inner = { ...station, start: { ...station.start, word: 1, time: 10 }, end: { ...station.end, word: 3, time: 13 } };
    expect(pausesOf(inner)).toMatchObject({ value: { count: 0 } });
  });
});

describe("only what the file measured is silence", () => {
  test("no pause beside a word whose time is estimated, and none across it", () => {
    const station = stationOf([word(0, 1), word(4, 5, "candidate", "estimated"), word(8, 9), word(12, 13)]);
    expect(pausesOf(station)).toMatchObject({ value: { count: 1, seconds: 3, longest: [{ at: 9, seconds: 3 }] } });
  });

  test("segments with measured ends have pauses between them", () => {
    const station = stationOf([{ role: "candidate", text: "shake it", from: 0, to: 4 }, { role: "candidate", text: "breathe out", from: 9, to: 12 }], { timing: "segment" });
    expect(pausesOf(station)).toMatchObject({ value: { count: 1, seconds: 5 } });
  });

  test("captions have ends: two voices that share a caption, or one caption without an end, leave the other pauses measured", () => {
    const cues = Array.from({ length: 8 }, (_, at) => `00:00:${String(20 + at * 5).padStart(2, "0")},000 --> 00:00:${String(24 + at * 5).padStart(2, "0")},000\nDAN: Rub it in well.`);
    const captions = ["00:00:01,000 --> 00:00:04,000\nDAN: Hello, what can I do?", "00:00:08,000 --> 00:00:12,000\n- MIA: I have a rash.\n- DAN: Where is it?", "00:00:14,500 --> 00:00:15,500\nMIA: On my arm.", "00:00:17,800 -->\nDAN: Since when?", ...cues];
    const station = findStation(readTranscript(new TextEncoder().encode(captions.map((cue, at) => `${at + 1}\n${cue}\n`).join("\n")), { file: "rash.srt" }), { from: 0, to: 60 });
    // Before the shared caption and after it; beside the caption without an end none is told.
    expect(pausesOf(station)).toMatchObject({ value: { count: 2, seconds: 6.5, longest: [{ at: 4, seconds: 4 }, { at: 12, seconds: 2.5 }] } });
  });

  test("paragraphs that have a start and no end leave nothing to measure, and it says so", () => {
    const station = stationOf([{ role: "candidate", text: "shake it", from: 0, to: 4, timing: "estimated" }, { role: "candidate", text: "breathe out", from: 20, to: 24, timing: "estimated" }], { timing: "segment" });
    expect(pausesOf(station)).toEqual({ value: null, why: "the file gives starts of paragraphs, but not their ends" });
  });
});

test("a short word inside a long stretch of somebody else's does not end it", () => {
  const station = stationOf([{ role: "patient", text: "tale", from: 0, to: 20 }, word(5, 6), word(21, 22)]);
  expect(pausesOf(station)).toMatchObject({ value: { count: 0 } });
});
