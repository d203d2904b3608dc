// One invented rehearsal in every format (fixtures/transcripts). Behaviour only; nothing here is from a real recording.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { intervals, read, spoken } from "./reading.ts";

const open = (name: string) => read(readFileSync(`fixtures/transcripts/${name}`), name);
const TIMED = ["rehearsal.txt", "rehearsal.vtt", "rehearsal.srt", "rehearsal.long.TextGrid", "rehearsal.short.TextGrid", "rehearsal.json"];
const first = open("rehearsal.json");

test("the rehearsal is the one that was written", () => {
  expect(spoken(first)).toHaveLength(7);
  expect(spoken(first)[2]).toBe("Patient: Yes please [laughs] I have never used one.");
  expect(intervals(first)[3]).toEqual([14.4, 24.05]);
  // No mark of several words in this text, so white space alone counts its words.
  const texts = (JSON.parse(readFileSync("fixtures/transcripts/rehearsal.json", "utf8")) as { segments: { text: string }[] }).segments;
  expect(first.words.map((word) => word.text)).toEqual(texts.flatMap(({ text }) => text.split(" ")));
});

describe.each(TIMED)("%s", (name) => {
  const transcript = open(name);

  test("has the same words by the same speakers in the same order", () => {
    expect(spoken(transcript)).toEqual(spoken(first));
    expect(transcript.words.map((word) => word.kind)).toEqual(first.words.map((word) => word.kind));
  });

  test("has the same times of stretches and, within rounding, of words", () => {
    expect(intervals(transcript)).toEqual(intervals(first));
    transcript.words.forEach((word, at) => {
      expect(word.start).toBeCloseTo(first.words[at]?.start ?? -1, 3);
      expect(word.end).toBeCloseTo(first.words[at]?.end ?? -1, 3);
    });
    expect(transcript.timing).toBe("segment");
    expect(transcript.duration).toBe(3607.25);
  });

  test("needs no repair and no guess", () => {
    expect(transcript.findings.filter((finding) => finding.severity !== "info")).toEqual([]);
    expect(transcript.segments.every((segment) => segment.timing === "measured")).toBe(true);
  });

  test("keeps the line of each word", () => {
    const lines = readFileSync(`fixtures/transcripts/${name}`, "utf8").split(/\r?\n/);
    for (const word of transcript.words) expect(lines[word.line - 1]).toContain(word.text);
  });
});

test("labels and start times alone on a line give the same words, speakers and starts", () => {
  const transcript = open("rehearsal.headers.txt");
  expect(spoken(transcript)).toEqual(spoken(first));
  expect(intervals(transcript).map(([start]) => start)).toEqual(intervals(first).map(([start]) => start));
  expect(transcript.segments.every((segment) => segment.timing === "estimated")).toBe(true);
});

test("without times the same words and speakers are read, and time is not measurable", () => {
  const transcript = open("rehearsal.untimed.md");
  expect(spoken(transcript)).toEqual(spoken(first));
  expect(transcript.timing).toBe("none");
  expect(transcript.duration).toBeNull();
  expect(transcript.findings.map((finding) => finding.code)).toEqual(["SW-T15"]);
});

test.each(["utf-8", "utf-8 with mark", "utf-16le", "utf-16be"])("any format reads alike in %s and with any line end", (encoding) => {
  for (const name of TIMED) {
    const text = readFileSync(`fixtures/transcripts/${name}`, "utf8").replace(/\r\n/g, "\n");
    for (const lineEnd of ["\n", "\r\n", "\r"]) {
      const transcript = read(encode(text.replaceAll("\n", lineEnd), encoding), name);
      expect(spoken(transcript)).toEqual(spoken(first));
      expect(transcript.segments.map((segment) => segment.line)).toEqual(open(name).segments.map((segment) => segment.line));
    }
  }
});

function encode(text: string, encoding: string): Uint8Array {
  if (encoding === "utf-8") return Buffer.from(text, "utf8");
  if (encoding === "utf-8 with mark") return Buffer.from(`\uFEFF${text}`, "utf8");
  const little = Buffer.from(`\uFEFF${text}`, "utf16le");
  return encoding === "utf-16le" ? little : little.swap16();
}
