import { expect, test } from "vitest";
import { listCohort, type CohortSources } from "../../src/cohort/entries.ts";
import { DEFAULT_PATTERN, nameReader } from "../../src/cohort/names.ts";
import { readPlan } from "../../src/cohort/plan.ts";
import { compareNatural } from "../../src/cohort/result.ts";
import { inShard, parseShard } from "../../src/cohort/shard.ts";
import { sheetNames } from "../../src/cohort/sheet-names.ts";

function list(files: string[], more: Partial<CohortSources> = {}) {
  return listCohort({ files, onDisk: (file) => files.find((one) => one.normalize("NFC") === file.normalize("NFC")) ?? null, refused: new Map(), names: nameReader(DEFAULT_PATTERN), pattern: DEFAULT_PATTERN, plan: null, rubric: null, stations: new Map(), onlyStation: null, rubricId: (name) => name, ...more });
}

test("one rubric marks every station, and names the station where nothing else does", () => {
  const { entries } = list(["B_x.txt", "A.txt"], { rubric: "eye-drops", onlyStation: "eye-drops" });
  expect(entries.map(({ key, rubric }) => [key.candidate, key.station, key.attempt, rubric])).toEqual([
    ["A", "eye-drops", "1", "eye-drops"],
    ["B", "x", "1", "eye-drops"],
  ]);
});

test("the plan's line goes before its station map, that before the command line, and a station without a rubric is told", () => {
  const plan = readPlan("file,station,rubric\nA.txt,pen,own\nB.txt,pen,\nC.txt,spray,\nD.txt,odd,\n,pen,mapped\n", "plan.csv");
  const { entries } = list(["A.txt", "B.txt", "C.txt", "D.txt"], { plan, stations: new Map([["pen", "typed"], ["spray", "typed"]]) });
  expect(entries.map(({ rubric }) => rubric)).toEqual(["own", "mapped", "typed", null]);
  expect(entries[3]!.errors[0]).toMatchObject({ code: "SW-B04", file: "D.txt" });
  expect(entries[3]!.errors[0]!.mend).toContain("pen, spray");
});

test("a file that the plan names and the folder lacks is an error of that line; what the plan does not name is listed", () => {
  const plan = readPlan("file,candidate\nA.txt,A\nGone.txt,G\n", "plan.csv");
  const { entries, unplanned } = list(["A.txt", "Z.txt"], { plan, rubric: "r", onlyStation: "r" });
  expect(entries.map(({ errors }) => errors.map(({ code }) => code))).toEqual([[], ["SW-T01"]]);
  expect(unplanned).toEqual(["Z.txt"]);
});

test("two files of one attempt: neither is marked, and each names the other", () => {
  const { entries } = list(["A_pen_1.txt", "A_pen_1.vtt", "B_pen_1.txt"], { rubric: "r" });
  expect(entries.map(({ file, errors }) => [file, errors.map(({ code }) => code)])).toEqual([["A_pen_1.txt", ["SW-B05"]], ["A_pen_1.vtt", ["SW-B05"]], ["B_pen_1.txt", []]]);
  expect(entries[0]!.errors[0]!.message).toContain("A_pen_1.vtt");
});

test("a plan that names one file twice for one attempt gives one entry, with both lines", () => {
  const { entries } = list(["A.txt"], { plan: readPlan("file,candidate\nA.txt,A\nA.txt,A\n", "plan.csv"), rubric: "r", onlyStation: "r" });
  expect(entries).toHaveLength(1);
  expect(entries[0]!.errors[0]!.message).toContain("lines 2, 3 of the plan");
});

test("one recording may hold two stations, by the plan", () => {
  const plan = readPlan("file,candidate,station,to,from\nA.txt,A,one,7:00,\nA.txt,A,two,,7:00\n", "plan.csv");
  const { entries } = list(["A.txt"], { plan, rubric: "r" });
  expect(entries.map(({ key, from, to, errors }) => [key.station, from, to, errors.length])).toEqual([["one", undefined, "7:00", 0], ["two", "7:00", undefined, 0]]);
});

test("numbers are sorted by value, and only equal texts are equal", () => {
  expect(["a10", "a2", "a02", "a", "b1"].sort(compareNatural)).toEqual(["a", "a02", "a2", "a10", "b1"]);
  expect(compareNatural("a2", "a02")).not.toBe(0);
});

