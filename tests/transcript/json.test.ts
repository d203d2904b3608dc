// Invented data; behaviour only.
import { describe, expect, test } from "vitest";
import { codes, intervals, read, refusal, spoken } from "./reading.ts";

const json = (value: unknown) => read(JSON.stringify(value, null, 1), "x.json");

test("segments with all keys", () => {
  const transcript = json({
    saidwell: "transcript@1",
    station: 3,
    segments: [{ text: "Shake it.", start: 1, end: 2, speaker: "Candidate", confidence: 0.9, inStation: true, words: [{ text: "Shake", start: 1, end: 1.4, confidence: 0.8 }, { text: "it.", start: 1.5, end: 1.9 }] }],
  });
  expect(transcript.frontMatter).toEqual({ saidwell: "transcript@1", station: "3" });
  expect(transcript.segments).toMatchObject([{ speaker: "Candidate", start: 1, end: 2, timing: "measured", inStation: true }]);
  expect(transcript.words).toMatchObject([
    { text: "Shake", start: 1, end: 1.4, timing: "measured", confidence: 0.8, line: 13 },
    { text: "it.", start: 1.5, end: 1.9, timing: "measured", confidence: 0.9, line: 19 },
  ]);
  expect(transcript.timing).toBe("word");
  expect(transcript.findings).toEqual([]);
});

test("sentences of the label command: the role is the label, its confidence is not the words'", () => {
  const transcript = json({ sentences: [{ text: "You may begin.", start: 0, end: 1, role: "announcer", confidence: 0.7, inStation: false }, { text: "Hello.", start: 1, end: 2, role: "candidate", speaker: "Sam", confidence: 0.9, inStation: true }] });
  expect(spoken(transcript)).toEqual(["announcer: You may begin.", "Sam: Hello."]);
  expect(transcript.segments.map((segment) => segment.inStation)).toEqual([false, true]);
  expect(transcript.words.every((word) => word.confidence === undefined)).toBe(true);
});

test.each<[string, unknown]>([
  ["a bare array", [{ text: "hi there", start: 0, end: 1, speaker: "A" }, { text: "ok", start: 1, end: 2, speaker: "B" }]],
  ["words alone, with speakers", { words: [{ word: "hi", start: 0, end: 0.5, speaker: "A" }, { word: "there", start: 0.5, end: 1, speaker: "A" }, { word: "ok", start: 1, end: 2, speaker: "B" }] }],
  ["a bare array of words", [{ word: "hi", start: 0, end: 0.5, speaker: "A" }, { word: "there", start: 0.5, end: 1, speaker: "A" }, { word: "ok", start: 1, end: 2, speaker: "B" }]],
  ["other spellings", { results: { utterances: [{ transcript: "hi there", start_time: "0", endTime: "1.0s", speaker_label: "A" }, { transcript: "ok", begin: "0:01", stop: "00:00:02,000", speakerId: "B" }] } }],
  ["pairs and durations", { chunks: [{ text: " hi there", timestamp: [0, 1], speaker: { name: "A" } }, { text: "ok", start: 1, duration: 1, speaker: { id: "B" } }] }],
  ["milliseconds by name", { segments: [{ text: "hi there", start_ms: 0, end_ms: 1000, speaker: "A" }, { text: "ok", startMs: 1000, endMs: "2000", speaker: "B" }] }],
])("%s gives the same stretches", (_, value) => {
  const transcript = json(value);
  expect(spoken(transcript)).toEqual(["A: hi there", "B: ok"]);
  expect(intervals(transcript)).toEqual([[0, 1], [1, 2]]);
  expect(transcript.findings).toEqual([]);
});

