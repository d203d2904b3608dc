// Invented data; behaviour only.
import { describe, expect, test } from "vitest";
import { codes, intervals, read, spoken } from "./reading.ts";

const srt = (cues: readonly [string, string, string][]) =>
  read(cues.map(([from, to, text], at) => `${at + 1}\n00:${from},000 --> 00:${to},000\n${text}\n`).join("\n"), "x.srt");

describe("ends", () => {
  test.each([["zero", "00:00"], ["at the start", "00:04"], ["before the start", "00:01"]])("an end %s is estimated, and that is told", (_, end) => {
    const transcript = srt([["00:04", end, "hello there"], ["00:08", "00:10", "bye"]]);
    expect(intervals(transcript)).toEqual([[4, 8], [8, 10]]);
    expect(transcript.segments[0]?.timing).toBe("estimated");
    expect(transcript.findings).toMatchObject([{ code: "SW-T12", severity: "warning", line: 2, file: "x.srt" }]);
  });

  test("a missing end is estimated, and that is told", () => {
    const transcript = read("1\n00:00:04,000 -->\nhello\n\n2\n00:00:08,000 --> 00:00:10,000\nbye\n", "x.srt");
    expect(intervals(transcript)).toEqual([[4, 8], [8, 10]]);
    expect(transcript.findings).toMatchObject([{ code: "SW-T12", line: 2, message: expect.stringContaining("no end") as string }]);
  });

  test("too few words for the time to the next mark: the silence is not filled with them", () => {
    const transcript = read("[0:00] take one now and one more\n[0:02] okay\n[9:00] bye bye");
    expect(transcript.segments[1]?.end).toBeLessThan(5);
    expect(transcript.findings).toContainEqual(expect.objectContaining({ code: "SW-T12", line: 2, message: expect.stringContaining("too few words") as string }));
  });
});

describe("times out of order", () => {
  test("a machine's cues are put in order of time", () => {
    const transcript = srt([["00:01", "00:02", "one"], ["00:09", "00:10", "three"], ["00:04", "00:05", "two"]]);
    expect(spoken(transcript)).toEqual(["?: one", "?: two", "?: three"]);
    expect(transcript.findings).toMatchObject([{ code: "SW-T10", severity: "warning", line: 10 }]);
    expect(transcript.words.map((word) => word.segment)).toEqual([0, 1, 2]);
  });

  test("a typed time that does not fit is not believed, its words stay where they stand", () => {
    const transcript = read("[0:00] one one\n[0:10] two two\n[7:20] three three\n[0:30] four four\n[0:40] five five\n[0:50] six");
    expect(spoken(transcript).map((line) => line.split(" ")[1])).toEqual(["one", "two", "three", "four", "five", "six"]);
    expect(intervals(transcript).slice(1, 4)).toEqual([[10, 20], [20, 30], [30, 40]]);
    expect(transcript.findings[0]).toMatchObject({ code: "SW-T10", line: 3 });
  });

  test("a clock that starts anew is a second recording: it goes on after the first, and that is told", () => {
    const part = "[0:00] a a\n[0:20] b b\n[0:40] c c\n[1:00] d d\n";
    const transcript = read(part + part);
    // Two syllables after 1:00 at the usual pace, rounded up: the second part starts at 1:01.
    expect(intervals(transcript).map(([start]) => start)).toEqual([0, 20, 40, 60, 61, 81, 101, 121]);
    expect(spoken(transcript).join(" ")).toBe("?: a a ?: b b ?: c c ?: d d ?: a a ?: b b ?: c c ?: d d");
    expect(transcript.findings).toContainEqual(expect.objectContaining({ code: "SW-T10", line: 5, message: expect.stringContaining("two recordings") as string }));
  });

  test("two speakers' cues listed one after the other are one recording: they interleave", () => {
    const vtt = (voice: string, from: number) => Array.from({ length: 4 }, (_, at) => `00:${String(from + at * 15).padStart(2, "0")}.000 --> 00:${String(from + at * 15 + 5).padStart(2, "0")}.000\n<v ${voice}>word\n`).join("\n");
    expect(read(`WEBVTT\n\n${vtt("A", 0)}\n${vtt("B", 7)}`, "x.vtt").segments.map((segment) => segment.speaker)).toEqual(["A", "B", "A", "B", "A", "B", "A", "B"]);
  });

  test("a word's time that runs backwards inside a segment is estimated, and that is told", () => {
    const transcript = read(JSON.stringify([{ start: 0, end: 4, words: [{ word: "a", start: 0, end: 1 }, { word: "b", start: 3, end: 3.5 }, { word: "c", start: 1, end: 2 }] }]), "x.json");
    expect(transcript.words[2]).toMatchObject({ start: 3.5, end: 4, timing: "estimated" });
    expect(codes(transcript)).toEqual(["SW-T10"]);
  });
});

