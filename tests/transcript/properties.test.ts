// Property tests: what must hold for any text at all. Generated data; behaviour only.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ProblemError } from "../../src/problem/problem.ts";
import { interpolateWords } from "../../src/transcript/interpolate.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import type { Transcript, TranscriptFormat } from "../../src/transcript/types.ts";

const FORMATS: (TranscriptFormat | undefined)[] = [undefined, "text", "webvtt", "subrip", "textgrid", "json"];

/** The transcript, or null when it was refused in the proper way. Any other error fails the test. */
function readOrRefuse(text: string | Uint8Array, format: TranscriptFormat | undefined): Transcript | null {
  try {
    return readTranscript(text, format === undefined ? { file: "x" } : { file: "x", format });
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    expect(error.findings.every((finding) => finding.severity === "error" && finding.message !== "")).toBe(true);
    return null;
  }
}

/** What every transcript promises, whatever it was read from. */
function expectSound(transcript: Transcript): void {
  let next = 0;
  transcript.segments.forEach((segment, at) => {
    expect(segment.index).toBe(at);
    expect(segment.firstWord).toBe(next);
    expect(segment.endWord).toBeGreaterThan(segment.firstWord);
    next = segment.endWord;
    let latest = -1;
    for (const word of transcript.words.slice(segment.firstWord, segment.endWord)) {
      expect(word.segment).toBe(at);
      if (word.start === null || word.end === null || segment.start === null || segment.end === null) {
        expect([word.start, word.end, word.timing, segment.start, segment.end, segment.timing]).toEqual([null, null, "none", null, null, "none"]);
        continue;
      }
      expect(Number.isFinite(word.end) && word.start >= 0 && word.end >= word.start && word.start >= latest).toBe(true);
      expect(word.start).toBeGreaterThanOrEqual(segment.start - 0.001);
      expect(word.end).toBeLessThanOrEqual(segment.end + 0.001);
      latest = word.start;
    }
  });
  expect(next).toBe(transcript.words.length);
  transcript.words.forEach((word, at) => {
    expect(word.index).toBe(at);
    expect(word.text).not.toBe("");
    expect(Number.isInteger(word.line) && word.line >= 1).toBe(true);
  });
  for (const heading of transcript.headings) expect(heading.beforeWord).toBeLessThanOrEqual(transcript.words.length);
  for (const finding of transcript.findings) expect(finding.line === undefined || finding.line >= 1).toBe(true);
  expect(transcript.timing === "none").toBe(transcript.duration === null);
}

/** Pieces of all the formats, thrown together. */
const piece = fc.constantFrom(
  "WEBVTT", "NOTE x", "STYLE", "00:01.000 --> 00:04.000", "00:00:01,000 --> 00:00:02,500", "00:09 --> 00:02", "--> 1:00", "x --> 00:02.000", "1", "2", "",
  " ", "[0:00]", "[0:20] hello there", "(1:00) bye", "0:20 so", "8:30 is when", "[9:99] odd", "[0:10 - 0:05] no", "Anna: hello", "BEN [0:12]: hi", "Speaker 1  0:12",
  "**Anna:** yes", "Remember: shake", "# Station", "--- end ---", "---", "- yes", ">> no", "<v Ann>yes</v> <v Ben>no", "<00:02.000>two<c> three</c>", "dose < 5", "&amp; &eacute; &x;",
  "[laughs] (pause) *coughs*", "<UNSURE>two</UNSURE> <UNIN/>", "hello [0:31] there (0:40) you", '"ooTextFile"', '"TextGrid"', "0 10 <exists> 1", '"IntervalTier" "A" 0 10 1', '0 10 "hi ""you"""',
  '{"segments": [', '{"text": "hi", "start": 1, "end": 2},', '{"words": [{"word": "a", "start": 5}]}', "]}", "saidwell: labels@1", "{\\an8}hi", "[x", "(y", "***",
);
const soup = fc.array(piece, { maxLength: 30 }).map((lines) => lines.join("\n"));

