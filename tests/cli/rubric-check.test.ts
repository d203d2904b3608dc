import { mkdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { BLOCK, SOUND } from "../review/card.ts";
import { built } from "./built.ts";

const saidwell = built();
const TODAY = ["--today", "2026-11-25"];
const check = (...args: string[]) => saidwell.run(["rubric", "check", ...args, ...TODAY]);
const json = (...args: string[]) => JSON.parse(check(...args, "--format", "json").out) as { files: { file: string; kind: string }[]; findings: { code: string; file: string; line?: number }[]; counts: Record<string, number>; today: string };

const WITH_BLOCK = SOUND.replace("sections:\n", "sections:\n  - include: blocks/opening.yaml\n");
/** One response of the shaking item says the rinsing too. */
const CONFUSED = SOUND.replace("          - always shake the inhaler hard\n", "          - always shake the inhaler hard\n          - shake it and rinse your mouth with water afterwards\n");

beforeAll(() => {
  for (const folder of ["ours/blocks", "ours/deep/er", "alone", "broken", "other"]) mkdirSync(`${saidwell.work}/${folder}`, { recursive: true });
  saidwell.write("ours/card.yaml", WITH_BLOCK);
  saidwell.write("ours/blocks/opening.yaml", BLOCK);
  saidwell.write("ours/deep/er/confused.yml", CONFUSED);
  saidwell.write("ours/notes.yaml", "just: notes\n");
  saidwell.write("alone/opening.yaml", BLOCK);
  saidwell.write("broken/card.yaml", SOUND.replace("id: rinse", "id: hold"));
  saidwell.write("broken/loop.yaml", SOUND.replace("sections:\n", "sections:\n  - include: loop.yaml\n"));
  saidwell.write("broken/circle.yaml", SOUND.replace("sections:\n", "sections:\n  - include: other.yaml\n"));
  saidwell.write("broken/other.yaml", SOUND.replace("sections:\n", "sections:\n  - include: circle.yaml\n"));
  saidwell.write("broken/out.yaml", SOUND.replace("sections:\n", "sections:\n  - include: ../alone/opening.yaml\n"));
});

describe("what is checked", () => {
  test("a file", () => {
    const { code, out } = check("ours/card.yaml");
    expect([code, out.trimEnd().split("\n").at(-1)]).toEqual([0, "1 file checked: 0 errors, 0 warnings, 0 notes."]);
  });

  test("a folder and all below it; YAML that is no rubric is counted, not checked", () => {
    const { files, findings } = json("ours");
    expect(files.map(({ file, kind }) => [file, kind])).toEqual([["ours/card.yaml", "rubric"], ["ours/deep/er/confused.yml", "rubric"], ["ours/blocks/opening.yaml", "block"]]);
    expect(findings.find(({ code }) => code === "SW-C16")).toMatchObject({ file: "ours", message: expect.stringContaining("ours/notes.yaml") });
  });

  test("a pattern that the shell did not read", () => {
    expect(json("ours/**/*.yml").files.map(({ file }) => file)).toEqual(["ours/deep/er/confused.yml"]);
  });

  test("a file that is named twice, once", () => {
    expect(json("ours/card.yaml", "ours", "./ours/card.yaml").files.filter(({ file }) => file.includes("card"))).toHaveLength(1);
  });

  test("a block that no checked rubric includes says so", () => {
    expect(json("alone").findings).toEqual([expect.objectContaining({ code: "SW-C15", file: "alone/opening.yaml" })]);
    expect(json("ours").findings.map(({ code }) => code)).not.toContain("SW-C15");
  });

  test("a path that names nothing stops with exit code 4", () => {
    expect(check("none.yaml")).toMatchObject({ code: 4, out: "", err: expect.stringContaining("[SW-R01]") });
    expect(check("none/**/*.yaml")).toMatchObject({ code: 4, err: expect.stringContaining("[SW-R01]") });
    expect(check("other")).toMatchObject({ code: 4, err: expect.stringContaining("no YAML file") });
  });
});

describe("includes", () => {
  test.each([
    ["broken/loop.yaml", "it is this rubric itself"],
    ["broken/circle.yaml", "only blocks can be included"],
    ["broken/out.yaml", "outside the rubric's folder"],
  ])("%s is an error: %s", (file, reason) => {
    expect(json(file).findings).toEqual([expect.objectContaining({ code: "SW-R04", file, message: expect.stringContaining(reason), line: SOUND.split("\n").findIndex((line) => line === "sections:") + 2 })]);
  });
});

describe("the exit code", () => {
  test("is 0 with warnings, unless there are more than may be", () => {
    const file = "ours/deep/er/confused.yml";
    const { warnings } = json(file).counts;
    expect(warnings).toBeGreaterThan(0);
    expect(check(file).code).toBe(0);
    expect(check(file, "--max-warnings", String(warnings)).code).toBe(0);
    const over = check(file, "--max-warnings", String(warnings! - 1));
    expect(over).toMatchObject({ code: 1, err: expect.stringContaining("[SW-C17]") });
    expect(over.out).toContain("SW-C02");
  });

  test("is 1 with errors, and every file is checked all the same", () => {
    const { code, out } = check("broken/card.yaml", "ours/card.yaml");
    expect(code).toBe(1);
    expect(out).toContain("SW-R06");
    expect(out).toContain("2 files checked");
  });

  test("is 2 for a date or a number that is none", () => {
    expect(saidwell.run(["rubric", "check", "ours", "--today", "2026-06-31"])).toMatchObject({ code: 2, err: expect.stringContaining("2027-06-30") });
    expect(saidwell.run(["rubric", "check", "ours", "--max-warnings", "few"]).code).toBe(2);
    expect(saidwell.run(["rubric", "check"]).code).toBe(2);
    expect(saidwell.run(["rubric", "chek", "ours"])).toMatchObject({ code: 2, err: expect.stringContaining("check") });
  });
});

test("the clock is read when no day is given", () => {
  const today = JSON.parse(saidwell.run(["rubric", "check", "ours/card.yaml", "--format", "json"]).out).today as string;
  expect(Math.abs(Date.parse(today) - Date.now())).toBeLessThan(2 * 86_400_000);
});

test("two runs say the same", () => {
  expect(check("ours", "--confusion", "--format", "sarif").out).toBe(check("ours", "--confusion", "--format", "sarif").out);
});

test("--out writes the report, never over a rubric", () => {
  expect(check("ours", "--format", "sarif", "--out", "report.sarif")).toMatchObject({ code: 0, out: "" });
  expect(check("ours", "--out", "report.sarif")).toMatchObject({ code: 6, err: expect.stringContaining("[SW-O01]") });
  expect(check("ours", "--out", "ours/card.yaml", "--force")).toMatchObject({ code: 6, err: expect.stringContaining("reads") });
});

describe("no output takes the place of a file that was read", () => {
  const AGAIN = WITH_BLOCK.replace("version: 1\n", "version: 1\nresponses: more.yaml\n");
  const MORE = "saidwell: responses@1\nid: card\nitems: { rinse: { rinse: { say: [swill some water round and spit it out] } } }\n";
  const kept = { "kept/card.yaml": AGAIN, "kept/blocks/opening.yaml": BLOCK, "kept/more.yaml": MORE, "kept/notes.yaml": "just: notes\n", "kept/broken.yaml": AGAIN.replace("id: card", "id: other") };
  beforeAll(() => {
    for (const folder of ["kept/blocks", "talk"]) mkdirSync(`${saidwell.work}/${folder}`, { recursive: true });
    for (const [name, text] of Object.entries(kept)) saidwell.write(name, text);
    saidwell.write("talk/a.txt", "[0:00] Pharmacist: Shake the inhaler well.\n[0:10] Patient: Okay, thanks, bye.\n");
  });

  test.each<[string, string[]]>([
    ["rubric check, an included block", ["rubric", "check", "kept/card.yaml", "-o", "kept/blocks/opening.yaml"]],
    ["rubric check, a responses file", ["rubric", "check", "kept", "-o", "kept/more.yaml"]],
    ["rubric check, a file that was looked into and left out", ["rubric", "check", "kept", "-o", "kept/notes.yaml"]],
    ["rubric check, the block of a rubric with errors", ["rubric", "check", "kept/broken.yaml", "-o", "kept/blocks/opening.yaml"]],
    ["rubric compare, a responses file", ["rubric", "compare", "kept/card.yaml", "kept/card.yaml", "--on", "talk", "-o", "kept/more.yaml"]],
    ["rubric show, an included block", ["rubric", "show", "kept/card.yaml", "-o", "kept/blocks/opening.yaml"]],
    ["rubric sheet, an included block", ["rubric", "sheet", "kept/card.yaml", "-o", "kept/blocks/opening.yaml"]],
    ["mark, an included block", ["mark", "talk/a.txt", "-r", "kept/card.yaml", "-o", "kept/blocks/opening.yaml"]],
    ["explain, a responses file", ["explain", "talk/a.txt", "-r", "kept/card.yaml", "--item", "shake", "-o", "kept/more.yaml"]],
  ])("%s", (_what, args) => {
    expect(saidwell.run([...args, "--force"])).toMatchObject({ code: 6, err: expect.stringContaining("would overwrite a file that this command reads") });
    for (const [name, text] of Object.entries(kept)) expect(readFileSync(`${saidwell.work}/${name}`, "utf8")).toBe(text);
  });
});

test("help names the formats and the exit codes", () => {
  const { out } = saidwell.run(["rubric", "check", "--help"]);
  expect(out).toContain("sarif");
  expect(out).toContain("Exit codes:");
  expect(saidwell.run(["rubric", "--help"]).out).toContain("check");
});
