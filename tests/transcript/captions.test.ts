// Invented captions; behaviour only. SubRip has no published text: the forms are those found in the wild.
import { describe, expect, test } from "vitest";
import { codes, intervals, read, spoken } from "./reading.ts";

describe("WebVTT", () => {
  const vtt = (body: string) => read(`WEBVTT\n\n${body}`, "x.vtt");

  test("keeps header text as a heading and header lines as front matter", () => {
    const transcript = read("WEBVTT - Station 3\nKind: captions\nLanguage: en\n\n00:01.000 --> 00:02.000\nhello\n", "x.vtt");
    expect(transcript.headings).toEqual([{ text: "Station 3", line: 1, beforeWord: 0 }]);
    expect(transcript.frontMatter).toEqual({ kind: "captions", language: "en" });
  });

  test("a change of voice starts a new stretch within the cue, timed by syllables", () => {
    const transcript = vtt("00:00.000 --> 00:04.000\n<v Ann Lee>take two</v> <v.loud Ben>no way</v>\n");
    expect(spoken(transcript)).toEqual(["Ann Lee: take two", "Ben: no way"]);
    expect(intervals(transcript)).toEqual([[0, 2], [2, 4]]);
    expect(transcript.segments.map((segment) => segment.timing)).toEqual(["estimated", "estimated"]);
  });

  test("a voice that is closed after an inline time ends there", () => {
    const transcript = vtt("00:00.000 --> 00:04.000\n<v Ann>take <00:01.000>two</v> and <v Ben>no</v>\n");
    expect(spoken(transcript)).toEqual(["Ann: take two", "?: and", "Ben: no"]);
  });

  test("inline times give measured word times", () => {
    const transcript = vtt("00:01.000 --> 00:05.000\nTake <00:02.000>two slow <00:04.250><c.red>puffs</c>\n");
    expect(transcript.timing).toBe("word");
    expect(transcript.words.map(({ text, start, timing }) => [text, start, timing])).toEqual([
      ["Take", 1, "measured"],
      ["two", 2, "measured"],
      ["slow", 3.125, "estimated"],
      ["puffs", 4.25, "measured"],
    ]);
  });

  test("an inline time outside its cue is left out with a finding", () => {
    const transcript = vtt("00:01.000 --> 00:05.000\ntake <00:09.000>two\n");
    expect(spoken(transcript)).toEqual(["?: take two"]);
    expect(transcript.findings).toMatchObject([{ code: "SW-T13", line: 4 }]);
  });

  test("a confidence that a recogniser notes before a cue goes to its words", () => {
    const transcript = vtt("NOTE Confidence: 0.81\n\n00:01.000 --> 00:02.000\nhello there\n\n00:02.000 --> 00:03.000\nbye\n");
    expect(transcript.words.map((word) => word.confidence)).toEqual([0.81, 0.81, undefined]);
    expect(transcript.findings).toEqual([]);
  });

  test("several like faults are one finding that names the first lines and counts the rest", () => {
    const commas = vtt(Array.from({ length: 44 }, (_, at) => `00:${10 + at},000 --> 00:${11 + at},000\nword${at}\n`).join("\n"));
    expect(commas.findings).toMatchObject([{ code: "SW-T16", line: 3, message: expect.stringContaining("the same on lines 6 and 9, and 41 more like it") as string }]);
  });
});

