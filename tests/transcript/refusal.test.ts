// What cannot be read gives one clear error, with a way to mend it. Invented data; behaviour only.
import { expect, test } from "vitest";
import { MAX_BYTES, MAX_WORDS } from "../../src/transcript/limits.ts";
import { codes, read, refusal, spoken } from "./reading.ts";

const bytes = (...values: number[]) => Uint8Array.from(values);

test.each<[string, string | Uint8Array, string, string]>([
  ["an empty file", "", "x.txt", "SW-T02"],
  ["white space", " \n\t\n", "x.txt", "SW-T02"],
  ["headings alone", "# Station\n---\n", "x.txt", "SW-T02"],
  ["marks alone", "[0:00]\n[0:20]\n", "x.txt", "SW-T02"],
  ["WebVTT without a cue", "WEBVTT\n\nNOTE nothing\n", "x.vtt", "SW-T02"],
  ["WebVTT with text and no times", "WEBVTT\n\nhello there\n", "x.vtt", "SW-T08"],
  ["SubRip without times", "1\nhello\n\n2\nbye\n", "x.srt", "SW-T08"],
  ["JSON without words", '{"segments": []}', "x.json", "SW-T02"],
  ["text that is called JSON", "hello there", "x.json", "SW-T05"],
  ["text that is called TextGrid", "hello there", "x.TextGrid", "SW-T06"],
  ["a word processor's document", bytes(0x50, 0x4b, 3, 4, 0, 0), "x.docx", "SW-T04"],
  ["a PDF", bytes(0x25, 0x50, 0x44, 0x46, 0x2d), "x.pdf", "SW-T04"],
  ["a sound recording", bytes(0x52, 0x49, 0x46, 0x46, 0, 0, 0, 0), "x.wav", "SW-T04"],
  ["data", bytes(1, 0, 2, 0, 0, 0, 3, 0, 0, 7), "x.bin", "SW-T04"],
  ["rich text", "{\\rtf1 hello}", "x.rtf", "SW-T03"],
  ["XML", '<?xml version="1.0"?><tt><p>hello</p></tt>', "x.ttml", "SW-T03"],
  ["a web page", "<!DOCTYPE html><p>hello</p>", "x.html", "SW-T03"],
  ["a table", "start,end,speaker,text\n0,1,A,hello\n", "x.csv", "SW-T03"],
])("%s", (_, text, file, code) => {
  expect(refusal(text, file)).toMatchObject([{ code, severity: "error", file, mend: expect.any(String) as string }]);
});

test("another encoding is refused with the line of the first wrong byte", () => {
  const latin1 = Buffer.from("hello\nthere\ncaf\u00e9 au lait\n", "latin1");
  expect(refusal(latin1)).toMatchObject([{ code: "SW-T04", line: 3 }]);
});

test("UTF-16 without a byte-order mark is read, and that is told", () => {
  const transcript = read(Buffer.from("[0:00 - 0:01] hello there", "utf16le"));
  expect(spoken(transcript)).toEqual(["?: hello there"]);
  expect(codes(transcript)).toEqual(["SW-T16"]);
});

test("a file above the limit of bytes is refused before it is read", () => {
  expect(refusal(new Uint8Array(MAX_BYTES + 1))).toMatchObject([{ code: "SW-T07", message: expect.stringContaining(String(MAX_BYTES)) as string }]);
});

test("more words than the limit are refused", () => {
  expect(refusal("a ".repeat(MAX_WORDS + 1))).toMatchObject([{ code: "SW-T07", message: expect.stringContaining(String(MAX_WORDS)) as string }]);
});

test.each<[string, string, string]>([
  ["WEBVTT\n\n00:01.000 --> 00:02.000\nhi\n", "x.txt", "webvtt"],
  ["1\n00:00:01,000 --> 00:00:02,000\nhi\n", "x.txt", "subrip"],
  ["00:01.000 --> 00:02.000\nhi\n", "x.vtt", "webvtt"],
  ['"ooTextFile" "TextGrid" 0 1 <exists> 1 "IntervalTier" "A" 0 1 1 0 1 "hi"', "x.txt", "textgrid"],
  ['[{"text": "hi"}]', "x.txt", "json"],
  ['\n {"segments": [{"text": "hi"}]}', "<stdin>", "json"],
  ["[0:01] hi", "x.srt", "text"],
  ["[00:00:01.000 --> 00:00:02.000] hi", "<stdin>", "text"],
  ["[laughs] hi", "<stdin>", "text"],
])("%j in %s is told from its content: %s", (text, file, format) => {
  expect(read(text, file).format).toBe(format);
  expect(read(text, file).words.some((word) => word.text === "hi")).toBe(true);
});

test("a stated format wins over the content", () => {
  expect(read("WEBVTT\n\nhello there", "x", "text").words).toHaveLength(3);
});
