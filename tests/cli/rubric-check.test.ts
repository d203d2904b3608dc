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
    expect(findings.find(({ code }) => code === "SW-C16")).toMatchObject({ file: "ours/notes.yaml", line: 1, message: expect.stringContaining("neither rubric nor block") });
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

describe("responses files", () => {
  const CARD = SOUND.replace("version: 1\n", "version: 1\nresponses: more.yaml\n");
  const MORE = "saidwell: responses@1\nid: card\nitems: { rinse: { rinse: { say: [swill some water round and spit it out] } } }\n";
  beforeAll(() => {
    for (const folder of ["resp", "orphan", "faulty/blocks"]) mkdirSync(`${saidwell.work}/${folder}`, { recursive: true });
    saidwell.write("resp/card.yaml", CARD);
    saidwell.write("resp/more.yaml", MORE);
    saidwell.write("orphan/card.yaml", SOUND);
    saidwell.write("orphan/more.yaml", MORE.replace("rinse: {", "nosuch: {"));
    saidwell.write("orphan/slip.yaml", "# a card\nsaidwell: rubrc@1\n");
    saidwell.write("faulty/card.yaml", WITH_BLOCK.replace("version: 1", "version: one\nresponses: more.yaml"));
    saidwell.write("faulty/blocks/opening.yaml", BLOCK);
    saidwell.write("faulty/more.yaml", MORE);
    saidwell.write("bomb.yaml", `saidwell: rubric@1\na: &a [x,x,x,x,x,x,x,x,x]\n${[..."bcdefghi"].map((name, at) => `${name}: &${name} [${Array(9).fill(`*${"abcdefgh"[at]!}`).join(",")}]\n`).join("")}`);
  });

  test("one named as a path has the form of its own kind, also where the shell reads a pattern", () => {
    expect(json("resp/card.yaml", "resp/more.yaml")).toMatchObject({ files: [{ file: "resp/card.yaml", kind: "rubric" }, { file: "resp/more.yaml", kind: "responses" }], findings: [] });
    expect(json("resp/more.yaml").findings).toEqual([expect.objectContaining({ code: "SW-C21", severity: "info", line: 2 })]);
  });

  test("one that nothing names is told, and so is a file with a slip in its first word", () => {
    expect(json("orphan").findings.map(({ code, file, line }) => [code, file, line])).toEqual([["SW-C21", "orphan/more.yaml", 2], ["SW-C16", "orphan/slip.yaml", 2]]);
    expect(check("orphan", "--max-warnings", "0").code).toBe(1);
  });

  test("what a rubric with errors names is not told as named by nobody", () => {
    expect(json("faulty").findings.map(({ code }) => code)).toEqual(["SW-R03"]);
  });

  test("a file that explodes is a fault of that file: the others are checked and the report is written", () => {
    const { findings, files } = json("bomb.yaml", "resp");
    expect(findings).toEqual([expect.objectContaining({ code: "SW-R02", file: "bomb.yaml", line: 3 })]);
    expect(files).toHaveLength(3);
    saidwell.write("talk.txt", "[0:00] Pharmacist: Hello.\n[0:05] Patient: Hi.\n");
    expect(saidwell.run(["mark", "talk.txt", "-r", "bomb.yaml"])).toMatchObject({ code: 4, err: expect.stringContaining("[SW-R02]") });
  });

  test("with a shipped block, every place is one of the person's own files", () => {
    saidwell.write("resp/shipped.yaml", SOUND.replace("id: card", "id: shipped").replace("sections:\n", "sections:\n  - include: shipped:opening\n    override: { prior-knowledge: { critical: true } }\n"));
    const { results } = (JSON.parse(check("resp/shipped.yaml", "--format", "sarif").out) as { runs: { results: { locations: { physicalLocation: { artifactLocation: { uri: string } } }[] }[] }[] }).runs[0]!;
    expect(results.length).toBeGreaterThan(0);
    expect(new Set(results.map(({ locations }) => locations[0]!.physicalLocation.artifactLocation.uri))).toEqual(new Set(["resp/shipped.yaml"]));
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