test("every file is of exactly one part, whatever other files there are", () => {
  const files = Array.from({ length: 200 }, (_, place) => `folder/${place}.txt`);
  const parts = [1, 2, 3].map((index) => files.filter((file) => inShard(file, { index, of: 3 })));
  expect(parts.flat().sort()).toEqual([...files].sort());
  for (const part of parts) expect(part.length).toBeGreaterThan(40);
  for (const typed of ["0/3", "4/3", "1", "a/b", "1/0"]) expect(() => parseShard(typed)).toThrow("I/N");
});

test("sheets have harmless names, and two keys never share one, not even where capitals do not count", () => {
  const entry = (candidate: string, station: string, attempt = "1") => ({ key: { candidate, station, attempt }, file: `${candidate}/${station}` });
  const entries = [entry("Anna", "pen"), entry("anna", "pen"), entry("a-b", "c"), entry("a", "b-c"), entry("../../etc/x", "p\u0000n"), entry("Zoë", "pen")];
  const name = sheetNames(entries);
  const names = entries.map(name);
  expect(new Set(names.map((text) => text.toLowerCase())).size).toBe(entries.length);
  expect(names[5]).toBe("Zoë-pen-1");
  for (const text of names) expect(text).toMatch(/^[\p{L}\p{N}_][\p{L}\p{N}._-]*$/u);
});

test("a file whose candidate nobody names is of no station: it makes none that nobody sat", () => {
  const { entries } = list(["A_drops.txt", "A_drops_1_extra.txt"], { rubric: "eye-drops", onlyStation: "eye-drops" });
  expect(entries.map(({ key, errors }) => [key.station, errors.map(({ code }) => code)])).toEqual([["", ["SW-B02"]], ["drops", []]]);
});

test("a name written with its accents apart is the same name, and the file is read as the disk spells it", () => {
  const apart = "Zoe\u0308_drops_1.vtt";
  expect(list([apart], { rubric: "r" }).entries[0]).toMatchObject({ key: { candidate: "Zo\u00eb" }, file: apart });
  const plan = readPlan("file,candidate,accent\nZo\u00eb_drops_1.vtt,Zoe\u0308,Fla\u0308misch\n", "plan.csv");
  const { entries, unplanned } = list([apart], { plan, rubric: "r" });
  expect(entries).toMatchObject([{ key: { candidate: "Zo\u00eb" }, file: apart, columns: { accent: "Fl\u00e4misch" }, errors: [] }]);
  expect(unplanned).toEqual([]);
  expect(inShard(apart, { index: 1, of: 7 })).toBe(inShard("Zo\u00eb_drops_1.vtt", { index: 1, of: 7 }));
});

test("a line of the plan that names a rubric which is not there fails alone, with its number", () => {
  const plan = readPlan("file,candidate,station,rubric\nA.txt,A,drops,eye-drops\nB.txt,B,drops,no-such\n", "plan.csv");
  const refused = new Map([["no-such", { code: "SW-R01" as const, severity: "error" as const, file: "no-such", message: "there is no shipped rubric of this name" }]]);
  const { entries } = list(["A.txt", "B.txt"], { plan, refused });
  expect(entries.map(({ rubric, errors }) => [rubric, errors.map(({ code, file, message }) => `${code} ${file} ${message}`)])).toEqual([
    ["eye-drops", []],
    [null, ["SW-R01 B.txt line 3 of the plan names the rubric 'no-such': there is no shipped rubric of this name"]],
  ]);
});

test("one transcript marked for two candidates is told with both lines; two stretches of it are two", () => {
  const warned = (rows: string) => list(["A.txt"], { plan: readPlan(`file,candidate,station,from,to\n${rows}`, "plan.csv"), rubric: "r" }).warnings;
  expect(warned("A.txt,A,pen,,\nA.txt,B,pen,,\n")).toMatchObject([{ code: "SW-B14", file: "A.txt", message: "the plan has this transcript marked for 'A' (line 2) and 'B' (line 3), and all of them count" }]);
  expect(warned("A.txt,A,pen,,7:00\nA.txt,B,pen,7:00,\n")).toEqual([]);
});
