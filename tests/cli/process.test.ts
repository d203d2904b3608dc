import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { ENTRIES } from "../../src/cli/exit-codes.ts";
import { built } from "./built.ts";
import { REHEARSAL } from "./rehearsal.ts";

const saidwell = built();
const MARK = ["mark", "rehearsal.txt", "--rubric", "eye-drops"];
beforeAll(() => void saidwell.write("rehearsal.txt", REHEARSAL));

test("a rehearsal is marked and its sheet printed without colour into a pipe", () => {
  const { code, out, err } = saidwell.run(MARK);
  expect(err).toBe("");
  expect(code).toBe(0);
  expect(out).toMatch(/^Mark sheet: /);
  expect(out).toContain("rehearsal.txt");
   
  expect(out).not.toMatch(/\u001b/);
  for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
});

test("standard input, a file and a process substitution give the same sheet but for the name", () => {
  const named = JSON.parse(saidwell.run([...MARK, "--format", "json"]).out) as { transcript: { file: string } };
  const piped = JSON.parse(saidwell.run(["mark", "-", "--rubric", "eye-drops", "--format", "json"], { input: REHEARSAL }).out) as typeof named;
  expect(piped.transcript.file).toBe("<stdin>");
  const same = (sheet: typeof named) => JSON.stringify(sheet).replaceAll(sheet.transcript.file, "FILE");
  expect(same(piped)).toBe(same(named));
  const substituted = saidwell.bash("saidwell mark <(cat rehearsal.txt) --rubric eye-drops --format json");
  expect(substituted.code).toBe(0);
});

