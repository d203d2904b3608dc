import { cpSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import type { MarkSheet } from "../../src/scoring/types.ts";
import { built } from "./built.ts";

const saidwell = built();
const README = readFileSync("README.md", "utf8");
const FIXTURE = readFileSync("fixtures/corrections/corrections.yaml", "utf8");
/** The README's example, word for word. */
const [, example] = /cd fixtures\/corrections\nnpx saidwell (mark [^\n]*)\n/.exec(README)!;
const args = example!.split(" ");

beforeAll(() => cpSync("fixtures/corrections", saidwell.work, { recursive: true }));

describe("the README's example of overruled marks", () => {
  test("is the fixture", () => {
    expect(README.split("<!-- corrections: begin -->\n```yaml\n")[1]!.split("```\n")[0]).toBe(FIXTURE);
  });

  test("runs as it stands: the sheet shows both marks, who, when and why, and its totals follow", () => {
    // Where the fixture's rubric or the form of rubrics has changed, its hash has: the message says the new one.
    const { code, out, err } = saidwell.run(args, { env: { COLUMNS: "100" } });
    expect([code, err]).toEqual([0, ""]);
    expect(out).toContain("Overruled        2 marks by hand (Kim): the result rests on them");
    expect(out).toMatch(/\n {2}✓ complete {5}Asks about allergies .* 1\/1 hand\n {17}overruled by Kim, 2026-11-26; the tool's mark: ○ absent, 0\/1, \d+% sure\n/);
    expect(out).toMatch(/OVERRULED BY HAND[^]*Says how to take one: ✓ complete, 2\/2; the tool's mark: ◐ partial, 1\/2, \d+% sure\n {4}Kim, 2026-11-26: On the recording it is 'three hours', not 'free ours'\.\n {4}line 10 of the corrections\n/);
    expect(out).toContain("100% of the marks that count (4 of 4)");
  });

  test("and in JSON both marks stand, in a file of the same form", () => {
    const sheet = JSON.parse(saidwell.run([...args, "--format", "json"]).out) as MarkSheet;
    expect(sheet.corrections).toMatchObject({ file: "corrections.yaml", applied: [{ item: "allergies", content: "complete", tool: { content: "absent" } }, { item: "suck", content: "complete", tool: { content: "partial", earned: 1 } }] });
    expect(sheet.items[0]).toMatchObject({ content: "complete", overruled: { by: "Kim", when: "2026-11-26", tool: { content: "absent" } } });
    const plain = JSON.parse(saidwell.run(["mark", "rehearsal.txt", "-r", "./station.yaml", "--format", "json"]).out) as MarkSheet;
    expect([plain.corrections, plain.total.earned, sheet.total.earned]).toEqual([null, 2, 4]);
  });

  test("people are compared with the tool's own marks", () => {
    saidwell.run([...args, "--format", "json", "--out", "sheet.json"]);
    saidwell.write("marks.csv", "candidate,marker,item,content\nsheet,Kim,allergies,complete\nsheet,Kim,suck,complete\nsheet,Kim,doctor,complete\n");
    const { out } = saidwell.run(["agree", "marks.csv", "sheet.json", "--format", "json"]);
    expect(JSON.stringify(JSON.parse(out))).toMatch(/"tool":"absent"/);
  });
});

describe("what cannot be applied", () => {
  const corrected = (name: string, from: string, to: string) => {
    saidwell.write(name, FIXTURE.replace(from, to));
    return saidwell.run(["mark", "rehearsal.txt", "-r", "./station.yaml", "--corrections", name, "--out", "never.txt"]);
  };
  test.each([
    ["for another content of the rubric", /hash: "[^"]*"/.exec(FIXTURE)![0], 'hash: "000000000000"', ":3: ", "SW-M03"],
    ["of an item that there is not", "item: suck", "item: sucks", ":10: ", "SW-M02"],
    ["of another form", "content: complete", "content: fine", ":6:5: ", "SW-M01"],
  ])("%s ends with exit code 9, file and line, and writes no sheet", (_what, from, to, line, code) => {
    const { code: exit, err, out } = corrected("other.yaml", from, to);
    expect({ exit, out }).toEqual({ exit: 9, out: "" });
    expect(err).toContain(`other.yaml${line}`);
    expect(err).toContain(`[${code}]`);
    expect(() => readFileSync(`${saidwell.work}/never.txt`)).toThrow();
  });

  test("a file that is not there is told, and one that is read is not written over", () => {
    expect(saidwell.run(["mark", "rehearsal.txt", "-r", "./station.yaml", "--corrections", "none.yaml"])).toMatchObject({ code: 9, err: expect.stringContaining("[SW-M01]") });
    expect(saidwell.run([...args, "--out", "corrections.yaml", "--force"])).toMatchObject({ code: 6, err: expect.stringContaining("reads") });
  });

  test("a folder with corrections beside its rubrics is checked without a word on them", () => {
    expect(saidwell.run(["rubric", "check", "station.yaml", "corrections.yaml"]).code).toBe(1);
    expect(saidwell.bash("mkdir -p both && cp station.yaml corrections.yaml both && saidwell rubric check both --max-warnings 0")).toMatchObject({ code: 0, err: "" });
  });
});
