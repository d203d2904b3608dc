import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { objectsOf } from "../../src/rubric/form.ts";
import { rubricSchema } from "../../src/rubric/schema.ts";
import { built } from "./built.ts";

const saidwell = built();
const run = (...args: string[]) => saidwell.run(["rubric", ...args]);

describe("rubric list", () => {
  const shipped = readdirSync("rubrics").filter((name) => name.endsWith(".yaml")).map((name) => name.replace(".yaml", ""));

  test("names every rubric of the folder with items, critical items, limit and version", () => {
    const { code, out } = run("list");
    expect(code).toBe(0);
    for (const name of shipped) expect(out).toMatch(new RegExp(`^${name} `, "m"));
    expect(out.match(/\d+ items, \d critical; limit \d+:\d\d; version \d+/g)).toHaveLength(shipped.length);
  });

  test("as JSON too; 'saidwell rubrics' gives the same data", () => {
    const list = JSON.parse(run("list", "--format", "json").out) as { name: string }[];
    expect(list.map(({ name }) => name)).toEqual(shipped.sort());
    expect(JSON.parse(saidwell.run(["rubrics", "--format", "json"]).out)).toEqual(list);
  });
});

describe("rubric show", () => {
  test("prints scenario, items with critical marks, unsafe statements, order and sources", () => {
    const { code, out } = run("show", "eye-drops");
    expect(code).toBe(0);
    for (const part of ["Rubric: Eye drops", "limit 7:00, target 6:00", "(identity) CRITICAL", "UNSAFE STATEMENTS", "QUESTIONS OF THE PATIENT", "ORDER", "SOURCES"]) expect(out).toContain(part);
    expect(out).not.toContain("hook");
    expect(Math.max(...out.split("\n").map((line) => [...line].length))).toBeLessThanOrEqual(80);
  });

  test("tells what decides marks though no item says it: credit, an unsafe statement's number, a question's own answer", () => {
    const starter = run("new").out;
    const text = starter
      .replace("        weight: 2\n", "        weight: 2\n        credit: { prompted: none }\n")
      .replace("      answered_by: [missed-dose]", "      answer: [have it with your supper]")
      .replace("    severity: major # minor, moderate or major\n", "    severity: major\n    quantity: { value: 2, unit: tablet }\n")
      .replace(/    say:\n      - take two the next day[^]*?    fact:/, "    say:\n      - take {quantity} the next day\n    fact:");
    const file = `${saidwell.work}/decides.yaml`;
    writeFileSync(file, text);
    const { out } = run("show", file);
    for (const part of ["no credit when prompted", "have it with your supper", "2 tablets"]) expect(out).toContain(part);
  });

  test("--responses adds what counts as saying it", () => {
    expect(run("show", "eye-drops").out).not.toContain("my name is {name}");
    expect(run("show", "eye-drops", "--responses").out).toContain("my name is {name}");
  });

  test("JSON is the rubric itself, blocks read in", () => {
    const rubric = JSON.parse(run("show", "eye-drops", "--format", "json").out) as { id: string; hash: string; sections: { items: { elements: unknown[] }[] }[] };
    expect(rubric).toMatchObject({ id: "eye-drops", hash: expect.stringMatching(/^[0-9a-f]{64}$/) });
    expect(rubric.sections.every(({ items }) => items.every(({ elements }) => elements.length > 0))).toBe(true);
  });

  test("a name that there is not stops with exit code 4", () => {
    expect(run("show", "eye-dops")).toMatchObject({ code: 4, out: "", err: expect.stringContaining("eye-drops") });
  });
});

describe("rubric new", () => {
  test("writes a starter that the check finds nothing wrong with and that marks", () => {
    expect(run("new", "our-station.yaml")).toMatchObject({ code: 0, out: "", err: "" });
    const check = run("check", "our-station.yaml", "--max-warnings", "0", "--today", "2026-11-25");
    expect(check).toMatchObject({ code: 0, out: expect.stringContaining("0 errors, 0 warnings, 0 notes") });
    saidwell.write("talk.txt", "Pharmacist: Hello, I am Robin, the pharmacist. Can I take your full name?\nPatient: Sam Hill.\nPharmacist: And what's your date of birth?\nPatient: The first of May 1970.\nPharmacist: Take one tablet every morning. Stay upright for thirty minutes afterwards. If you forget, skip the missed dose. Never take a double dose. If a rash spreads, stop and ring us.\nPatient: Thank you.\nPharmacist: Goodbye.\n");
    const sheet = JSON.parse(saidwell.run(["mark", "talk.txt", "--rubric", "our-station.yaml", "--format", "json"]).out) as { items: { id: string; content: string }[] };
    expect(sheet.items.map(({ id, content }) => [id, content])).toEqual([["identity", "complete"], ["how-many", "complete"], ["upright", "complete"], ["swallowing", "not-offered"], ["missed-dose", "complete"], ["warning-sign", "complete"]]);
  });

  test("has every field that a rubric, an item, a question or an unsafe statement can have, so that nobody must read the schema", () => {
    const starter = run("new").out;
    const names = new Set(objectsOf(rubricSchema).flatMap((object) => object.names));
    expect([...names].filter((name) => !new RegExp(`\\b${name}: ?`).test(starter))).toEqual([]);
  });

  test("takes the id from the file's name and leads the editor to the schema", () => {
    mkdirSync(`${saidwell.work}/deep`);
    run("new", "deep/Asthma Review 2.yaml");
    const text = readFileSync(`${saidwell.work}/deep/Asthma Review 2.yaml`, "utf8");
    expect(text).toMatch(/^# yaml-language-server: \$schema=\.\.\/\S*rubrics\/rubric\.schema\.json\n/);
    expect(text).toMatch(/^id: asthma-review-2$/m);
  });

  test("without a file prints it", () => {
    expect(run("new").out).toContain("saidwell: rubric@1\n");
  });

  test("never replaces a file", () => {
    saidwell.write("mine.yaml", "mine\n");
    expect(run("new", "mine.yaml")).toMatchObject({ code: 6, err: expect.stringContaining("[SW-O01]") });
    expect(run("new", "mine.yaml", "--force").code).toBe(2);
    expect(readFileSync(`${saidwell.work}/mine.yaml`, "utf8")).toBe("mine\n");
  });

  test("a name without .yaml is refused before anything is written", () => {
    expect(run("new", "our-station")).toMatchObject({ code: 2, err: expect.stringContaining("our-station.yaml") });
  });
});
