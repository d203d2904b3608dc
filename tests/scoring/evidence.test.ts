import { expect, test } from "vitest";
import { evidenceOf } from "../../src/scoring/evidence.ts";
import { timeUsed } from "../../src/scoring/time/pace.ts";
import { findStation } from "../../src/station/find.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import { cardWith, item, markTalk, OPENING } from "./station-card.ts";
import { stationOf } from "./time/station-of.ts";

/* All talks are invented. */

test("a quote holds its speaker's words only: an ellipsis stands for what others said in between, nothing for what they said after", () => {
  const station = stationOf([
    { role: "candidate", text: "you turn the lid slowly" },
    { role: "patient", text: "right I see" },
    { role: "candidate", text: "and close it again." },
    { role: "patient", text: "fine" },
  ]);
  expect(evidenceOf(station, { first: 2, end: 13 })).toMatchObject({ quote: "the lid slowly … and close it again.", role: "candidate", first: 2, end: 13 });
});

test("the time of the end is that of the speaker's own last word", () => {
  const station = stationOf([{ role: "candidate", text: "turn the green lid", from: 0, to: 4 }, { role: "patient", text: "fine", from: 4, to: 9 }]);
  expect(evidenceOf(station, { first: 0, end: 5 })).toMatchObject({ quote: "turn the green lid", endTime: 4 });
});

test("a word or two come with the words around them of the same sentence, never of another speaker", () => {
  const station = stationOf([
    { role: "patient", text: "what now" },
    { role: "candidate", text: "so you keep the box somewhere cool and dry please." },
    { role: "patient", text: "fine" },
  ]);
  expect(evidenceOf(station, { first: 8, end: 9 })).toMatchObject({ quote: "cool", before: "you keep the box somewhere", after: "and dry please." });
  expect(evidenceOf(station, { first: 2, end: 3 })).toMatchObject({ quote: "so", after: "you keep the box somewhere" });
  expect(evidenceOf(station, { first: 2, end: 3 })).not.toHaveProperty("before");
});

test("a sentence of one word comes with the same speaker's neighbouring ones", () => {
  const station = stationOf([{ role: "patient", text: "hm" }, { role: "candidate", text: "now wipe the tip." }, { role: "candidate", text: "twice." }, { role: "patient", text: "fine" }]);
  expect(evidenceOf(station, { first: 5, end: 6 })).toMatchObject({ quote: "twice.", before: "now wipe the tip." });
  expect(evidenceOf(station, { first: 0, end: 1 })).not.toHaveProperty("after");
});

test("what tells enough by itself comes without", () => {
  const station = stationOf([{ role: "candidate", text: "so you keep the box somewhere cool and dry please." }]);
  expect(Object.keys(evidenceOf(station, { first: 2, end: 7 }))).not.toContain("before");
});

const cues = (...lines: [from: string, to: string, text: string][]) => `WEBVTT\n\n${lines.map(([from, to, text]) => `00:${from}.000 --> 00:${to}.000\n${text}\n`).join("\n")}`;
const stationIn = (text: string) => findStation(readTranscript(new TextEncoder().encode(text), { file: "invented.vtt" }), {});

test("a station that starts and ends with captions has exact times, though its words' are interpolated", () => {
  const station = stationIn(cues(["00:03", "00:06", "<v Ana>Hello, my name is Ana."], ["00:08", "00:12", "<v Ben>Hello, I have some drops here."], ["00:13", "00:19", "<v Ana>Put one in each eye."]));
  expect(timeUsed(station)).toEqual({ value: 16, estimated: false });
  expect(evidenceOf(station, { first: 5, end: 8 })).toMatchObject({ start: 8, estimated: true, startGiven: true });
  expect(evidenceOf(station, { first: 6, end: 9 })).not.toHaveProperty("startGiven");
});

test("of voices that share a caption the first starts where the file says", () => {
  const station = stationIn(cues(["00:03", "00:09", "- Hello, my name is Ana.\n- Hello."], ["00:13", "00:19", "- Put one in.\n- Both eyes?"]));
  expect(evidenceOf(station, { first: 6, end: 9 })).toMatchObject({ start: 13, startGiven: true });
  expect(evidenceOf(station, { first: 9, end: 11 })).not.toHaveProperty("startGiven");
});

test.each([
  ["Don't lay the lantern on its side, or lean it on the curtain.", "Don't lay the lantern on its side, or lean it on the curtain."],
  ["Try to resist the urge to lean the lantern on the curtain.", "resist the urge to lean the lantern on the curtain."],
  ["Put it on the hook rather than lean it on the curtain.", "rather than lean it on the curtain."],
])("a quote begins with the denial that it stands under: %s", (says, quote) => {
  const card = cardWith("      - { id: curtain, label: Keeps it off the curtain, say: [never lean it on the curtain] }");
  expect(item(markTalk([...OPENING, `C: ${says}`], {}, card), "curtain").elements[0]!.evidence[0]!.quote).toBe(quote);
});