describe("any input", () => {
  test("of characters is read or refused, never breaks", () => {
    fc.assert(fc.property(fc.string({ unit: "binary", maxLength: 200 }), fc.constantFrom(...FORMATS), (text, format) => {
      const transcript = readOrRefuse(text, format);
      if (transcript !== null) expectSound(transcript);
    }), { numRuns: 400 });
  });

  test("of bytes is read or refused, never breaks", () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 200 }), fc.constantFrom(...FORMATS), (bytes, format) => {
      const transcript = readOrRefuse(bytes, format);
      if (transcript !== null) expectSound(transcript);
    }), { numRuns: 400 });
  });

  test("made of pieces of every format is read soundly or refused", () => {
    fc.assert(fc.property(soup, fc.constantFrom(...FORMATS), fc.boolean(), (text, format, header) => {
      const transcript = readOrRefuse((header && format === "webvtt" ? "WEBVTT\n\n" : "") + text, format);
      if (transcript !== null) expectSound(transcript);
    }), { numRuns: 1500 });
  });

  test("JSON of any shape is read soundly or refused", () => {
    const time = fc.oneof(fc.double(), fc.integer({ min: -5, max: 500 }), fc.constantFrom("1", "0:02", "x", null));
    const word = fc.oneof(fc.string(), fc.record({ word: fc.string(), start: time, end: time, speaker: fc.oneof(fc.string(), fc.integer(), fc.constant(null)) }, { requiredKeys: ["word"] }));
    const segment = fc.record({ text: fc.string(), start: time, end: time, speaker: fc.string(), confidence: fc.double(), inStation: fc.boolean(), words: fc.array(word, { maxLength: 6 }) }, { requiredKeys: [] });
    fc.assert(fc.property(fc.oneof(fc.record({ segments: fc.array(segment, { maxLength: 8 }) }), fc.record({ words: fc.array(word, { maxLength: 12 }) }), fc.jsonValue()), (value) => {
      const transcript = readOrRefuse(JSON.stringify(value), "json");
      if (transcript !== null) expectSound(transcript);
    }), { numRuns: 800 });
  });
});

const LETTERS = "abcdefghijklmnopqrstuvwxyz".split("");
const plainWord = fc.string({ unit: fc.constantFrom(...LETTERS, "'", "é", "-"), minLength: 1, maxLength: 9 }).filter((word) => /\p{L}/u.test(word) && !word.startsWith("-"));
const sentence = fc.array(plainWord, { minLength: 1, maxLength: 8 });
const inAndOut = (transcript: Transcript): string[] => transcript.words.map((word) => word.text);

