// Invented stations; behaviour only.
import { describe, expect, test } from "vitest";
import { findStation } from "../../src/station/find.ts";
import { labelDocument, writeLabelText } from "../../src/station/label-file.ts";
import type { Station } from "../../src/station/types.ts";
import { pausesOf } from "../../src/scoring/time/pauses.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import { inside, roleOf, stationIn } from "./reading.ts";

const TALK = "You may begin. Hello, my name is Iris, I'm the pharmacist. How can I help? [coughs] I've got this cream for my hands. Use it twice a day, thinly. You have one minute left. Okay, and for how long? For a week. Any questions? No, thank you. You're welcome, goodbye. So, some feedback: you missed the other medicines.";
const SHAPES: [string, string][] = [
  ["without times", TALK],
  ["with times", `[0:01] ${TALK.slice(0, 110)}\n[0:09] ${TALK.slice(110)}`],
  ["with labels", "[0:01] Speaker 1: Hello, I'm Iris, the pharmacist.\n[0:04] Speaker 2: Hi, I've got a cream and I don't know how to use it.\n[0:08] Speaker 1: Use it twice a day: once in the morning, once at night.\n[0:14] Speaker 2: Thanks, bye."],
  ["captions", "WEBVTT\n\n00:01.000 --> 00:03.250\nHello, I'm Iris, the pharmacist. Which\n\n00:03.250 --> 00:05.000\ncream have you got? It's a steroid cream\n\n00:05.000 --> 00:07.000\nfor my hands. Okay. Use it twice a day. Bye.\n"],
];

/** Every word with its role and whether it is marked. */
function seen(station: Station): string[] {
  return station.sentences.flatMap(({ first, end, role, inStation }) => station.transcript.words.slice(first, end).map((word) => `${word.text} ${role} ${inStation}`));
}

function again(text: string, file: string): Station {
  return findStation(readTranscript(new TextEncoder().encode(text), { file }));
}

test.each(SHAPES)("the text form reads back to the same words, roles and edges (%s)", (_, text) => {
  const station = stationIn(text);
  const back = again(writeLabelText(station), "labels.txt");
  expect(seen(back)).toEqual(seen(station));
  expect([back.start.word, back.end.word]).toEqual([station.start.word, station.end.word]);
  expect(back.start.time).toEqual(station.start.time === null ? null : expect.closeTo(station.start.time, 2));
  expect(back.roleSource).toBe("told");
  expect(writeLabelText(back).split("\n").slice(3)).toEqual(writeLabelText(station).split("\n").slice(3));
});

test.each(SHAPES)("so does the JSON form (%s)", (_, text) => {
  const station = stationIn(text);
  const back = again(JSON.stringify(labelDocument(station)), "labels.json");
  expect(seen(back)).toEqual(seen(station));
  expect([back.start.word, back.end.word]).toEqual([station.start.word, station.end.word]);
});

test("a person's correction of a role is obeyed in both forms", () => {
  const station = stationIn(SHAPES[2]![1]);
  const text = writeLabelText(station).replace("Patient: Thanks", "Candidate: Thanks");
  expect(roleOf(again(text, "labels.txt"), "Thanks, bye.")).toBe("candidate");
  const document = labelDocument(station);
  document.sentences[document.sentences.length - 1]!.role = "candidate";
  expect(roleOf(again(JSON.stringify(document), "labels.json"), "Thanks, bye.")).toBe("candidate");
});

describe("a sheet from a label file that was edited by hand says so", () => {
  const told = (text: string, file: string) => again(text, file).transcript.findings.filter(({ code }) => code === "SW-T18").map(({ severity }) => severity);

  test.each(SHAPES)("and one from a file as it was written does not (%s)", (_, text) => {
    const station = stationIn(text);
    expect(told(writeLabelText(station), "labels.txt")).toEqual([]);
    // As an editor on another system saves it.
    expect(told(`\ufeff${writeLabelText(station).replaceAll("\n", "\r\n")}\r\n`, "labels.txt")).toEqual([]);
    expect(told(JSON.stringify(labelDocument(station)), "labels.json")).toEqual([]);
  });

  const written = writeLabelText(stationIn(SHAPES[2]![1]));
  test.each([
    ["a word", "a cream", "one cream"],
    ["a role", "Patient: Thanks", "Candidate: Thanks"],
    ["a time", "[0:04.000]", "[0:05.000]"],
    ["an edge", "# Station", "# Before the station"],
    ["words moved to the next line", "it.\n[0:08.000] Candidate: Use it", "it. Use\n[0:08.000] Candidate: it"],
  ])("%s, in the text form", (_what, from, to) => {
    const edited = written.replace(from, to);
    expect(edited).not.toBe(written);
    expect(told(edited, "labels.txt")).toEqual(["info"]);
  });

  test("and in the JSON form; a file of an earlier version, which has no check, is not accused", () => {
    const document = labelDocument(stationIn(SHAPES[2]![1]));
    const edited = structuredClone(document);
    edited.sentences[0]!.words[0]!.text = "Hallo";
    expect(told(JSON.stringify(edited), "labels.json")).toEqual(["info"]);
    expect(told(JSON.stringify({ ...edited, check: undefined }), "labels.json")).toEqual([]);
    expect(told(written.replace(/check: .*\n/, "").replace("a cream", "one cream"), "labels.txt")).toEqual([]);
  });
});