describe("overlaps", () => {
  const overlap = (first: string, second: string) => srt([["00:00", "00:05", `${first}hello there my friend`], ["00:03", "00:08", `${second}yes`]]);

  test("of different speakers are natural: kept, no finding", () => {
    const transcript = overlap("Candidate: ", "Patient: ");
    expect(intervals(transcript)).toEqual([[0, 5], [3, 8]]);
    expect(transcript.findings).toEqual([]);
  });

  test("of one speaker: the earlier ends where the later starts, and that is told", () => {
    const transcript = overlap("Candidate: ", "Candidate: ");
    expect(intervals(transcript)).toEqual([[0, 3], [3, 8]]);
    expect(transcript.findings).toMatchObject([{ code: "SW-T11", severity: "warning", line: 6 }]);
  });

  test("without labels: kept, and that is told", () => {
    const transcript = overlap("", "");
    expect(intervals(transcript)).toEqual([[0, 5], [3, 8]]);
    expect(transcript.findings).toMatchObject([{ code: "SW-T11", severity: "info", line: 6 }]);
  });
});

describe("times that are missing or cannot be read", () => {
  test("a cue whose time cannot be read keeps its words, between its neighbours", () => {
    const transcript = read("1\n00:00:01,000 --> 00:00:02,000\none\n\n2\n00:00:xx,000 --> 00:00:xx,000\ntwo\n\n3\n00:00:09,000 --> 00:00:10,000\nthree\n", "x.srt");
    expect(spoken(transcript)).toEqual(["?: one", "?: two", "?: three"]);
    expect(transcript.segments[1]?.start).toBe(2);
    expect(transcript.segments[1]?.timing).toBe("estimated");
    expect(transcript.findings).toMatchObject([{ code: "SW-T13", line: 6 }]);
  });

  test("a mark that cannot be read still parts the text", () => {
    const transcript = read("[0:00] one one\n[0:99] two two\n[0:20] three");
    expect(spoken(transcript)).toEqual(["?: one one", "?: two two", "?: three"]);
    expect(intervals(transcript).slice(0, 2)).toEqual([[0, 10], [10, 20]]);
    expect(transcript.findings[0]).toMatchObject({ code: "SW-T13", line: 2, message: expect.stringContaining("0:99") as string });
  });

  test("several stretches at one and the same mark share the time to the next", () => {
    const transcript = read("[0:10] Candidate: take two now\n[0:10] Patient: yes\n[0:14] Candidate: ok");
    expect(intervals(transcript).slice(0, 2)).toEqual([[10, 13], [13, 14]]);
  });
});

test("words share a stretch by their syllables: estimated, never falling, within it", () => {
  const transcript = read("[0:00 - 0:06] a corticosteroid inhaler - twice [pause]\n");
  // a 1, corticosteroid 5 or 6 by the package, inhaler 3, a dash 0, twice 1, a mark 2
  const shares = transcript.words.map((word) => (word.end ?? 0) - (word.start ?? 0));
  expect(shares[3]).toBe(0);
  expect((shares[2] ?? 0) / (shares[0] ?? 1)).toBeCloseTo(3, 1);
  expect((shares[5] ?? 0) / (shares[4] ?? 1)).toBeCloseTo(2, 1);
  expect(transcript.words[0]?.start).toBe(0);
  expect(transcript.words.at(-1)?.end).toBe(6);
  expect(transcript.words.every((word) => word.timing === "estimated")).toBe(true);
});

describe("what is read in spite of its form is told", () => {
  const messages = (text: string, file: string) => read(text, file).findings.map(({ code, message }) => `${code} ${message}`);

  test("another arrow between the times of a cue", () => {
    expect(messages("WEBVTT\n\n00:01.000 -> 00:03.000\nHello there.\n\n00:04.000 --> 00:05.000\nHi.\n", "a.vtt")).toEqual(['SW-T16 "->" between two times was read as "-->"']);
  });

  test("dots for commas, and missing numbers, in SubRip", () => {
    const cues = (comma: string, number: boolean) => ["Hello there.", "Hi."].map((words, at) => `${number ? `${at + 1}\n` : ""}00:00:0${at * 3 + 1}${comma}000 --> 00:00:0${at * 3 + 3}${comma}000\n${words}\n`).join("\n");
    expect(messages(cues(",", true), "a.srt")).toEqual([]);
    expect(messages(cues(".", true), "a.srt")).toEqual([expect.stringMatching(/^SW-T16 the time is not written as SubRip has it/)]);
    expect(messages(cues(",", false), "a.srt")).toEqual([expect.stringMatching(/^SW-T16 the number above this cue is missing/)]);
  });

  test("times of a kind that cannot be read: the labels behind them are read, the times are not dropped silently", () => {
    const transcript = read("[2h00] Candidate: Hello, I am the pharmacist.\n[2h06] Patient: Hi.\n[2h10] Candidate: Shake it well.");
    expect(spoken(transcript)).toEqual(["Candidate: Hello, I am the pharmacist.", "Patient: Hi.", "Candidate: Shake it well."]);
    expect(transcript.findings.map(({ code, message }) => [code, message])).toContainEqual(["SW-T13", expect.stringMatching(/^the time "2h00" cannot be read; the words were kept, without times/)]);
  });

  test("a single one in brackets is speech, and that is told", () => {
    expect(codes(read("[9:99] is what it said.\n\nCandidate: Hello."))).toContain("SW-T17");
  });
});