describe("no word is lost", () => {
  test("in plain text, with or without marks and labels, words in are words out", () => {
    const line = fc.tuple(sentence, fc.constantFrom("", "[T] ", "(T) ", "[T] Candidate: ", "Patient: ", "- "), fc.constantFrom("\n", "\n\n"));
    fc.assert(fc.property(fc.array(line, { minLength: 1, maxLength: 12 }), (lines) => {
      const text = lines.map(([words, head, end], at) => head.replace("T", `${Math.floor(at / 6)}:${String((at * 10) % 60).padStart(2, "0")}`) + words.join(" ") + end).join("");
      const transcript = readTranscript(text, { file: "x.txt" });
      const kept = [...transcript.headings.map((heading) => heading.text.split(" ")).flat(), ...inAndOut(transcript)];
      expect(kept).toEqual(lines.flatMap(([words]) => words));
    }), { numRuns: 400 });
  });

  test("every character but white space, and signs of doubt and tags, is in exactly one word", () => {
    const mixed = fc.array(fc.oneof(plainWord, fc.constantFrom("[laughs]", "[a b]", "(pause)", "(not this)", "*coughs*", "*so*", "—", "5", "8:30", "[", ")", "…", "don't,", "[inaudible 0:32].")), { minLength: 1, maxLength: 30 });
    fc.assert(fc.property(mixed, fc.constantFrom(" ", "\n"), (words, gap) => {
      const transcript = readTranscript(`so ${words.join(gap)}`, { file: "x.txt", format: "text" });
      const squeeze = (text: string): string => text.replace(/\s+/g, "");
      const heads = transcript.headings.map((heading) => heading.text).join("");
      // Dashes at the head of a line open a turn; "* " does so too.
      fc.pre(gap === " " || !words.some((word) => /^[—*-]/.test(word)));
      expect(squeeze(heads) + squeeze(inAndOut(transcript).join(""))).toBe(squeeze(`so ${words.join("")}`));
    }), { numRuns: 500 });
  });

  test("in captions, however the cues are damaged, words in are words out in order of time, or a finding tells", () => {
    const cue = fc.record({ words: fc.array(plainWord, { minLength: 1, maxLength: 6 }), gap: fc.constantFrom("\n\n", "\n", "\n\n\n"), index: fc.boolean(), arrow: fc.constantFrom(" --> ", "-->", " -> "), comma: fc.constantFrom(",", "."), wrap: fc.constantFrom(" ", "\n", "\n\n") });
    fc.assert(fc.property(fc.array(cue, { minLength: 1, maxLength: 10 }), fc.constantFrom<TranscriptFormat>("subrip", "webvtt"), (cues, format) => {
      const two = (value: number): string => String(value).padStart(2, "0");
      const body = cues.map(({ words, gap, index, arrow, comma, wrap }, at) => `${index ? `${at + 1}\n` : ""}00:00:${two(at * 3)}${comma}000${arrow}00:00:${two(at * 3 + 2)}${comma}500\nW${at} ${words.join(wrap)}${gap}`).join("");
      const transcript = readTranscript((format === "webvtt" ? "WEBVTT\n\n" : "") + body, { file: "x", format });
      // In WebVTT a line before the times is an identifier by section 6.1; where that takes words, it is told.
      const left = transcript.findings.filter((finding) => finding.code === "SW-T14").map((finding) => finding.message);
      if (format === "webvtt" && left.length > 0) {
        expect(left[0]).toMatch(/identifier of a cue/);
        return;
      }
      expect(left).toEqual([]);
      expect(inAndOut(transcript)).toEqual(cues.flatMap(({ words }, at) => [`W${at}`, ...words]));
    }), { numRuns: 400 });
  });

  test("in a TextGrid, long and short, what was written is what is read", () => {
    const tier = fc.array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.oneof(fc.constant([]), sentence)), { minLength: 1, maxLength: 8 });
    fc.assert(fc.property(fc.array(tier, { minLength: 1, maxLength: 3 }), (tiers) => {
      const built = tiers.map((items, at) => {
        let now = 0;
        const intervals = items.map(([length, words]) => {
          const from = now;
          now += length / 10;
          return { from, to: now, text: words.join(" ").replace("e", '"') };
        });
        return { name: `S${at}`, intervals, end: now };
      });
      const quote = (text: string): string => `"${text.replaceAll('"', '""')}"`;
      const long = `File type = "ooTextFile"\nObject class = "TextGrid"\n\nxmin = 0\nxmax = 99\ntiers? <exists>\nsize = ${built.length}\nitem []:\n${built.map(({ name, intervals, end }, at) => `item [${at + 1}]:\nclass = "IntervalTier"\nname = ${quote(name)}\nxmin = 0\nxmax = ${end}\nintervals: size = ${intervals.length}\n${intervals.map(({ from, to, text }, place) => `intervals [${place + 1}]:\nxmin = ${from}\nxmax = ${to}\ntext = ${quote(text)}\n`).join("")}`).join("")}`;
      const short = `File type = "ooTextFile"\nObject class = "TextGrid"\n\n0\n99\n<exists>\n${built.length}\n${built.map(({ name, intervals, end }) => `"IntervalTier"\n${quote(name)}\n0\n${end}\n${intervals.length}\n${intervals.map(({ from, to, text }) => `${from}\n${to}\n${quote(text)}\n`).join("")}`).join("")}`;
      const first = readOrRefuse(long, "textgrid");
      const second = readOrRefuse(short, "textgrid");
      const plain = (transcript: Transcript | null) => transcript?.segments.map((segment) => [segment.speaker, segment.start, segment.end, transcript.words.slice(segment.firstWord, segment.endWord).map((word) => word.text).join(" ")]);
      const expected = built.flatMap(({ name, intervals }) => intervals.filter(({ text }) => text !== "").map(({ from, to, text }) => [name, from, to, text] as const)).sort((a, b) => a[1] - b[1]);
      expect(plain(first) ?? []).toEqual(expected.map((row) => [...row]));
      expect(plain(second) ?? []).toEqual(expected.map((row) => [...row]));
    }), { numRuns: 300 });
  });

  test("a label file written from any transcript reads back word for word", () => {
    const clock = (time: number): string => {
      const milliseconds = Math.round(time * 1000);
      const seconds = Math.floor(milliseconds / 1000);
      const tail = `${String(seconds % 60).padStart(2, "0")}.${String(milliseconds % 1000).padStart(3, "0")}`;
      const hours = Math.floor(seconds / 3600);
      const minutes = Math.floor(seconds / 60) % 60;
      return hours > 0 ? `${hours}:${String(minutes).padStart(2, "0")}:${tail}` : `${minutes}:${tail}`;
    };
    fc.assert(fc.property(soup, fc.boolean(), (text, json) => {
      const source = readOrRefuse(json ? JSON.stringify([{ text, start: 1, end: 4000 }]) : text, undefined);
      fc.pre(source !== null);
      const lines = source.segments.map((segment) => {
        const words = source.words.slice(segment.firstWord, segment.endWord).map((word) => word.text).join(" ");
        return `${segment.start === null || segment.end === null ? "" : `[${clock(segment.start)} - ${clock(segment.end)}] `}${(segment.speaker ?? "Unknown").replaceAll(":", "")}: ${words}`;
      });
      const back = readTranscript(`---\nsaidwell: labels@1\nsource: x\n---\n# Station\n${lines.join("\n")}\n`, { file: "x.txt" });
      expect(back.words.map(({ text: word, kind }) => [word, kind])).toEqual(source.words.map(({ text: word, kind }) => [word, kind]));
      expect(back.segments.every((segment) => segment.inStation === true)).toBe(true);
    }), { numRuns: 600 });
  });
});

test("interpolated times never fall, stay within their span and leave the file's own times as they are", () => {
  const word = fc.record({ text: plainWord, gap: fc.integer({ min: 0, max: 30 }), known: fc.constantFrom("none", "start", "both") });
  fc.assert(fc.property(fc.array(word, { minLength: 1, maxLength: 20 }), (items) => {
    let now = 2;
    const words = items.map(({ text, gap, known }) => {
      const start = now;
      now += gap / 10;
      const base = { text, line: 1, kind: "word" as const };
      return known === "none" ? base : known === "start" ? { ...base, start } : { ...base, start, end: now };
    });
    const times = interpolateWords(words, 2, now);
    expect(times).toHaveLength(words.length);
    times.forEach(({ start, end, timing }, at) => {
      const own = words[at] as { start?: number; end?: number };
      expect(start >= (times[at - 1]?.start ?? 2) && end >= start && end <= now + 1e-9).toBe(true);
      if (own.start !== undefined) expect([start, timing]).toEqual([own.start, "measured"]);
      else expect(timing).toBe("estimated");
      if (own.end !== undefined) expect(end).toBe(own.end);
    });
  }), { numRuns: 500 });
});