describe("text beside a list of words", () => {
  test("the text's spelling and marks win, the list gives the times", () => {
    const transcript = json([{ text: "Hello, [laughs] Ben: take two.", start: 0, end: 5, words: [{ word: "hello", start: 0, end: 1 }, { word: "ben", start: 2, end: 2.5 }, { word: "take", start: 3, end: 3.5 }, { word: "two", start: 4, end: 4.5 }] }]);
    expect(transcript.words.map(({ text, start, timing }) => [text, start, timing])).toEqual([
      ["Hello,", 0, "measured"],
      ["[laughs]", 1, "estimated"],
      ["Ben:", 2, "measured"],
      ["take", 3, "measured"],
      ["two.", 4, "measured"],
    ]);
  });

  test("when the two are different texts the text is read, and that is told", () => {
    const transcript = json([{ text: "one two three four", start: 0, end: 4, words: [{ word: "alpha", start: 0, end: 1 }, { word: "beta", start: 1, end: 2 }] }]);
    expect(spoken(transcript)).toEqual(["?: one two three four"]);
    expect(codes(transcript)).toContain("SW-T17");
  });

  test("a mark that runs over entries of the list is one word", () => {
    const transcript = json({ words: [{ word: "yes", start: 0, end: 1 }, { word: "[laughs", start: 1, end: 2 }, { word: "loudly]", start: 2, end: 3 }] });
    expect(transcript.words).toMatchObject([{ text: "yes" }, { text: "[laughs loudly]", kind: "sound", start: 1, end: 3 }]);
  });

  test("another speaker's word inside a segment starts a new stretch", () => {
    expect(spoken(json([{ speaker: "A", start: 0, end: 3, words: [{ word: "one", start: 0, end: 1 }, { word: "mhm", start: 1, end: 2, speaker: "B" }, { word: "two", start: 2, end: 3 }] }]))).toEqual(["A: one", "B: mhm", "A: two"]);
  });
});

describe("what is missing or odd is tolerated and told", () => {
  test.each<[string, unknown, string]>([
    ["a time that is no time", [{ text: "a", start: "soon" }, { text: "b", start: 1, end: 2 }], "SW-T13"],
    ["a negative time", [{ text: "a", start: -1, end: 2 }], "SW-T13"],
    ["a date for a time", [{ text: "a", start: 1700000000, end: 1700000004 }], "SW-T13"],
    ["a segment without text", [{ start: 1 }, { text: "b", start: 1, end: 2 }], "SW-T14"],
    ["a percentage", [{ text: "b", start: 1, end: 2, confidence: 93 }], "SW-T16"],
    ["a confidence that is none", [{ text: "b", start: 1, end: 2, confidence: "high" }], "SW-T14"],
    ["a speaker that is none", [{ text: "b", start: 1, end: 2, speaker: ["x"] }], "SW-T14"],
    ["whole numbers too large for seconds", [{ text: "hello there", start: 0, end: 4000 }, { text: "b", start: 4000, end: 9000 }], "SW-T17"],
    ["no times", [{ text: "a" }], "SW-T15"],
  ])("%s", (_, value, code) => {
    expect(codes(json(value))).toContain(code);
  });

  test("milliseconds that were guessed are seconds in the transcript", () => {
    expect(intervals(json([{ text: "hello there", start: 0, end: 4000 }, { text: "b", start: 4000, end: 9000 }]))).toEqual([[0, 4], [4, 9]]);
  });

  test("a comma too many, NaN", () => {
    const transcript = read('[{"text": "hi", "start": 0, "end": 1, "confidence": NaN},]', "x.json");
    expect(spoken(transcript)).toEqual(["?: hi"]);
    expect(codes(transcript).sort()).toEqual(["SW-T16"]);
  });

  test("a finding carries the line of the JSON text", () => {
    expect(read('[\n{"text": "hi", "start": 0, "end": 1},\n{"text": "ho",\n "start": "soon"}\n]', "x.json").findings[0]).toMatchObject({ code: "SW-T13", line: 4 });
  });
});

test.each<[string, string, number, RegExp]>([
  ["cut off", '{"segments": [\n{"text": "a"', 2, /ends before it is complete/],
  ["a missing comma", '{"segments": [\n{"text": "a" "b"}]}', 2, /not well formed/],
  ["no segments", '{\n"a": 1}', 1, /neither "segments" nor "words"/],
  ["segments that are no array", '{\n"segments": "x"}', 2, /must be an array, and here they are a string/],
  ["a segment that is a number", '{"segments": [\n{"text": "a"},\n5]}', 3, /must be an object, and here it is a number/],
  ["text that is a list", '[{"text":\n ["a"]}]', 2, /text must be a string/],
  ["words that are a number", '[{"words":\n 5}]', 2, /words must be an array/],
  ["a word that is a number", '[{"words": [\n 5]}]', 2, /a word must be an object or a string/],
  ["nested too deep", "[".repeat(100_000), 1, /nested more than/],
])("broken (%s): one error with its line", (_, text, line, message) => {
  expect(refusal(text, "x.json")).toMatchObject([{ code: "SW-T05", severity: "error", line, message: expect.stringMatching(message) as string }]);
});
