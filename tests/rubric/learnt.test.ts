import { describe, expect, test } from "vitest";
import { ProblemError } from "../../src/problem/problem.ts";
import { readLearnt } from "../../src/rubric/learnt.ts";

const LABELS = new Map([["dry/dry", "Left to dry"], ["unsafe:towel", "Says to use a towel"]]);
const file = (change: Record<string, unknown> = {}) =>
  JSON.stringify({ saidwell: "learnt@1", id: "lantern", elements: { "dry/dry": { label: "Left to dry", place: 0, about: -3, turned: -2, numbers: true } }, anyhow: -0.5, words: { hearth: [0, 4, -1, 1, 0, 2] }, ...change });
const read = (text: string) => readLearnt(text, "learnt/lantern.json", "lantern", LABELS);

function refusal(text: string): string {
  try {
    read(text);
  } catch (error) {
    if (error instanceof ProblemError) return `${error.findings[0]!.code} ${error.findings[0]!.message}`;
    throw error;
  }
  return "none";
}

describe("a file of what was learnt about a rubric", () => {
  test("is read as it stands", () => {
    expect(read(file())).toEqual({ elements: { "dry/dry": { label: "Left to dry", place: 0, about: -3, turned: -2, numbers: true } }, anyhow: -0.5, words: { hearth: [0, 4, -1, 1, 0, 2] } });
  });

  test("knows nothing of an element that is worded otherwise now, or has gone: it may ask for another number", () => {
    const { elements } = read(file({ elements: { "dry/dry": { label: "Left to dry for an hour", place: 0, about: -3, turned: -2, numbers: true } } }));
    expect(elements["dry/dry"]!.about).toBeLessThan(-100);
  });

  test.each([
    ["no JSON", "{", "SW-R08 it is not JSON"],
    ["another form", file({ saidwell: "learnt@2" }), "SW-R08 it is no file of what was learnt: saidwell"],
    ["no word of what sounds wrong anyhow", file({ anyhow: undefined }), "SW-R08 it is no file of what was learnt: anyhow"],
    ["another rubric's", file({ id: "kettle" }), "SW-R08 it was learnt about 'kettle', and 'lantern' names it"],
    ["a row that is cut off", file({ words: { hearth: [0, 4] } }), "SW-R08 the row of 'hearth'"],
    ["a row of an element that is not there", file({ words: { hearth: [2, 4, 1] } }), "SW-R08 the row of 'hearth'"],
    ["two elements in one place", file({ elements: { "dry/dry": { label: "a", place: 0, about: 0, turned: 0, numbers: true }, "dry/wet": { label: "b", place: 0, about: 0, turned: 0, numbers: true } } }), "SW-R08 its elements do not stand in places of their own"],
  ])("%s is refused", (_, text, message) => {
    expect(refusal(text)).toContain(message);
  });
});
