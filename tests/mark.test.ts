import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { mark, packedRubric, rememberCompiled, VERSION } from "../src/mark.ts";
import { readTranscript } from "../src/transcript/read.ts";
import type { Transcript } from "../src/transcript/types.ts";
import { CARD } from "./scoring/station-card.ts";

// The same invented talk in every form that is read. Behaviour, not proof.
const TURNS: [string, number, number, string][] = [
  ["Candidate", 1, 5, "Hello, I'm Robin and I am the pharmacist."],
  ["Patient", 5.5, 6.5, "Hello there."],
  ["Candidate", 7, 9, "Do you have any allergies?"],
  ["Patient", 9.5, 10.5, "No, none."],
  ["Candidate", 11, 16, "Shake the inhaler well. Then hold your breath for ten seconds."],
  ["Patient", 16.5, 19, "How will I know when it is empty?"],
  ["Candidate", 19.5, 22, "The counter shows how many puffs are left."],
  ["Candidate", 22.5, 25, "Can you show me how you will use it?"],
  ["Patient", 25.5, 29, "I shake it and hold my breath for ten seconds."],
  ["Candidate", 29.5, 32, "Perfect. Thank you, goodbye."],
];

const clock = (seconds: number, decimal: string) => `00:00:${seconds.toFixed(3).padStart(6, "0").replace(".", decimal)}`;

function tier(name: string): string {
  const intervals = TURNS.filter(([speaker]) => speaker === name);
  const lines = intervals.map(([, from, to, text], index) => `        intervals [${index + 1}]:\n            xmin = ${from}\n            xmax = ${to}\n            text = "${text}"`);
  return `        class = "IntervalTier"\n        name = "${name}"\n        xmin = 0\n        xmax = 32\n        intervals: size = ${intervals.length}\n${lines.join("\n")}`;
}

function shortTier(name: string): string {
  const intervals = TURNS.filter(([speaker]) => speaker === name);
  return `"IntervalTier"\n"${name}"\n0\n32\n${intervals.length}\n${intervals.map(([, from, to, text]) => `${from}\n${to}\n"${text}"`).join("\n")}`;
}

const FORMS: Record<string, string> = {
  "plain text": TURNS.map(([speaker, from, to, text]) => `[0:${from.toFixed(1).padStart(4, "0")} - 0:${to.toFixed(1).padStart(4, "0")}] ${speaker}: ${text}`).join("\n"),
  WebVTT: `WEBVTT\n\n${TURNS.map(([speaker, from, to, text]) => `${clock(from, ".")} --> ${clock(to, ".")}\n<v ${speaker}>${text}</v>`).join("\n\n")}\n`,
  SubRip: TURNS.map(([speaker, from, to, text], index) => `${index + 1}\n${clock(from, ",")} --> ${clock(to, ",")}\n${speaker}: ${text}`).join("\n\n"),
  "TextGrid, long": `File type = "ooTextFile"\nObject class = "TextGrid"\n\nxmin = 0\nxmax = 32\ntiers? <exists>\nsize = 2\nitem []:\n    item [1]:\n${tier("Candidate")}\n    item [2]:\n${tier("Patient")}\n`,
  "TextGrid, short": `File type = "ooTextFile"\n"TextGrid"\n\n0\n32\n<exists>\n2\n${shortTier("Candidate")}\n${shortTier("Patient")}\n`,
  JSON: JSON.stringify({ segments: TURNS.map(([speaker, start, end, text]) => ({ speaker, start, end, text })) }),
};

function marksOf(transcript: Transcript) {
  const sheet = mark(transcript, CARD);
  return {
    items: sheet.items.map(({ id, content, elicitation, earned }) => ({ id, content, elicitation, earned })),
    total: sheet.total,
    result: sheet.result.outcome,
    questions: sheet.questions.map(({ id, answer }) => ({ id, answer })),
    words: sheet.time.candidateWords,
    used: sheet.time.used,
  };
}

describe("every format marks the same rehearsal alike", () => {
  const first = marksOf(readTranscript(FORMS["plain text"]!, { file: "talk" }));

  test("and the talk is marked as a reader would", () => {
    expect(first.items.filter(({ content }) => content === "complete").map(({ id }) => id)).toEqual(["introduce", "own-name", "allergies", "shake", "hold", "counter", "teach-back"]);
    expect(first.used.value).toBeCloseTo(31, 0);
  });

  test.each(Object.keys(FORMS))("%s", (form) => expect(marksOf(readTranscript(FORMS[form]!, { file: "talk" }))).toEqual(first));
});

test("marking is pure: the same input gives the same sheet", () => {
  const transcript = () => readTranscript(FORMS["JSON"]!, { file: "talk" });
  expect(JSON.stringify(mark(transcript(), CARD))).toBe(JSON.stringify(mark(transcript(), CARD)));
});

test("a rubric that came packed marks as one compiled here, and goes on to other threads as it came", () => {
  const form = JSON.parse(JSON.stringify(packedRubric(CARD))) as ReturnType<typeof packedRubric>;
  const elsewhere = structuredClone(CARD);
  rememberCompiled(elsewhere, form);
  expect(packedRubric(elsewhere)).toBe(form);
  const transcript = readTranscript(FORMS["WebVTT"]!, { file: "talk" });
  expect(mark(transcript, elsewhere)).toEqual(mark(transcript, CARD));
  expect(packedRubric(elsewhere)).toEqual(form);
});

test("without times the marks stand and the figures of time are not measurable", () => {
  const sheet = mark(readTranscript(TURNS.map(([speaker, , , text]) => `${speaker}: ${text}`).join("\n"), { file: "talk" }), CARD);
  expect(sheet.items.filter(({ content }) => content === "complete")).toHaveLength(7);
  for (const figure of [sheet.time.used, sheet.time.wordsPerMinute, sheet.time.articulation, sheet.time.overLimit, sheet.time.pauses, sheet.plan.projected]) {
    expect(figure.value).toBeNull();
    expect(figure).toHaveProperty("why");
  }
});

test("words a minute agree to 1% with a count from the TextGrid's own intervals", () => {
  const intervals = TURNS.filter(([speaker]) => speaker === "Candidate");
  const words = intervals.reduce((sum, [, , , text]) => sum + text.split(" ").length, 0);
  const seconds = intervals.reduce((sum, [, from, to]) => sum + to - from, 0);
  const { time } = mark(readTranscript(FORMS["TextGrid, long"]!, { file: "talk" }), CARD);
  expect(time.articulation.value! / ((60 * words) / seconds)).toBeCloseTo(1, 2);
  expect(time.wordsPerMinute.value! / ((60 * words) / 31)).toBeCloseTo(1, 2);
});

test("the version on the sheet is the package's", () => {
  expect(VERSION).toBe((JSON.parse(readFileSync("package.json", "utf8")) as { version: string }).version);
});