describe("SubRip in the wild", () => {
  const CUES = [["00:00:01,000", "00:00:02,500", "hello there"], ["00:00:03,000", "00:00:04,000", "take two"], ["00:00:05,000", "00:00:06,000", "bye"]] as const;
  const build = (shape: (cue: (typeof CUES)[number], at: number) => string, gap = "\n\n") => CUES.map(shape).join(gap);
  const EXPECTED = [[1, 2.5], [3, 4], [5, 6]];

  test.each<[string, string]>([
    ["as it should be", build(([from, to, text], at) => `${at + 1}\n${from} --> ${to}\n${text}`)],
    ["without indexes", build(([from, to, text]) => `${from} --> ${to}\n${text}`)],
    ["with dots for commas", build(([from, to, text], at) => `${at + 1}\n${from.replace(",", ".")} --> ${to.replace(",", ".")}\n${text}`)],
    ["without hours", build(([from, to, text], at) => `${at + 1}\n${from.slice(3)} --> ${to.slice(3)}\n${text}`)],
    ["without milliseconds", build(([from, to, text], at) => `${at + 1}\n${from.replace(",000", "").replace(",500", ".5")} --> ${to.replace(",000", "").replace(",500", ",5")}\n${text}`)],
    ["with a colon before the milliseconds", build(([from, to, text], at) => `${at + 1}\n${from.replace(",", ":")} --> ${to.replace(",", ":")}\n${text}`)],
    ["without blank lines", build(([from, to, text], at) => `${at + 1}\n${from} --> ${to}\n${text}`, "\n")],
    ["with an index of zero", build(([from, to, text], at) => `${at}\n${from} --> ${to}\n${text}`, "\n")],
    ["with blank lines in the cue", build(([from, to, text], at) => `${at + 1}\n${from} --> ${to}\n${text.replace(" ", "\n\n")}`)],
    ["with HTML tags", build(([from, to, text], at) => `${at + 1}\n${from} --> ${to}\n<font color="#ffffff"><i>${text}</i></font>`)],
    ["with override tags", build(([from, to, text], at) => `${at + 1}\n${from} --> ${to}\n{\\an8}${text.replace(" ", "\\N")}`)],
    ["with coordinates", build(([from, to, text], at) => `${at + 1}\n${from} --> ${to}  X1:40 X2:600 Y1:20 Y2:50\n${text}`)],
    ["with a short arrow and no spaces", build(([from, to, text], at) => `${at + 1}\n${from}->${to}\n${text}`)],
    ["with the words on the line of the times", build(([from, to, text]) => `${from} --> ${to} ${text}`)],
  ])("%s gives the same cues", (_, text) => {
    const transcript = read(text, "x.srt", "subrip");
    expect(intervals(transcript)).toEqual(EXPECTED);
    expect(transcript.words.map((word) => word.text)).toEqual(["hello", "there", "take", "two", "bye"]);
    expect(transcript.findings.filter((finding) => finding.severity !== "info")).toEqual([]);
  });

  test("dashes start a new speaker's stretch, a dash inside a sentence does not", () => {
    const transcript = read("1\n00:00:01,000 --> 00:00:03,000\n- hello\n-Hi - there\n\n2\n00:00:04,000 --> 00:00:05,000\nwell\n— maybe\n", "x.srt");
    expect(spoken(transcript)).toEqual(["?: hello", "?: Hi - there", "?: well — maybe"]);
  });

  test("chevrons start a new speaker's stretch", () => {
    expect(spoken(read("1\n00:00:01,000 --> 00:00:03,000\n>> hello >> hi\n", "x.srt"))).toEqual(["?: hello", "?: hi"]);
  });

  test("a cue without a label is the speaker's before it where labels stand at changes of speaker only", () => {
    const cue = (text: string, at: number) => `${at + 1}\n00:00:${String(2 * at).padStart(2, "0")},000 --> 00:00:${String(2 * at + 1).padStart(2, "0")},500\n${text}\n`;
    const turns = (again: string) => ["ANN: Hello.", "BEN: Hi.", "ANN: One.", "BEN: Two.", "ANN: Three.", "BEN: Four.", "ANN: Five.", again, "Six."].map(cue).join("\n");
    expect(spoken(read(turns("BEN: Yes."), "x.srt")).at(-1)).toBe("BEN: Six.");
    // Two neighbours with one label: here each cue has its own, and one without may be anybody's.
    expect(spoken(read(turns("ANN: Yes."), "x.srt")).at(-1)).toBe("?: Six.");
  });

  test("labels in the text become speakers, and a cue goes on in the middle of a sentence", () => {
    const text = "1\n00:00:01,000 --> 00:00:03,000\nPATIENT: I take\n\n2\n00:00:03,000 --> 00:00:04,000\ntwo a day.\n\n3\n00:00:04,000 --> 00:00:05,000\nGood.\n";
    const transcript = read(text, "x.srt");
    expect(spoken(transcript)).toEqual(["PATIENT: I take", "PATIENT: two a day.", "?: Good."]);
    expect(transcript.findings).toMatchObject([{ code: "SW-T17", line: 6 }]);
  });

  test("a spoken number alone in a cue is a word, not an index", () => {
    expect(spoken(read("00:00:01,000 --> 00:00:02,000\nten\n00:00:03,000 --> 00:00:04,000\n10\n00:00:05,000 --> 00:00:06,000\nok", "x.srt"))).toEqual(["?: ten", "?: 10", "?: ok"]);
  });

  test("text before the first cue is left out with a warning", () => {
    expect(read("made by hand\n\n1\n00:00:01,000 --> 00:00:02,000\nhello\n", "x.srt").findings).toMatchObject([{ code: "SW-T14", severity: "warning", line: 1 }]);
  });
});

describe("rolling captions", () => {
  const roll = (texts: readonly string[]) =>
    `WEBVTT\n\n${texts.map((text, at) => `00:${String(at * 2).padStart(2, "0")}.000 --> 00:${String(at * 2 + 2).padStart(2, "0")}.000\n${text}\n`).join("\n")}`;

  test("a cue that repeats the one before it and adds words keeps the added words only, and that is told", () => {
    const transcript = read(roll(["hello I am", "hello I am here to", "hello I am here to talk"]), "x.vtt");
    expect(spoken(transcript)).toEqual(["?: hello I am", "?: here to", "?: talk"]);
    expect(intervals(transcript)).toEqual([[0, 2], [2, 4], [4, 6]]);
    expect(transcript.findings).toMatchObject([{ code: "SW-T14", line: 6, message: expect.stringContaining("line 9") as string }]);
  });

  test("a cue that opens with the last line of the one before it rolls by lines", () => {
    const transcript = read(roll(["so shake it", "so shake it\nten times and", "ten times and\nbreathe out", "breathe out\nall the way"]), "x.vtt");
    expect(spoken(transcript)).toEqual(["?: so shake it", "?: ten times and", "?: breathe out", "?: all the way"]);
  });

  test("a cue that only repeats is left out", () => {
    const transcript = read(roll(["so shake it", "so shake it", "so shake it\nwell", "well", "well\nnow"]), "x.vtt");
    expect(transcript.words.map((word) => word.text).join(" ")).toBe("so shake it well now");
  });

  test("somebody who repeats a cue's words once, in a file that does not roll, said them twice", () => {
    const transcript = read(roll(["so shake it", "so shake it well", "and breathe out", "all the way", "then in", "and hold"]), "x.vtt");
    expect(transcript.words).toHaveLength(17);
    expect(codes(transcript)).not.toContain("SW-T14");
  });

  test("what is said again after a pause was said again", () => {
    const text = "WEBVTT\n\n00:00.000 --> 00:02.000\nhello I am\n\n00:05.000 --> 00:06.000\nhello I am here\n\n00:10.000 --> 00:12.000\nhello I am here too\n";
    expect(read(text, "x.vtt").words).toHaveLength(12);
  });
});