test("a person's correction of an edge is obeyed", () => {
  const station = stationIn(TALK);
  const text = writeLabelText(station).replace("# After the station\n", "").replace("# Station\n", "").replace("# Before the station\n", "# Station\n");
  expect(inside(again(text, "labels.txt"))).toBe(TALK);
});

// By hand: 4 of 20 syllables of 7.7 s are the announcement, so it ends at about 12.3 + 1.54.
test("the text form has front matter, the three headings and one line a turn", () => {
  expect(writeLabelText(stationIn("[0:12.3] You may begin. Hello, my name is Iris, I'm the pharmacist. How can I help?\n[0:20] I've got this cream for my hands and I don't know how to use it."))).toBe(`---
saidwell: labels@1
source: rehearsal.txt
check: 0d1c7da5095d3e95
---

# Before the station

[0:12.300] Announcer: You may begin.

# Station

[~0:13.840] Candidate: Hello, my name is Iris, I'm the pharmacist. How can I help?
[0:20.000] Patient: I've got this cream for my hands and I don't know how to use it.
`);
});

const STARTS_ONLY = "[0:00] Candidate: Hello my name is Oskar, I am the pharmacist.\n[0:06] Patient: Hello.\n[0:08] Candidate: Shake it well before every puff.\n[1:08] Candidate: Then breathe all the way out.\n[1:20] Patient: Right, thanks, bye.";
const SHARED = "[0:00 - 0:20] Candidate: Hello, my name is Oskar, I am the pharmacist.\nPatient: Hello.\nCandidate: Shake it well before every puff.\n[0:30 - 0:36] Patient: Right, thanks, bye.";
const UNTIMED_WITHIN = "[0:00] Candidate: Hello, my name is Oskar, I am the pharmacist.\n[0:09] Patient: Hello.\n[0:02] Candidate: Shake it well before every puff.\n[0:20] Patient: Right, thanks, bye.";
const OF_WORDS = JSON.stringify({
  segments: [
    { speaker: "Candidate", words: ["Hello,", "I'm", "Oskar,", "the", "pharmacist."].map((text, at) => ({ text, start: at, end: at + 0.9, confidence: 0.3 })) },
    { speaker: "Candidate", words: ["Shake", "it", "first."].map((text, at) => ({ text, start: 8 + 3 * at, end: 8.5 + 3 * at, confidence: 0.9 })) },
    { speaker: "Patient", words: ["Thanks,", "bye."].map((text, at) => ({ text, start: 20 + at, end: 20.5 + at })) },
  ],
});

/** What of the times is the file's own, and what is estimated. */
function timesOf({ transcript }: Station) {
  return { timing: transcript.timing, words: transcript.words.map(({ text, start, end, timing }) => [text, start, end, timing]), repaired: transcript.findings.map(({ code }) => code).filter((code) => code === "SW-T12") };
}

test.each([["starts only", STARTS_ONLY], ["voices under one time", SHARED], ["a time that was distrusted", UNTIMED_WITHIN], ["captions", SHAPES[3]![1]]])("both forms give the file's own times back, and no estimate as one (%s)", (_, text) => {
  const station = stationIn(text);
  expect(timesOf(again(writeLabelText(station), "labels.txt"))).toEqual(timesOf(station));
  expect(timesOf(again(JSON.stringify(labelDocument(station)), "labels.json"))).toEqual(timesOf(station));
});

test("a line of the text form never runs over a time that the file gives, and has an end only where the file gives one", () => {
  expect(writeLabelText(stationIn(STARTS_ONLY)).split("\n").slice(8, 12)).toEqual([
    "[0:00.000] Candidate: Hello my name is Oskar, I am the pharmacist.",
    "[0:06.000] Patient: Hello.",
    "[0:08.000] Candidate: Shake it well before every puff.",
    "[1:08.000] Candidate: Then breathe all the way out.",
  ]);
  expect(writeLabelText(stationIn(SHARED)).split("\n").slice(8, 12).map((line) => line.split("]")[0])).toEqual(["[0:00.000 - 0:20.000", expect.stringMatching(/^\[~0:1/), expect.stringMatching(/^\[~0:1/), "[0:30.000 - 0:36.000"]);
});

test("the JSON form keeps times and confidences of single words; the text form keeps the silences between them and says what it left out", () => {
  const station = stationIn(OF_WORDS, {}, "words.json");
  const back = again(JSON.stringify(labelDocument(station)), "labels.json");
  expect(timesOf(back)).toEqual(timesOf(station));
  expect(back.transcript.words.map(({ confidence }) => confidence)).toEqual(station.transcript.words.map(({ confidence }) => confidence));
  const text = writeLabelText(station);
  expect(text).toContain("left out: times or confidences of single words");
  const silences = (of: Station) => pausesOf(of).value;
  expect(silences(station)!.count).toBe(4);
  expect(silences(again(text, "labels.txt"))).toEqual(silences(station));
});
