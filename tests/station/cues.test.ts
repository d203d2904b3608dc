import { expect, test } from "vitest";
import { compileCues, CUE_KINDS, findCues, nearlyEqual } from "../../src/station/cues.ts";
import cues from "../../src/station/cues.yaml";
import { compileNames } from "../../src/station/label-names.ts";
import { tokenise } from "../../src/station/token.ts";
import { transcriptOf } from "./transcript-of.ts";

const said = (text: string, yaml: unknown): string[] => findCues(tokenise(transcriptOf(text)), compileCues(yaml)).map((cue) => cue.phrase);
const only = (phrase: string): unknown => Object.fromEntries(CUE_KINDS.map((kind) => [kind, [kind === "stop" ? phrase : "zzz"]]));

test("the shipped cues are in form, and every group has phrases", () => {
  const compiled = compileCues(cues);
  for (const kind of CUE_KINDS) expect(compiled.some((cue) => cue.kind === kind)).toBe(true);
});

test("no phrase stands twice in a group", () => {
  const all = compileCues(cues).map((cue) => `${cue.kind}: ${cue.phrase}`);
  expect(all.filter((phrase, at) => all.indexOf(phrase) !== at)).toEqual([]);
});

test.each([
  ["time is up", "Time is up.", true],
  ["time is up", "time's up", false],
  ["you may now? begin", "you may begin", true],
  ["you may now? begin", "You may, now, begin!", true],
  ["i'm|i am? ... pharmacist", "I'm Ana, the pharmacist", true],
  ["i'm|i am? ... pharmacist", "i am ana and the duty pharmacist", false],
  ["NUMBER minutes left", "two minutes left", true],
  ["NUMBER minutes left", "2 minuts left", true],
  ["NUMBER minutes left", "some minutes left", false],
  ["that is up", "then is up", false],
])("%s in %s: %s", (phrase, text, found) => {
  expect(said(text, only(phrase))).toEqual(found ? [phrase] : []);
});

test.each([
  [{ ...(only("time is up") as object), start: ["go"] }, /"start" is not a group/],
  [{ begin: "go" }, /group "begin" must be a list/],
  [only("Time is up"), /stop.*"Time" is not a word in lower case/],
  [only("now? stop"), /must open with a word/],
  [Object.fromEntries(CUE_KINDS.map((kind) => [kind, [7]])), /7 is not text/],
  [null, /must be groups/],
])("faults in the YAML are told with their place (%#)", (yaml, message) => {
  expect(() => compileCues(yaml)).toThrow(message);
});

test("faults in the names of labels too", () => {
  expect(() => compileNames({ candidate: ["student"] })).toThrow(/"professional" must be a list/);
  const groups = { candidate: ["a"], professional: ["b"], patient: ["c"], examiner: ["d"], announcer: ["e"], unknown: ["a"] };
  expect(() => compileNames(groups)).toThrow(/"a" stands twice/);
});

test.each([["minutes", "minuts", true], ["minutes", "minuets", false], ["remain", "remains", true], ["stop", "stop", true], ["abc", "cba", false]])("%s and %s differ by at most one letter: %s", (a, b, near) => {
  expect(nearlyEqual(a, b)).toBe(near);
});
