import { readFileSync, symlinkSync } from "node:fs";
import { join, resolve } from "node:path";
import { parse } from "csv-parse/sync";
import { beforeAll, expect, test } from "vitest";
import { built } from "./built.ts";

const saidwell = built();
const FIXTURES = resolve("fixtures");
const MARKS = join(FIXTURES, "cohort/marks.csv");
const read = (name: string) => readFileSync(join(saidwell.work, name), "utf8");

/* The invented rehearsals of the demo as a cohort of three candidates at four stations, and as one candidate's attempts. */
beforeAll(() => {
  const cohort = (plan: string, out: string) => saidwell.run(["cohort", join(FIXTURES, "rehearsals"), "--plan", join(FIXTURES, "cohort", plan), "--out", out, "--json"]);
  expect(cohort("plan.csv", "marked").code).toBe(0);
  expect(cohort("attempts.csv", "attempts").code).toBe(0);
  expect(saidwell.run(["mark", join(FIXTURES, "rehearsals/eye-drops-strong.txt"), "--rubric", "eye-drops", "--format", "json", "--out", "A01.json"]).code).toBe(0);
}, 120_000);

test("agree compares the tool with two readers and the readers with each other, in text and JSON", () => {
  const { code, out, err } = saidwell.run(["agree", MARKS, "marked"]);
  expect(err).toBe("");
  expect(code).toBe(0);
  for (const part of ["SAIDWELL AND READER-A", "READER-A AND READER-B", "Cohen's kappa", "ICC(2,1)", "limits of agreement", "DISAGREEMENTS TO LISTEN TO", "Listen at"]) expect(out).toContain(part);
  for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  const report = JSON.parse(saidwell.run(["agree", MARKS, "marked", "--format", "json"]).out) as { form: string; rehearsals: number; markers: string[]; overall: { pairs: { measures: { n: number } }[] } };
  expect(report).toMatchObject({ form: "saidwell/agreement@1", rehearsals: 12, markers: ["reader-a", "reader-b"] });
});

test("agree takes results.jsonl, a folder of sheets and one sheet as well", () => {
  const all = JSON.parse(saidwell.run(["agree", MARKS, "marked/results.jsonl", "--format", "json"]).out) as { rehearsals: number };
  expect(all.rehearsals).toBe(12);
  saidwell.write("one.csv", "candidate,marker,item,content\nA01,Kim,introduction,complete\n");
  expect(saidwell.run(["agree", "one.csv", "A01.json"]).out).toContain("1 rehearsal of 1 candidate");
});

test("marks of nobody known are told and nothing is printed; a fault has its line; no output overwrites what is read", () => {
  saidwell.write("nobody.csv", "candidate,marker,item,content\nZ99,Kim,introduction,complete\n");
  const nobody = saidwell.run(["agree", "nobody.csv", "marked"]);
  expect([nobody.code, nobody.out]).toEqual([8, ""]);
  expect(nobody.err).toMatch(/\[SW-A07\][\s\S]*no result is of the candidate 'Z99'.*\[SW-A06\]/);
  saidwell.write("faulty.csv", "candidate,marker,item,content\nA01,Kim,introduction,yes\n");
  expect(saidwell.run(["agree", "faulty.csv", "marked"]).err).toMatch(/^faulty\.csv:2: the content 'yes'.*\[SW-A04\]\n {2}Write complete/);
  expect(saidwell.run(["agree", "faulty.csv", "marked", "--out", "faulty.csv", "--force"]).err).toContain("SW-O01");
  expect(saidwell.run(["agree", MARKS, "nowhere"])).toMatchObject({ code: 8, err: expect.stringContaining("SW-A01") });
});

test("a broken line of the results is told and the rest is used", () => {
  saidwell.write("broken.jsonl", `${read("marked/results.jsonl")}{"form":"something else"}\n`);
  const { code, err, out } = saidwell.run(["items", "broken.jsonl"]);
  expect(code).toBe(0);
  expect(err).toMatch(/broken\.jsonl:13: .*\[SW-A02\]/);
  expect(out).toContain("12 rehearsals of 3 candidates");
});

test("items prints each station, the examination, and rates by a column with small groups flagged", () => {
  const { code, out } = saidwell.run(["items", "marked", "--by", "recogniser", "--marks", MARKS]);
  expect(code).toBe(0);
  for (const part of ["EYE-DROPS", "THE EXAMINATION AS A WHOLE", "index of dependability", "BY RECOGNISER", "SMALL GROUP", "error of measurement"]) expect(out).toContain(part);
  expect(out).not.toMatch(/NaN|undefined/);
  expect(saidwell.run(["items", "marked", "--by", "acent"]).err).toMatch(/no result has this column \[SW-A07\]\n {2}There are: recogniser/);
});

test("cutscore needs to know what borderline is, warns of a small cohort, and writes a picture", () => {
  expect(saidwell.run(["cutscore", "marked", "--ratings", MARKS])).toMatchObject({ code: 2, err: expect.stringContaining("SW-U07") });
  const { code, out } = saidwell.run(["cutscore", "marked", "--ratings", MARKS, "--borderline", "3", "--plot", "cut.svg"]);
  expect(code).toBe(0);
  expect(out).toMatch(/borderline regression\s+\d/);
  expect(out).toContain("Homer et al.");
  expect(read("cut.svg")).toMatch(/^<svg [^]*<\/svg>\n$/);
  expect(saidwell.run(["cutscore", "marked", "--ratings", MARKS, "--borderline", "3", "--plot", "cut.svg"])).toMatchObject({ code: 6 });
});