test("FORCE_COLOR colours a pipe, NO_COLOR wins over it, and the words are the same", () => {
  const plain = saidwell.run(MARK).out;
  const coloured = saidwell.run(MARK, { env: { FORCE_COLOR: "1" } }).out;
  expect(coloured).not.toBe(plain);
   
  expect(coloured.replace(/\u001b\[[0-9;]*m/g, "")).toBe(plain);
  expect(saidwell.run(MARK, { env: { FORCE_COLOR: "1", NO_COLOR: "1" } }).out).toBe(plain);
});

test("help is coloured by the same rules", () => {
   
  expect(saidwell.run(["--help"], { env: { FORCE_COLOR: "1" } }).out).toMatch(/\u001b\[1m/);
   
  expect(saidwell.run(["--help"], { env: { FORCE_COLOR: "1", NO_COLOR: "1" } }).out).not.toMatch(/\u001b/);
});

test("a locale that is not UTF-8 gets ASCII, a file is always UTF-8", () => {
  expect(saidwell.run(MARK, { env: { LC_ALL: "C" } }).out).toMatch(/^[\n -~]*$/);
  saidwell.run([...MARK, "--out", "utf8.txt"], { env: { LC_ALL: "C" } });
  expect(readFileSync(join(saidwell.work, "utf8.txt"), "utf8")).toContain("─");
});

test("COLUMNS and --width set the width", () => {
  const longest = (out: string) => Math.max(...out.split("\n").map((line) => line.length));
  expect(longest(saidwell.run(MARK, { env: { COLUMNS: "60" } }).out)).toBe(60);
  expect(longest(saidwell.run([...MARK, "--width", "100"], { env: { COLUMNS: "60" } }).out)).toBe(100);
});

test("a reader that goes away is no error", () => {
  const { out, err, code } = saidwell.bash("saidwell mark rehearsal.txt --rubric eye-drops | head -1; exit ${PIPESTATUS[0]}");
  expect(err).toBe("");
  expect(out).toMatch(/^Mark sheet/);
  expect(code).toBe(0);
  const required = saidwell.bash("saidwell mark rehearsal.txt --rubric eye-drops --require coverage=100 2>/dev/null | true; exit ${PIPESTATUS[0]}");
  expect(required.code).toBe(1);
});

test("a full disk is an error", () => {
  const { code, err } = saidwell.bash("saidwell mark rehearsal.txt --rubric eye-drops > /dev/full");
  expect(err).toContain("the disk is full [SW-O02]");
  expect(code).toBe(6);
});

test("requirements decide between exit 0 and 1, and say why on standard error while the sheet is printed", () => {
  const met = saidwell.run([...MARK, "--require", "coverage=1,within-limit"]);
  expect([met.code, met.err]).toEqual([0, ""]);
  const unmet = saidwell.run([...MARK, "--require", "coverage=99", "--require", "pass,within-limit"]);
  expect(unmet.code).toBe(1);
  expect(unmet.out).toBe(met.out);
  expect(unmet.err.trimEnd().split("\n")).toHaveLength(2);
  expect(unmet.err).toMatch(/^rehearsal\.txt: required, but does not hold: coverage=99: the coverage is [\d.]+% \[SW-U06\]$/m);
});

test("a requirement of time on a transcript without times is not met", () => {
  saidwell.write("untimed.txt", REHEARSAL.replaceAll(/\[\d:\d\d\] /g, ""));
  const { code, err } = saidwell.run(["mark", "untimed.txt", "--rubric", "eye-drops", "--require", "within-limit"]);
  expect(code).toBe(1);
  expect(err).toMatch(/within-limit: not measurable: /);
});

test("--limit and --target take the place of the rubric's, in any way of writing", () => {
  const { time } = JSON.parse(saidwell.run([...MARK, "--format", "json", "--limit", "5 min", "--target", "4:30"]).out) as { time: { limit: number; target: number } };
  expect([time.limit, time.target]).toEqual([300, 270]);
});

test("--out writes the very text, refuses to overwrite, and with --force replaces it whole", () => {
  expect(saidwell.run([...MARK, "--format", "json", "--out", "sheet.json"])).toEqual({ code: 0, out: "", err: "" });
  expect(saidwell.run([...MARK, "--format", "json"]).out).toBe(readFileSync(join(saidwell.work, "sheet.json"), "utf8"));
  const refused = saidwell.run([...MARK, "--out", "sheet.json"]);
  expect(refused.code).toBe(6);
  expect(refused.err).toBe("sheet.json: the file exists already [SW-O01]\n  Name another file, or add --force to replace it.\n");
  expect(readFileSync(join(saidwell.work, "sheet.json"), "utf8")).toMatch(/^\{/);
  expect(saidwell.run([...MARK, "--out", "sheet.json", "--force"]).code).toBe(0);
  expect(readFileSync(join(saidwell.work, "sheet.json"), "utf8")).toMatch(/^Mark sheet/);
  expect(readdirSync(saidwell.work).filter((name) => name.endsWith(".tmp"))).toEqual([]);
});

test("--out keeps the permissions of a file it replaces and writes through a link", () => {
  const target = saidwell.write("kept.txt", "old");
  chmodSync(target, 0o640);
  symlinkSync("kept.txt", join(saidwell.work, "link.txt"));
  expect(saidwell.run([...MARK, "--out", "link.txt", "--force"]).code).toBe(0);
  expect(statSync(target).mode & 0o777).toBe(0o640);
  expect(readFileSync(target, "utf8")).toMatch(/^Mark sheet/);
});

test("--out never overwrites what the command reads, even by force or under another name", () => {
  symlinkSync("rehearsal.txt", join(saidwell.work, "alias.txt"));
  for (const out of ["rehearsal.txt", "alias.txt"]) {
    const { code, err } = saidwell.run(["label", "rehearsal.txt", "--out", out, "--force"]);
    expect([code, err]).toEqual([6, expect.stringContaining("[SW-O01]")]);
  }
  expect(readFileSync(join(saidwell.work, "rehearsal.txt"), "utf8")).toBe(REHEARSAL);
});

test("--out to a device writes to it and leaves it a device", () => {
  expect(saidwell.run([...MARK, "--out", "/dev/null", "--force"])).toEqual({ code: 0, out: "", err: "" });
  expect(statSync("/dev/null").isCharacterDevice()).toBe(true);
});

test("a folder, or a file in no folder, cannot be written", () => {
  mkdirSync(join(saidwell.work, "folder"));
  expect(saidwell.run([...MARK, "--out", "folder"]).err).toContain("it is a folder [SW-O02]");
  expect(saidwell.run([...MARK, "--out", "nowhere/sheet.txt"]).err).toContain("its folder does not exist [SW-O02]");
  expect(existsSync(join(saidwell.work, "nowhere"))).toBe(false);
});

test.each([
  ["no command", [], 2, "Usage: saidwell"],
  ["a file where the command should stand", ["rehearsal.txt", "--rubric", "eye-drops"], 2, "Did you mean 'saidwell mark rehearsal.txt'?"],
  ["an unknown command", ["makr", "rehearsal.txt"], 2, "Did you mean mark?"],
  ["an unknown option", [...MARK, "--formt", "json"], 2, "Did you mean --format?"],
  ["a wrong choice", [...MARK, "--format", "xml"], 2, "Allowed choices are text, json"],
  ["no transcript", ["mark", "--rubric", "eye-drops"], 2, "missing required argument 'transcript'"],
  ["two transcripts", [...MARK, "b.txt"], 2, "too many arguments"],
  ["no rubric", ["mark", "rehearsal.txt"], 2, "Shipped rubrics: "],
  ["an unreadable time", [...MARK, "--from", "soon"], 2, "Write seconds (420)"],
  ["times the wrong way round", [...MARK, "--from", "1:00", "--to", "0:30"], 2, "[SW-U03]"],
  ["a target after the limit", [...MARK, "--target", "20 min"], 2, "your target (20:00) is later than the rubric's limit"],
  ["a limit before the rubric's target", [...MARK, "--limit", "1:00"], 2, "Add a --target of 1:00 or less"],
  ["an unknown requirement", [...MARK, "--require", "safe"], 2, "[SW-U04]"],
  ["a requirement of an unknown item", [...MARK, "--require", "item=nothing-such"], 2, "the rubric has no item"],
  ["an odd width", [...MARK, "--width", "20"], 2, "60 to 200"],
  ["an unknown code", ["codes", "SW-T77"], 2, "[SW-U05]"],
  ["an unknown shell", ["completion", "powershell"], 2, "bash, zsh, fish"],
  ["a transcript that is not there", ["mark", "rehersal.txt", "--rubric", "eye-drops"], 3, "Did you mean 'rehearsal.txt'?"],
  ["a folder for a transcript", ["mark", ".", "--rubric", "eye-drops"], 3, "it is a folder"],
  ["an unknown rubric", ["mark", "rehearsal.txt", "--rubric", "eyedrops"], 4, "Did you mean 'eye-drops'?"],
  ["a rubric file that is not there", ["mark", "rehearsal.txt", "--rubric", "./eye.yaml"], 4, "there is no such file"],
  ["a station that is not there", [...MARK, "--from", "9:00"], 5, "[SW-S02]"],
])("%s ends with its own exit code and a way to mend it", (_name, args, exit, hint) => {
  const { code, out, err } = saidwell.run(args as string[]);
  expect(err).toContain(hint);
  expect(code).toBe(exit);
  expect(out).toBe("");
  expect(err).not.toMatch(/\bat .*\.js:\d+/);
});

test("empty input says so", () => {
  const { code, err } = saidwell.run(["mark", "-", "--rubric", "eye-drops"], { input: "" });
  expect([code, err]).toEqual([3, expect.stringContaining("<stdin>")]);
});

test("a rubric of one's own is read from YAML, with a shipped block, and its faults have line and column", () => {
  const own = (extra: string) => `saidwell: rubric@1
id: our-station
title: Our station
version: 1
jurisdiction: [GB]
scenario: { task: Explain it., counselled: patient }
time: { limit: "7 min", target: "6 min" }
sections:
  - include: shipped:opening
  - id: drops
    title: Drops
    items:
      - id: one-drop
        label: One drop in each eye
        say: [one drop into each eye]
${extra}pass: { minimum: 60 }
`;
  saidwell.write("own.yaml", own(""));
  const good = saidwell.run(["mark", "rehearsal.txt", "--rubric", "own.yaml", "--format", "json"]);
  expect(good.err).toBe("");
  const sheet = JSON.parse(good.out) as { items: { id: string; content: string; section: string }[]; rubric: { file: string } };
  expect(sheet.rubric.file).toBe("own.yaml");
  expect(sheet.items.find(({ id }) => id === "one-drop")?.content).toBe("complete");
  expect(sheet.items.filter(({ section }) => section === "opening").length).toBeGreaterThan(2);
  saidwell.write("bad.yaml", own("        wieght: 2\n"));
  const bad = saidwell.run(["mark", "rehearsal.txt", "--rubric", "bad.yaml"]);
  expect(bad.code).toBe(4);
  expect(bad.err).toMatch(/^bad\.yaml:16:9: .*wieght.* \[SW-R03\]\n {2}/);
  saidwell.write("dangling.yaml", own("").replace("shipped:opening", "shipped:closng"));
  expect(saidwell.run(["mark", "rehearsal.txt", "--rubric", "dangling.yaml"]).err).toContain("there is no shipped block 'closng' [SW-R04]\n  Did you mean 'shipped:closing'?");
  saidwell.write("dangling.yaml", own("").replace("shipped:opening", "shipped:warfarin"));
  expect(saidwell.run(["mark", "rehearsal.txt", "--rubric", "dangling.yaml"]).err).toContain("There are: shipped:checking-understanding, shipped:closing");
});

test("'label' writes a file that marks the same, as text and as JSON with the documented keys", () => {
  expect(saidwell.run(["label", "rehearsal.txt", "--out", "labelled.txt"]).code).toBe(0);
  const items = (args: string[]) => (JSON.parse(saidwell.run([...args, "--format", "json"]).out) as { items: { id: string; content: string }[] }).items.map(({ id, content }) => [id, content]);
  expect(items(["mark", "labelled.txt", "--rubric", "eye-drops"])).toEqual(items(MARK));
  const { sentences } = JSON.parse(saidwell.run(["label", "rehearsal.txt", "--format", "json"]).out) as { sentences: Record<string, unknown>[] };
  expect(sentences.length).toBeGreaterThan(5);
  for (const key of ["text", "start", "end", "role", "confidence", "inStation"]) expect(sentences[0]).toHaveProperty(key);
});

test("what 'label' writes cannot drive a terminal", () => {
  saidwell.write("evil.txt", REHEARSAL.replace("Thank you.", "Thank\u001b[2J you\u001b]0;x\u0007\u009b5m."));
  const { out } = saidwell.run(["label", "evil.txt"]);
  expect(out).toContain("Are you allergic");
  expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
});

test("help keeps to the width, examples aside, so that they can be copied", () => {
  for (const command of [[], ["mark"], ["label"]]) {
    for (const line of saidwell.run([...command, "--help"], { env: { COLUMNS: "60" } }).out.split("\n")) {
      if (!/^ {2}(saidwell|cat) /.test(line)) expect(line.length, line).toBeLessThanOrEqual(60);
    }
  }
});

test("'rubrics' lists what ships, as text and as JSON, and each can be marked with", () => {
  const { out } = saidwell.run(["rubrics"]);
  const list = JSON.parse(saidwell.run(["rubrics", "--format", "json"]).out) as { name: string; title: string; limit: number; items: number }[];
  expect(list.length).toBeGreaterThanOrEqual(4);
  for (const { name, title, items } of list) {
    expect(out).toContain(name);
    expect(out.replace(/\s+/g, " ")).toContain(title);
    expect(out).toContain(`${items} items`);
    expect(saidwell.run(["mark", "rehearsal.txt", "--rubric", name]).code).toBe(0);
  }
}, 60_000);

test("'codes' lists every code of the catalogue with what it leads to, and explains one", () => {
  const { out } = saidwell.run(["codes", "--width", "100"]);
  for (const [code, { title, exit }] of ENTRIES) {
    const row = out.split("\n").find((line) => line.includes(code));
    expect(row).toContain(title);
    expect(row).toMatch(exit === undefined ? /warning$/ : new RegExp(` ${exit}$`));
  }
  const one = saidwell.run(["codes", "t03", "--width", "100"]).out;
  expect(one).toContain("SW-T03");
  expect(one).toContain("exit code 3, the transcript cannot be used");
});

test("every command has help with an example, on standard output, with exit 0", () => {
  for (const command of ["mark", "label", "rubrics", "codes", "completion"]) {
    const { code, out, err } = saidwell.run([command, "--help"]);
    expect([code, err]).toEqual([0, ""]);
    expect(out).toContain(`saidwell ${command}`);
    expect(out).toMatch(/Examples:|To install/);
    expect(saidwell.run(["help", command]).out).toBe(out);
  }
  expect(saidwell.run(["--help"]).out).toContain("Exit codes:");
});

test("the version is the package's", () => {
  const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
  expect(saidwell.run(["--version"])).toEqual({ code: 0, out: `${version}\n`, err: "" });
  const sheet = JSON.parse(saidwell.run([...MARK, "--format", "json"]).out) as { version: string };
  expect(sheet.version).toBe(version);
});

test("a recording of an hour and a half is marked in one go", () => {
  const lines = REHEARSAL.split("\n").filter((line) => /\] (Candidate|Patient)/.test(line));
  const hours = Array.from({ length: 90 }, (_, minute) => lines.map((line) => line.replace(/^\[0:/, `[${minute}:`))).flat();
  saidwell.write("long.txt", `${hours.join("\n")}\n`);
  const { code, err, out } = saidwell.run(["mark", "long.txt", "--rubric", "eye-drops", "--format", "json"]);
  expect([code, err]).toEqual([0, ""]);
  expect((JSON.parse(out) as { transcript: { words: number } }).transcript.words).toBeGreaterThan(8000);
});

test("nothing is taken from the network, the home folder or a configuration file", () => {
  const { code, out } = saidwell.bash("env -i PATH=\"$PATH\" saidwell mark rehearsal.txt --rubric eye-drops");
  expect(code).toBe(0);
  expect(out).toBe(saidwell.run(MARK).out);
});
