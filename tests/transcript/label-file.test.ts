// Invented data; behaviour only.
import { expect, test } from "vitest";
import { codes, intervals, read, spoken } from "./reading.ts";

const FRONT = "---\nsaidwell: labels@1\nsource: x.vtt\n---\n";
const BODY = `
# Before the station
[0:00.000 - 0:04.120] Announcer: You may begin. [buzzer]

# Station
[0:12.300 - 0:19.950] Candidate: Hello. Remember: at 8:30 [0:32] take <UNIN/> (four sprays) *twice* - [door closes loudly].
[0:19.950 - 0:21.000] Patient: Note: I did **not** "hear" that: sorry?
[59:59.001 - 1:00:02.500] Unknown: okay

# After the station
[1:00:03.000 - 1:00:04.000] Examiner: # thanks
`;

test("a label file comes back word for word, with its times, labels and parts", () => {
  const transcript = read(FRONT + BODY);
  expect(spoken(transcript)).toEqual([
    "Announcer: You may begin. [buzzer]",
    "Candidate: Hello. Remember: at 8:30 [0:32] take <UNIN/> (four sprays) *twice* - [door closes loudly].",
    'Patient: Note: I did **not** "hear" that: sorry?',
    "Unknown: okay",
    "Examiner: # thanks",
  ]);
  expect(intervals(transcript)).toEqual([[0, 4.12], [12.3, 19.95], [19.95, 21], [3599.001, 3602.5], [3603, 3604]]);
  expect(transcript.segments.map((segment) => segment.inStation)).toEqual([false, true, true, true, false]);
  expect(transcript.segments.every((segment) => segment.timing === "measured")).toBe(true);
  expect(transcript.frontMatter).toEqual({ saidwell: "labels@1", source: "x.vtt" });
  expect(transcript.headings.map(({ text, beforeWord }) => [text, beforeWord])).toEqual([["Before the station", 0], ["Station", 4], ["After the station", 24]]);
  expect(transcript.words.filter((word) => word.kind !== "word").map((word) => word.text)).toEqual(["[buzzer]", "<UNIN/>", "[door closes loudly]."]);
  expect(transcript.findings).toEqual([]);
});

test("without times it comes back too", () => {
  const transcript = read(FRONT + BODY.replace(/^\[\d.*?\] /gm, ""));
  expect(spoken(transcript)).toEqual(spoken(read(FRONT + BODY)));
  expect(transcript.segments.map((segment) => segment.inStation)).toEqual([false, true, true, true, false]);
  expect(codes(transcript)).toEqual(["SW-T15"]);
});

test("a line that a person wrapped goes on with the line before it", () => {
  const transcript = read(`${FRONT}# Station\nCandidate: Hello.\nRemember: shake it.\n\nPatient: ok`);
  expect(spoken(transcript)).toEqual(["Candidate: Hello. Remember: shake it.", "Patient: ok"]);
});

test("a heading of a person's own leaves the part as it is, and that is told", () => {
  const transcript = read(`${FRONT}# Station\nCandidate: Hello.\n# second half\nPatient: ok`);
  expect(transcript.segments.map((segment) => segment.inStation)).toEqual([true, true]);
  expect(codes(transcript)).toEqual(["SW-T15", "SW-T16"]);
});

test("outside a label file the same headings say nothing about the station", () => {
  expect(read(BODY).segments.every((segment) => segment.inStation === undefined)).toBe(true);
});

test("an estimated time is for the eye: its line shares the interval of the line before", () => {
  const transcript = read(`${FRONT}# Station\n[0:10.000 - 0:20.000] Candidate: one two three four\n[~0:18.000] Patient: five\n[0:30.000] Candidate: six`);
  expect(spoken(transcript)).toEqual(["Candidate: one two three four", "Patient: five", "Candidate: six"]);
  // By hand: five syllables in ten seconds.
  expect(intervals(transcript).slice(0, 2)).toEqual([[10, 18], [18, 20]]);
  expect(transcript.segments.map(({ timing, shares, startGiven }) => [timing, shares, startGiven])).toEqual([["estimated", undefined, undefined], ["estimated", true, undefined], ["estimated", undefined, true]]);
});
