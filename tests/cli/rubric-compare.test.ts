import { mkdirSync, readFileSync, rmSync, symlinkSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import type { RubricComparison } from "../../src/review/compare.ts";
import { BLOCK, SOUND } from "../review/card.ts";
import { built } from "./built.ts";

/* A real git repository, made for the test; rubric and talks are invented. */

const saidwell = built();
const compare = (...args: string[]) => saidwell.run(["rubric", "compare", ...args]);
const json = (...args: string[]) => JSON.parse(compare(...args, "--format", "json").out) as RubricComparison;
const git = (line: string) => {
  const { code, err } = saidwell.bash(`git -c user.name=T -c user.email=t@example.org -c init.defaultBranch=main ${line}`);
  if (code !== 0) throw new Error(err);
};

const FIRST = SOUND.replace("sections:\n", "sections:\n  - include: blocks/opening.yaml\n");
const SECOND = FIRST.replace("{ value: 10, unit: second }", "{ value: 30, unit: second }");
const GREETED = BLOCK.replace("hello and welcome to the pharmacy", "hello and lovely to see you");
const talk = (middle: string) => `Candidate: Hello and welcome to the pharmacy, I am Robin, the pharmacist.\nPatient: Hello.\nCandidate: ${middle}\nPatient: I see.\nCandidate: Thank you, goodbye.\n`;

beforeAll(() => {
  for (const folder of ["rubrics/blocks", "talks/june"]) mkdirSync(`${saidwell.work}/${folder}`, { recursive: true });
  saidwell.write("rubrics/card.yaml", FIRST);
  saidwell.write("rubrics/blocks/opening.yaml", BLOCK);
  saidwell.write("talks/ten.txt", talk("Shake the inhaler well. Hold your breath for ten seconds."));
  saidwell.write("talks/june/none.txt", talk("Shake the inhaler well."));
  saidwell.write("talks/notes.md", "no transcript");
  git("init -q");
  git("add -A");
  git("commit -qm one");
  saidwell.write("rubrics/card.yaml", SECOND);
  git("commit -qam two");
});

describe("a git revision as one side", () => {
  test("is compared with the file as it is: which candidates, which items, and why", () => {
    const report = json("HEAD~1:rubrics/card.yaml", "rubrics/card.yaml", "--on", "talks");
    expect(report).toMatchObject({ form: "saidwell/rubric-comparison@1", transcripts: 2, failed: [], versionKept: true, before: { file: "HEAD~1:rubrics/card.yaml" }, after: { file: "rubrics/card.yaml" } });
    expect(report.changes).toEqual([expect.objectContaining({ kind: "element", id: "hold/hold", field: "quantity", text: "quantity: 10 seconds -> 30 seconds" })]);
    expect(report.changed.map(({ file, items }) => [file, items.map(({ id, before, after, why }) => [id, before!.content, after!.content, why.how])])).toEqual([["ten.txt", [["hold", "complete", "incorrect", "alone"]]]]);
  });

  test("both sides may be one, and nothing in the folder is touched", () => {
    expect(json("HEAD~1:rubrics/card.yaml", "HEAD:rubrics/card.yaml", "--on", "talks").changed).toHaveLength(1);
    expect(json("HEAD:rubrics/card.yaml", "rubrics/card.yaml", "--on", "talks").changes).toEqual([]);
    expect(saidwell.bash("git status --porcelain").out).toBe("");
  });

  test("reads the blocks of that revision, not those on disk", () => {
    saidwell.write("rubrics/blocks/opening.yaml", GREETED);
    try {
      const { changes, before, after } = json("HEAD:rubrics/card.yaml", "rubrics/card.yaml", "--on", "talks");
      expect(changes).toEqual([expect.objectContaining({ id: "greet/greet", field: "say", text: expect.stringContaining("lovely to see you") })]);
      expect(before.hash).not.toBe(after.hash);
    } finally {
      saidwell.write("rubrics/blocks/opening.yaml", BLOCK);
    }
  });

  test("takes ./ for the folder that the command runs in", () => {
    const { code, out } = saidwell.bash("cd rubrics && saidwell rubric compare HEAD~1:./card.yaml HEAD:./card.yaml --on ../talks");
    expect([code, out.includes("10 seconds -> 30 seconds")]).toEqual([0, true]);
  });

  test("a shipped block stays the program's", () => {
    saidwell.write("rubrics/shipped.yaml", SOUND.replace("sections:\n", "sections:\n  - include: shipped:closing\n"));
    git("add -A");
    git("commit -qm shipped");
    expect(json("HEAD:rubrics/shipped.yaml", "rubrics/shipped.yaml", "--on", "talks").changes).toEqual([]);
  });

  test.each([
    ["a revision that there is not", "nosuch:rubrics/card.yaml", "SW-R01"],
    ["a path that there is not", "HEAD:rubrics/none.yaml", "SW-R01"],
    ["an option in place of a revision", "--output=x:rubrics/card.yaml", ""],
    ["a folder", "HEAD:rubrics", "SW-R0"],
  ])("%s is refused", (_what, specification, code) => {
    const ran = compare(specification, "rubrics/card.yaml", "--on", "talks");
    expect([ran.code === 4 || ran.code === 2, ran.out, ran.err.includes(code)]).toEqual([true, "", true]);
    expect(saidwell.bash("ls").out).not.toContain("x:");
  });

  test.each([
    ["../outside.yaml", "outside the rubric's folder"],
    ["other.yaml", "only blocks can be included"],
    ["/etc/hostname", "relative to the rubric"],
    ["blocks/link.yaml", "block"],
  ])("an include of %s is refused there too", (include, reason) => {
    saidwell.write("outside.yaml", BLOCK);
    saidwell.write("rubrics/other.yaml", SOUND);
    rmSync(`${saidwell.work}/rubrics/blocks/link.yaml`, { force: true });
    symlinkSync("../../outside.yaml", `${saidwell.work}/rubrics/blocks/link.yaml`);
    saidwell.write("rubrics/bad.yaml", SOUND.replace("sections:\n", `sections:\n  - include: ${include}\n`));
    git("add -A");
    git("commit -qm bad --allow-empty");
    const { code, err } = compare("HEAD:rubrics/bad.yaml", "rubrics/card.yaml", "--on", "talks");
    expect([code, err]).toEqual([4, expect.stringContaining(reason)]);
  });

  test("outside a repository git's reason is told", () => {
    const { code, err } = saidwell.run(["rubric", "compare", "HEAD:rubrics/card.yaml", "rubrics/card.yaml", "--on", "talks"], { env: { GIT_DIR: "/nonexistent" } });
    expect([code, err]).toEqual([4, expect.stringContaining("not a git repository")]);
  });
});

describe("the exit code", () => {
  test("is 0 without --fail-on-change and when nothing changes, 1 with it when anybody's marks change", () => {
    expect(compare("HEAD~1:rubrics/card.yaml", "rubrics/card.yaml", "--on", "talks").code).toBe(0);
    expect(compare("rubrics/card.yaml", "rubrics/card.yaml", "--on", "talks", "--fail-on-change")).toMatchObject({ code: 0, err: "" });
    saidwell.write("first.yaml", SOUND);
    saidwell.write("second.yaml", SOUND.replace("{ value: 10, unit: second }", "{ value: 30, unit: second }"));
    expect(compare("first.yaml", "second.yaml", "--on", "talks", "--fail-on-change")).toMatchObject({ code: 1, err: expect.stringContaining("[SW-C18]"), out: expect.stringContaining("ten.txt") });
    saidwell.write("words.yaml", SOUND.replace("label: Rinses the mouth", "label: Rinses"));
    expect(compare("first.yaml", "words.yaml", "--on", "talks", "--fail-on-change").code).toBe(0);
  });

  test("is 7 when a transcript could not be marked; the others are, and it is listed", () => {
    mkdirSync(`${saidwell.work}/broken`, { recursive: true });
    saidwell.write("broken/good.txt", talk("Shake the inhaler well."));
    saidwell.write("broken/bad.json", "{ this is no JSON");
    const { code, out, err } = compare("rubrics/card.yaml", "rubrics/card.yaml", "--on", "broken", "--format", "json");
    expect([code, err]).toEqual([7, expect.stringContaining("bad.json")]);
    expect((JSON.parse(out) as RubricComparison).failed).toEqual([expect.objectContaining({ file: "bad.json" })]);
  });

  test("is 2 without --on, 8 for a folder that is not there or holds no transcript", () => {
    expect(compare("rubrics/card.yaml", "rubrics/card.yaml")).toMatchObject({ code: 2, err: expect.stringContaining("--on") });
    expect(compare("rubrics/card.yaml", "rubrics/card.yaml", "--on", "none")).toMatchObject({ code: 8, err: expect.stringContaining("[SW-B12]") });
    expect(compare("rubrics/card.yaml", "rubrics/card.yaml", "--on", "rubrics")).toMatchObject({ code: 8 });
  });
});

test("one transcript may be named in place of a folder", () => {
  expect(json("HEAD~1:rubrics/card.yaml", "rubrics/card.yaml", "--on", "talks/ten.txt").transcripts).toBe(1);
});

test("a shipped rubric may be one side", () => {
  expect(compare("eye-drops", "eye-drops", "--on", "talks")).toMatchObject({ code: 0, out: expect.stringContaining("the two say the same") });
});

test("--out writes Markdown for a job summary, never over what is read", () => {
  expect(compare("first.yaml", "second.yaml", "--on", "talks", "--format", "markdown", "--out", "summary.md")).toMatchObject({ code: 0, out: "" });
  expect(readFileSync(`${saidwell.work}/summary.md`, "utf8")).toMatch(/^# Rubric comparison\n[^]*### ten\.txt\n/);
  expect(compare("first.yaml", "second.yaml", "--on", "talks", "--out", "first.yaml", "--force")).toMatchObject({ code: 6 });
});