test("cutscore from tables alone", () => {
  saidwell.write("scores.csv", "candidate,score,rating\nA,40,1\nB,50,1\nC,50,2\nD,60,2\nE,60,3\nF,70,3\n");
  saidwell.write("judges.csv", "judge,item,percent\nKim,wash,50\nKim,dose,100\nLee,wash,70\nLee,dose,80\n");
  expect(saidwell.run(["cutscore", "scores.csv", "--borderline", "2"]).out).toContain("55%");
  expect(saidwell.run(["cutscore", "--angoff", "judges.csv"]).out).toContain("75%");
  expect(saidwell.run(["cutscore"])).toMatchObject({ code: 2 });
});

test("progress tells attempts of one scenario apart only beyond measurement error, and asks which candidate", () => {
  const { code, out } = saidwell.run(["progress", "attempts"]);
  expect(code).toBe(0);
  expect(out).toContain("Progress of P07: 4 attempts");
  const told = [...out.replace(/\s+/g, " ").matchAll(/([+-][\d.]+) points(?:\. Within measurement error \(up to ([\d.]+) points\): no change can be told|, (?:improved|lower) by more than measurement error \(more than ([\d.]+) points\))/g)].map(([, change, within, beyond]) => ({ change: Math.abs(Number(change)), within, beyond }));
  expect(told).toHaveLength(3);
  expect(told.some(({ within }) => within !== undefined)).toBe(true);
  for (const { change, within, beyond } of told) expect(within === undefined ? change > Number(beyond) : change <= Number(within)).toBe(true);
  expect(saidwell.run(["progress", "marked"])).toMatchObject({ code: 2, err: expect.stringContaining("A01, B02, C03") });
  expect(saidwell.run(["progress", "marked", "--candidate", "B02", "--cohort", "marked"]).out.replace(/\s+/g, " ")).toContain("--cohort is not used: the cohort has 3 candidates at eye-drops, and its error is not steady below 30");
  expect(saidwell.run(["progress", "marked", "--candidate", "B2"]).err).toContain("Did you mean 'B02'?");
});

test("a blank marking sheet, filled in, is read back by agree", () => {
  const blank = saidwell.run(["rubric", "sheet", "eye-drops", "--format", "csv", "--candidate", "A01", "--station", "eye-drops", "--marker", "Kim"]);
  expect(blank.code).toBe(0);
  const rows = parse(blank.out, { columns: true }) as Record<string, string>[];
  const sheet = JSON.parse(read("A01.json")) as { items: { id: string; elements: unknown[] }[] };
  expect(rows.filter(({ element, item }) => element === "" && !item!.includes(":")).map(({ item }) => item)).toEqual(sheet.items.map(({ id }) => id));
  const filled = rows.map((row) => ({ ...row, content: row["item"] === "overall:total" ? "" : row["item"]!.startsWith("unsafe:") ? "absent" : row["item"]!.includes(":") ? "3" : "complete" }));
  const columns = Object.keys(rows[0]!);
  const cell = (value: string) => `"${value.replaceAll('"', '""')}"`;
  saidwell.write("filled.csv", [columns.join(","), ...filled.map((row) => columns.map((name) => cell((row as Record<string, string>)[name]!)).join(","))].join("\r\n"));
  const { code, out, err } = saidwell.run(["agree", "filled.csv", "marked", "--format", "json"]);
  expect([code, err]).toEqual([0, ""]);
  expect(JSON.parse(out)).toMatchObject({ rehearsals: 1, markers: ["Kim"], blank: 1 });
});

test("the printed sheet has every item and no mark; evidence for rapport is words and times only", () => {
  const plain = saidwell.run(["rubric", "sheet", "eye-drops"]).out;
  expect(plain).toContain("Checks who the patient is by two identifiers CRITICAL");
  expect(plain).toContain("RATINGS, BY PEOPLE ONLY");
  const with_ = saidwell.run(["rubric", "sheet", "eye-drops", "--evidence", "A01.json"]).out;
  expect(saidwell.run(["rubric", "sheet", "insulin-pen", "--evidence", "A01.json"])).toMatchObject({ code: 2, out: "", err: expect.stringContaining("the mark sheet is of the rubric 'eye-drops', not of 'insulin-pen'") });
  expect(saidwell.run(["rubric", "sheet", "eye-drops", "--width", "60"]).out).toMatch(/\nCandidate _{20} {2}Attempt _{6}\nMarker _{20}\n/);
  expect(plain).toMatch(/cannot\s+tell,\s+not\s+offered/);
  expect(with_.startsWith(plain.slice(0, plain.indexOf("Notes:")).trimEnd())).toBe(true);
  const evidence = with_.slice(with_.indexOf("EVIDENCE FOR RAPPORT"));
  expect(evidence).toContain("patient's questions");
  expect(evidence).not.toMatch(/\b(complete|absent|partial)\b|% sure/);
});

test("every command of the README's section on trust runs as it stands there", () => {
  symlinkSync(FIXTURES, join(saidwell.work, "fixtures"));
  const section = /\n## How far to trust the marks\n([^]*?)\n## /.exec(readFileSync("README.md", "utf8"))![1]!;
  const commands = [...section.matchAll(/^npx (saidwell .*?)(?: +#.*)?$/gm)].map(([, command]) => command!);
  expect(commands.length).toBeGreaterThanOrEqual(8);
  for (const command of commands) expect(saidwell.bash(command), command).toMatchObject({ code: 0 });
}, 120_000);
