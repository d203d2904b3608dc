import { appendFileSync, cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { parse } from "csv-parse/sync";
import { asyncBufferFromFile, parquetReadObjects } from "hyparquet";
import { beforeEach, expect, test } from "vitest";
import type { CohortResult } from "../../src/cohort/result.ts";
import { built } from "./built.ts";
import { REHEARSAL } from "./rehearsal.ts";

/* The real bundle with its real workers. All rehearsals are invented. */
const saidwell = built();

const at = (...path: string[]) => join(saidwell.work, ...path);
const text = (...path: string[]) => readFileSync(at(...path), "utf8");

function put(path: string, content: string): void {
  mkdirSync(dirname(at(path)), { recursive: true });
  writeFileSync(at(path), content);
}

/** Every file of a folder with its bytes. */
function contents(folder: string): Record<string, string> {
  const files = readdirSync(at(folder), { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return Object.fromEntries(files.map((entry) => join(entry.parentPath, entry.name)).sort().map((path) => [path.slice(at(folder).length + 1), readFileSync(path, "base64")]));
}

const results = (folder: string) => text(folder, "results.jsonl").trimEnd().split("\n").map((line) => JSON.parse(line) as CohortResult);
const cohort = (out: string, ...more: string[]) => saidwell.run(["cohort", "in", "--rubric", "eye-drops", "--out", out, ...more]);
const SRT = "1\n00:00:01,000 --> 00:00:05,000\nHello, my name is Ana and I'm the pharmacist today.\n\n2\n00:00:06,000 --> 00:00:09,000\nThrow the bottle away four weeks after you open it.\n";

beforeEach(() => {
  for (const name of readdirSync(saidwell.work)) rmSync(at(name), { recursive: true, force: true });
  for (const [place, name] of ["A1_drops_1.txt", "A2_drops_1.txt", "A10_drops_1.txt", "sub/A3_drops_1.txt", "A1_drops_2.txt"].entries()) put(`in/${name}`, REHEARSAL.replace("Ana", ["Ana", "Ben", "Cleo", "Dan", "Eve"][place]!));
  put("in/A4_drops_1.srt", SRT);
});

test("a folder gives results, a gradebook, sheets, tables and a summary, sorted", () => {
  const { code, out, err } = cohort("out");
  expect([code, err]).toEqual([0, expect.stringContaining("marked 6, kept 0, failed 0")]);
  expect(out).toContain("6 rehearsals of 5 candidates at 1 station: 6 marked");
  expect(readdirSync(at("out")).sort()).toEqual(["cohort.json", "gradebook.csv", "items.parquet", "results.jsonl", "results.parquet", "sheets", "summary.json", "summary.md", "summary.txt"]);
  expect(results("out").map(({ key }) => `${key.candidate} ${key.attempt}`)).toEqual(["A1 1", "A1 2", "A2 1", "A3 1", "A4 1", "A10 1"]);
  expect(readdirSync(at("out/sheets")).sort()).toEqual(["A1-drops-1.txt", "A1-drops-2.txt", "A10-drops-1.txt", "A2-drops-1.txt", "A3-drops-1.txt", "A4-drops-1.txt"]);
  expect(text("out/summary.txt")).toBe(out);
});

test("a sheet of a cohort is the sheet that 'saidwell mark' prints", () => {
  cohort("out", "--json");
  const alone = saidwell.bash("cd in && saidwell mark sub/A3_drops_1.txt --rubric eye-drops").out;
  // The name in the sheet is the path below the cohort's folder.
  expect(text("out/sheets/A3-drops-1.txt")).toBe(alone);
  const json = saidwell.bash("cd in && saidwell mark sub/A3_drops_1.txt --rubric eye-drops --format json").out;
  expect(text("out/sheets/A3-drops-1.json")).toBe(json);
  expect(results("out")[3]!.sheet).toEqual(JSON.parse(json));
});

test("what people overruled is laid over each rehearsal, counts in every table, and marks only that one anew", () => {
  cohort("out");
  const [before] = results("out");
  const corrections = (name: string, entry: string, hash = before!.sheet!.rubric.hash.slice(0, 12)) =>
    `saidwell: corrections@1\ntranscript: ${name}\nrubric: { id: eye-drops, hash: "${hash}" }\ncorrections:\n  - { ${entry}, by: Kim, when: 2026-11-26, why: I heard it }\n`;
  put("mine/a1.yaml", corrections("A1_drops_1.txt", "unsafe: share-bottle, content: said, at: line 8"));
  put("mine/own-rubric.yaml", "saidwell: rubric@1\n");
  const first = cohort("out", "--corrections", "mine");
  expect(first.err).toContain("marked 1, kept 5, failed 0");
  expect(first.out).toMatch(/overruled\s+1 mark by hand, in 1 rehearsal/);
  expect(results("out")[0]!.sheet).toMatchObject({ unsafe: { found: [{ id: "share-bottle", overruled: { by: "Kim" } }] }, corrections: { file: "a1.yaml" } });
  expect((parse(text("out/gradebook.csv"), { columns: true }) as Record<string, string>[]).map(({ unsafe_found, overruled }) => [unsafe_found, overruled]).slice(0, 2)).toEqual([["share-bottle", "1"], ["", "0"]]);
  // From elsewhere and in parts: the same bytes.
  for (const part of ["1/2", "2/2"]) saidwell.run(["cohort", at("in"), "--rubric", "eye-drops", "--corrections", at("mine"), "--shard", part, "--out", `part-${part[0]!}`]);
  saidwell.run(["merge", "part-1", "part-2", "--out", "merged"]);
  expect(contents("merged")).toEqual(contents("out"));
  cohort("part-2", "--shard", "2/2");
  expect(saidwell.run(["merge", "part-1", "part-2", "--out", "other"]).err).toContain("were not marked alike: other corrections");
  // Of a rubric that has changed since: that rehearsal is not marked, and the summary says which file and line.
  put("mine/a2.yaml", corrections("A2_drops_1.txt", "item: allergies, content: complete", "0".repeat(12)));
  const stale = cohort("out", "--corrections", "mine");
  expect([stale.code, stale.out]).toEqual([7, expect.stringMatching(/A2_drops_1\.txt\n {4}a2\.yaml, line 3: the rubric's content is not/)]);
  // Of nobody here: nothing is marked.
  put("mine/a2.yaml", corrections("A77_drops_1.txt", "item: allergies, content: complete"));
  expect(cohort("new", "--corrections", "mine")).toMatchObject({ code: 9, err: expect.stringContaining("mine/a2.yaml:2: no transcript of the cohort is called 'A77_drops_1.txt' [SW-M04]") });
  put("mine/a2.yaml", corrections("A2_drops_1.txt", "item: allergies, content: fine"));
  expect(cohort("new", "--corrections", "mine")).toMatchObject({ code: 9, err: expect.stringContaining("mine/a2.yaml:5:") });
  expect(cohort("new", "--corrections", "in")).toMatchObject({ code: 9, err: expect.stringContaining("there is no corrections file in this folder") });
});

test("one worker and two, and shards merged in any order, give the same bytes", () => {
  put("in/broken_drops_1.json", "{");
  cohort("one", "--workers", "1", "--json");
  cohort("two", "--workers", "2", "--json");
  expect(contents("two")).toEqual(contents("one"));
  for (const part of ["1", "2", "3"]) cohort(`part-${part}`, "--shard", `${part}/3`, "--json");
  const { code } = saidwell.run(["merge", "part-3", "part-1", "part-2", "--out", "merged", "--json"]);
  expect(code).toBe(7);
  expect(contents("merged")).toEqual(contents("one"));
});

test("parts that do not make a whole are not merged", () => {
  cohort("part-1", "--shard", "1/3");
  cohort("part-2", "--shard", "2/3");
  cohort("half-1", "--shard", "1/2");
  const missing = saidwell.run(["merge", "part-1", "part-2", "--out", "m"]);
  expect([missing.code, missing.err]).toEqual([8, expect.stringMatching(/parts are missing: 3\/3 \[SW-B11\]/)]);
  expect(saidwell.run(["merge", "part-1", "half-1", "--out", "m"]).err).toContain("different divisions");
  expect(saidwell.run(["merge", "in", "--out", "m"]).err).toContain("was not made by 'saidwell cohort'");
  writeFileSync(at("part-2/journal.jsonl"), "");
  expect(saidwell.run(["merge", "part-2", "--out", "m"]).err).toContain("has not ended");
  expect(existsSync(at("m"))).toBe(false);
});

test("parts that were not marked alike are not merged: no one run could have given them", () => {
  put("in/A5_pen_1.txt", REHEARSAL);
  put("own.yaml", rubric(1));
  const part = (of: string, name: string, ...more: string[]) => saidwell.run(["cohort", "in", "--rubric", name, "--out", `p${of}`, "--shard", `${of}/2`, ...more]).code;
  const merge = () => saidwell.run(["merge", "p1", "p2", "--out", "m"]);
  expect([part("1", "eye-drops"), part("2", "insulin-pen")]).toEqual([0, 0]);
  expect(merge()).toMatchObject({ code: 8, err: expect.stringMatching(/p1 and p2 were not marked alike: rubrics eye-drops version \d+ \(\w{8}\) and insulin-pen version \d+ .* \[SW-B11\]/) });
  part("2", "eye-drops", "--limit", "300", "--target", "200");
  expect(merge().err).toContain("limit the rubric's and 300 s");
  // The rubric edited between the two.
  part("1", "own.yaml");
  put("own.yaml", rubric(2));
  part("2", "own.yaml");
  expect(merge().err).toMatch(/version 1 \(\w+\) and \S+ version 2/);
  part("1", "own.yaml");
  expect(merge().code).toBe(0);
});

test("folders of different stations are merged though each has its own rubric", () => {
  put("pens/A1_pen.txt", REHEARSAL);
  cohort("drops");
  saidwell.run(["cohort", "pens", "--rubric", "insulin-pen", "--out", "pen"]);
  expect(saidwell.run(["merge", "drops", "pen", "--out", "m"])).toMatchObject({ code: 0, out: expect.stringContaining("7 rehearsals of 5 candidates at 2 stations") });
});

test("a plan's slip in one rubric is of that line alone; of a station's rubric it is told with the line, before anything is marked", () => {
  put("plan.csv", "file,candidate,station,rubric\nA1_drops_1.txt,A,drops,eye-drops\nA2_drops_1.txt,B,drops,no-such\n");
  const { code, err } = saidwell.run(["cohort", "in", "--plan", "plan.csv", "--out", "out"]);
  expect([code, err]).toEqual([7, expect.stringContaining("marked 1, kept 0, failed 1")]);
  expect(results("out")[1]!.sheet === null && results("out")[1]).toMatchObject({ errors: [{ code: "SW-R01", file: "A2_drops_1.txt", message: expect.stringContaining("line 3 of the plan names the rubric 'no-such'") }] });
  put("map.csv", "station,rubric\ndrops,no-such\n");
  expect(saidwell.run(["cohort", "in", "--plan", "map.csv", "--out", "out2"])).toMatchObject({ code: 4, err: expect.stringMatching(/^map\.csv:2: the rubric 'no-such' cannot be had: there is no shipped rubric/) });
  expect(existsSync(at("out2"))).toBe(false);
});

test("a file name with accents apart meets a plan and marks that have them in one piece", () => {
  put("nf/Zoe\u0308_drops_1.txt", REHEARSAL);
  put("plan.csv", "file,candidate,station,rubric\nZo\u00eb_drops_1.txt,Zo\u00eb,drops,eye-drops\n");
  put("marks.csv", "candidate,marker,item,content\nZo\u00eb,Kim,introduction,complete\n");
  expect(saidwell.run(["cohort", "nf", "--plan", "plan.csv", "--out", "out"]).code).toBe(0);
  saidwell.run(["cohort", "nf", "--rubric", "eye-drops", "--out", "named"]);
  for (const folder of ["out", "named"]) expect(saidwell.run(["agree", "marks.csv", folder])).toMatchObject({ code: 0, err: "" });
});

test("a link that leads back makes no twins, and a link to nothing is listed as a transcript that cannot be read", () => {
  symlinkSync(".", at("in/loop"));
  symlinkSync("gone.txt", at("in/A7_drops_1.txt"));
  const { code, err } = cohort("out");
  expect([code, err]).toEqual([7, expect.stringMatching(/links to folders that are in the cohort already are passed over: loop \[SW-B03\][^]*marked 6, kept 0, failed 1/)]);
  expect(results("out").filter(({ sheet }) => sheet === null)).toMatchObject([{ file: "A7_drops_1.txt", errors: [{ code: "SW-T01", mend: "Make the file readable, or take it out of the folder." }] }]);
});

test("a broken file is listed with code, line and reason, and stops no other", () => {
  put("in/B1_drops_1.json", '{"saidwell": "transcript@1",\n  "segments": [{"text": }]}');
  put("in/B2_drops_1.txt", "");
  put("in/B3_drops_1_extra.txt", REHEARSAL);
  const { code, out, err } = cohort("out");
  expect(code).toBe(7);
  expect(err).toContain("3 of 9 files could not be marked [SW-B13]");
  const failed = results("out").flatMap((result) => (result.sheet === null ? result.errors.map(({ code: name, file, line }) => [name, file, line]) : []));
  expect(failed).toEqual([
    ["SW-B02", "B3_drops_1_extra.txt", undefined],
    ["SW-T05", "B1_drops_1.json", 2],
    ["SW-T02", "B2_drops_1.txt", undefined],
  ]);
  expect(out).toMatch(/B1_drops_1\.json\n\s+line 2: .*\[SW-T05\]/);
  expect(text("out/summary.md")).toContain("| SW-T02 |");
  const rows = parse(text("out/gradebook.csv"), { columns: true }) as Record<string, string>[];
  expect(rows.filter(({ error }) => error !== "").map(({ error, file }) => [error, file])).toEqual(failed.map(([name, file]) => [name, file]));
});

/** What a run that was killed leaves: some results in the journal, the last one perhaps torn. */
function killed(from: string, to: string, keep: number, torn: string): void {
  cpSync(at(from), at(to), { recursive: true });
  const lines = text(from, "results.jsonl").split("\n");
  writeFileSync(at(to, "journal.jsonl"), `${lines.slice(0, keep).map((line) => `${line}\n`).join("")}${torn}`);
  for (const name of ["results.jsonl", "gradebook.csv", "results.parquet", "items.parquet", "summary.txt", "summary.md", "summary.json"]) rmSync(at(to, name));
  for (const name of readdirSync(at(to, "sheets")).slice(keep)) rmSync(at(to, "sheets", name));
  writeFileSync(at(to, "cohort.json"), text(to, "cohort.json").replace('"complete": true', '"complete": false'));
}

test("a killed run goes on: what is whole is kept, a torn last line is done anew, nothing twice", () => {
  cohort("whole");
  killed("whole", "out", 3, text("whole/results.jsonl").split("\n")[3]!.slice(0, 5000));
  // The temporary file of an atomic write, cut off in the middle of it.
  writeFileSync(at("out/sheets/A9-drops-1.txt.1234567890"), "half");
  const { code, err } = cohort("out");
  expect(code).toBe(0);
  expect(err).toContain("1 line cannot be read");
  expect(err).toContain("[SW-B08]");
  expect(err).toContain("marked 3, kept 3, failed 0");
  expect(contents("out")).toEqual(contents("whole"));
});

test("a line in the middle that lost its bytes is done anew as well", () => {
  cohort("whole");
  killed("whole", "out", 4, "");
  const lines = text("out/journal.jsonl").split("\n");
  lines[1] = "\u0000".repeat(lines[1]!.length);
  writeFileSync(at("out/journal.jsonl"), lines.join("\n"));
  expect(cohort("out").err).toContain("marked 3, kept 3, failed 0");
  expect(contents("out")).toEqual(contents("whole"));
});

test("a run that is killed for real, at any moment, ends like one that was not", () => {
  for (let place = 0; place < 30; place += 1) put(`in/K${place}_drops_1.txt`, REHEARSAL);
  cohort("whole");
  for (const seconds of ["0.5", "0.9", "1.3"]) saidwell.bash(`timeout -s KILL ${seconds} saidwell cohort in --rubric eye-drops --out out --workers 2`);
  const before = existsSync(at("out/journal.jsonl")) ? text("out/journal.jsonl").split("\n").length - 1 : 0;
  const { err } = cohort("out");
  const [, marked, kept] = /marked (\d+), kept (\d+)/.exec(err)!;
  if (before > 0) expect(Number(kept)).toBe(before);
  expect(Number(marked) + Number(kept)).toBe(36);
  expect(contents("out")).toEqual(contents("whole"));
}, 60_000);

test("a second run marks nothing; a changed transcript, option or rubric is marked anew and only that", () => {
  put("in/own.yaml", rubric(1));
  const run = (...more: string[]) => saidwell.run(["cohort", "in", "--rubric", "in/own.yaml", "--out", "out", ...more]).err;
  expect(run()).toContain("marked 6, kept 0");
  expect(run()).toContain("marked 0, kept 6");
  put("in/A2_drops_1.txt", REHEARSAL.replace("four weeks", "six weeks"));
  expect(run()).toContain("marked 1, kept 5");
  expect(run("--limit", "5:00", "--target", "4:00")).toContain("marked 6, kept 0");
  expect(run()).toContain("marked 6, kept 0");
  put("in/own.yaml", rubric(2));
  expect(run()).toContain("marked 6, kept 0");
  expect(new Set(results("out").map(({ sheet }) => sheet?.rubric.version))).toEqual(new Set([2]));
});

test("a changed program marks anew, whatever its version is called", () => {
  cohort("out");
  const path = at("out/results.jsonl");
  writeFileSync(path, readFileSync(path, "utf8").replace(/"program":"[0-9a-f]{64}"/, `"program":"${"0".repeat(64)}"`));
  expect(cohort("out").err).toContain("marked 1, kept 5");
});

test("transcripts that the plan does not name stand in the summary, and in that of merged parts: the same bytes", () => {
  put("plan.csv", "file,rubric\nA1_drops_1.txt,eye-drops\nA2_drops_1.txt,eye-drops\nA10_drops_1.txt,eye-drops\n");
  const run = (out: string, ...more: string[]) => saidwell.run(["cohort", "in", "--plan", "plan.csv", "--out", out, ...more]);
  expect(run("out").out).toMatch(/3\stranscripts not named by the plan[^]*NOT NAMED BY THE PLAN [^\n]*\n {2}A1_drops_2\.txt\n {2}A4_drops_1\.srt\n {2}sub\/A3_drops_1\.txt\n/);
  run("part-1", "--shard", "1/2");
  run("part-2", "--shard", "2/2");
  saidwell.run(["merge", "part-1", "part-2", "--out", "merged"]);
  expect(contents("merged")).toEqual(contents("out"));
});

test("a plan's columns reach every output, and a change to them marks nothing anew", () => {
  put("plan.csv", "file,candidate,station,attempt,rubric,accent\nA1_drops_1.txt,Zed,eye,3,eye-drops,Scots\nA2_drops_1.txt,,,,eye-drops,Welsh\nmissing.txt,M,eye,1,eye-drops,none\n");
  const run = () => saidwell.run(["cohort", "in", "--plan", "plan.csv", "--out", "out"]);
  const first = run();
  expect(first.code).toBe(7);
  expect(first.err).toContain("4 transcripts not named by the plan are passed over");
  expect(results("out").map(({ key, columns, sheet }) => [key.candidate, key.station, key.attempt, columns["accent"], sheet !== null])).toEqual([
    ["A2", "drops", "1", "Welsh", true],
    ["M", "eye", "1", "none", false],
    ["Zed", "eye", "3", "Scots", true],
  ]);
  put("plan.csv", text("plan.csv").replace("Welsh", "Irish"));
  expect(run().err).toContain("marked 0, kept 2, failed 1");
  expect((parse(text("out/gradebook.csv"), { columns: true }) as Record<string, string>[]).map(({ accent }) => accent)).toEqual(["Irish", "none", "Scots"]);
});

test("what a spreadsheet would run as a formula is text in the gradebook (OWASP, CSV Injection)", () => {
  const nasty = ["=1+1", "+1", "-1", "@SUM(A1)", "\tx", "=cmd|' /C calc'!A0"];
  put("plan.csv", `file,candidate,note\n${nasty.map((cell, place) => `${["A1_drops_1", "A1_drops_2", "A2_drops_1", "A10_drops_1", "sub/A3_drops_1"][place] ?? "A4_drops_1"}.${place === 5 ? "srt" : "txt"},c${place},"${cell}"`).join("\n")}\n`);
  saidwell.run(["cohort", "in", "--plan", "plan.csv", "--rubric", "eye-drops", "--out", "out"]);
  const rows = parse(text("out/gradebook.csv"), { columns: true }) as Record<string, string>[];
  // A tab in front is white space of the plan's cell and is taken off when the plan is read.
  expect(rows.map(({ note }) => note)).toEqual(nasty.map((cell) => (cell === "\tx" ? "x" : `'${cell}`)));
  // A negative figure is a number and stays one.
  expect(rows.some(({ over_limit }) => Number(over_limit) < 0)).toBe(true);
});

test("the gradebook drives no terminal, and a file whose name is no UTF-8 is told what to do about", () => {
  put("plan.csv", "file,candidate\nA1_drops_1.txt,A\u001b[31m1\u202e\n");
  saidwell.run(["cohort", "in", "--plan", "plan.csv", "--rubric", "eye-drops", "--out", "out"]);
  expect(text("out/gradebook.csv")).not.toMatch(/[\u001b\u202e]/);
  expect(results("out")[0]!.key.candidate).toBe("A\u001b[31m1\u202e");
  saidwell.bash("mkdir odd && cp in/A1_drops_1.txt \"$(printf 'odd/B\\377_drops.txt')\"");
  saidwell.run(["cohort", "odd", "--rubric", "eye-drops", "--out", "odd-out"]);
  expect(results("odd-out")).toMatchObject([{ sheet: null, errors: [{ code: "SW-T01", mend: "Its name is not written in UTF-8: rename the file." }] }]);
});

test("the Parquet files hold what the gradebook and the sheets hold, read by a second library", async () => {
  put("in/broken_drops_1.json", "{");
  cohort("out");
  const rows = await parquetReadObjects({ file: await asyncBufferFromFile(at("out/results.parquet")) });
  const book = parse(text("out/gradebook.csv"), { columns: true }) as Record<string, string>[];
  expect(rows.map((row) => Object.keys(row))).toEqual(book.map((row) => Object.keys(row)));
  const shown = (cell: unknown) => (cell === null || cell === undefined ? "" : typeof cell === "boolean" ? (cell ? "yes" : "no") : String(cell));
  expect(rows.map((row) => Object.values(row).map(shown))).toEqual(book.map((row) => Object.values(row)));
  const items = await parquetReadObjects({ file: await asyncBufferFromFile(at("out/items.parquet")) });
  const expected = results("out").flatMap(({ key, sheet }) => sheet?.items.map(({ id, content, earned, met }) => ({ candidate: key.candidate, item: id, content, earned, met })) ?? []);
  expect(items.map(({ candidate, item, content, earned, met }) => ({ candidate, item, content, earned, met }))).toEqual(expected);
});

test("a folder that is not ours is never written to", () => {
  put("mine/thesis.txt", "years of work");
  const { code, err } = cohort("mine");
  expect([code, err]).toEqual([6, expect.stringContaining("[SW-B07]")]);
  expect(contents("mine")).toEqual({ "thesis.txt": Buffer.from("years of work").toString("base64") });
  cohort("out");
  put("other/X1.txt", REHEARSAL);
  const before = contents("out");
  expect(saidwell.run(["cohort", "other", "--rubric", "eye-drops", "--out", "out"]).err).toContain("results of other transcripts");
  expect(cohort("out", "--shard", "1/2").err).toContain("not of part 1/2");
  expect(contents("out")).toEqual(before);
});

test("a run killed before it had written anything is not in the way", () => {
  put("out/cohort.json.12345", "{");
  put("out/.lock", `999999999 ${saidwell.bash("hostname").out.trim()}\n`);
  expect(cohort("out").code).toBe(0);
});

test("a result whose transcript is gone leaves with a warning, and its sheet is put aside", () => {
  cohort("out");
  rmSync(at("in/A4_drops_1.srt"));
  const { err } = cohort("out");
  expect(err).toMatch(/1 earlier result left out: .*A4_drops_1\.srt.*\[SW-B09\]/);
  expect(results("out")).toHaveLength(5);
  expect(readdirSync(at("out/sheets-left-over"))).toEqual(["A4-drops-1.txt"]);
});

test("a sheet that was deleted or emptied comes back without marking anew", () => {
  cohort("out");
  const before = contents("out");
  rmSync(at("out/sheets/A1-drops-1.txt"));
  truncateSync(at("out/sheets/A2-drops-1.txt"));
  expect(cohort("out").err).toContain("marked 0, kept 6");
  expect(contents("out")).toEqual(before);
});

test("two runs at once are refused; the lock of a dead one is not in the way", () => {
  cohort("out");
  appendFileSync(at("out/.lock"), `${process.pid} ${saidwell.bash("hostname").out.trim()}\n`);
  expect(cohort("out").err).toMatch(/another run .* is writing to this folder \[SW-B10\]/);
  writeFileSync(at("out/.lock"), `999999999 ${saidwell.bash("hostname").out.trim()}\n`);
  expect(cohort("out").code).toBe(0);
  expect(existsSync(at("out/.lock"))).toBe(false);
});

test("results inside the folder are no transcripts", () => {
  saidwell.run(["cohort", "in", "--rubric", "eye-drops", "--out", "in/marked"]);
  const again = saidwell.run(["cohort", "in", "--rubric", "eye-drops", "--out", "in/again"]);
  expect(again.err).toContain("marked 6, kept 0");
});

test("Ctrl-C lets the files in work be finished and says how to go on", () => {
  for (let place = 0; place < 60; place += 1) put(`in/K${place}_drops_1.txt`, REHEARSAL);
  const { code, err } = saidwell.bash("saidwell cohort in --rubric eye-drops --out out --workers 1 & until [ -s out/journal.jsonl ]; do sleep 0.05; done; kill -INT $!; wait $!; echo $? >&2");
  expect(err).toMatch(/stopped with \d+ of 66 done\. The same command goes on from here\.\n130\n$/);
  expect(code).toBe(0);
  const done = Number(/stopped with (\d+)/.exec(err)![1]);
  expect(statSync(at("out/journal.jsonl")).size > 0).toBe(done > 0);
  expect(cohort("out").err).toContain(`kept ${done},`);
}, 60_000);

test("what is wrong with the command line is said before anything is written", () => {
  expect(saidwell.run(["cohort", "in", "--out", "out"]).err).toContain("[SW-U02]");
  expect(saidwell.run(["cohort", "nowhere", "--rubric", "eye-drops", "--out", "out"]).err).toContain("[SW-B12]");
  expect(saidwell.run(["cohort", "in", "--rubric", "a=eye-drops", "--rubric", "a=insulin-pen", "--out", "out"]).err).toContain("[SW-U03]");
  expect(saidwell.run(["cohort", "in", "--rubric", "eye-drops", "--names", "{station}", "--out", "out"]).err).toContain("[SW-U01]");
  expect(saidwell.run(["cohort", "in", "--rubric", "eye-drops", "--workers", "0", "--out", "out"]).code).toBe(2);
  expect(saidwell.run(["cohort", "in", "--rubric", "eye-drops"]).code).toBe(2);
  expect(existsSync(at("out"))).toBe(false);
});

function rubric(version: number): string {
  return readFileSync("tests/consumer/own.yaml", "utf8").replace(/^version: \d+$/m, `version: ${version}`);
}
