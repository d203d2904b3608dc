import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { cacheFolder } from "../../src/cli/cache-folder.ts";
import { keepFile } from "../../src/cli/keep-file.ts";
import { KeptReadings } from "../../src/cli/kept-readings.ts";
import type { Readings } from "../../src/review/readings.ts";
import { BLOCK, SOUND } from "../review/card.ts";
import { built } from "./built.ts";

const scratch = mkdtempSync(join(tmpdir(), "saidwell-kept-"));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

describe("where it is kept", () => {
  const home = () => "/home/kim";
  // XDG Base Directory Specification 0.8 (freedesktop.org, 2021): unset and empty mean .cache in the home folder, a
  // relative path is to be ignored.
  test.each([
    ["by default", {}, "/home/kim/.cache/saidwell"],
    ["an empty XDG_CACHE_HOME", { XDG_CACHE_HOME: "" }, "/home/kim/.cache/saidwell"],
    ["a relative XDG_CACHE_HOME", { XDG_CACHE_HOME: "cache" }, "/home/kim/.cache/saidwell"],
    ["XDG_CACHE_HOME", { XDG_CACHE_HOME: "/var/c" }, "/var/c/saidwell"],
    ["SAIDWELL_CACHE before it", { XDG_CACHE_HOME: "/var/c", SAIDWELL_CACHE: "/mine" }, "/mine"],
    ["an empty SAIDWELL_CACHE", { SAIDWELL_CACHE: "" }, "/home/kim/.cache/saidwell"],
    ["SAIDWELL_CACHE=off", { XDG_CACHE_HOME: "/var/c", SAIDWELL_CACHE: "off" }, null],
  ])("%s", (_, environment, folder) => {
    expect(cacheFolder(environment, "linux", home)).toBe(folder);
  });

  test("on Windows, in the local part of a person's data", () => {
    expect(cacheFolder({ LOCALAPPDATA: "C:\\Users\\kim\\AppData\\Local", XDG_CACHE_HOME: "/var/c" }, "win32", home)?.replaceAll("/", "\\")).toBe("C:\\Users\\kim\\AppData\\Local\\saidwell\\cache");
    expect(cacheFolder({}, "win32", home)).toBeNull();
  });

  test("nowhere when there is no home", () => {
    const none = () => {
      throw new Error("no such user");
    };
    expect(cacheFolder({}, "linux", none)).toBeNull();
  });
});

describe("a store", () => {
  const readings: Readings = { utterances: 3, responses: [{ response: 1, missed: null, effects: [], unsafe: { said: "swallow it", statement: "swallow" } }], examples: [2], numbers: [], written: [], unfound: [], untold: [], idle: [], questions: [], light: [], speaking: { words: 10, middleWords: 12 } };
  const folder = join(scratch, "store");
  const store = (more = {}) => new KeptReadings({ folder, program: "p", fresh: false, ...more });
  beforeEach(async () => {
    rmSync(folder, { recursive: true, force: true });
    await store().keep("r", readings);
  });

  test("gives back what was kept, and to nobody else's eyes", () => {
    expect(store().find("r")).toEqual(readings);
    expect([statSync(folder).mode & 0o777, statSync(join(folder, readdirSync(folder)[0]!)).mode & 0o777]).toEqual([0o700, 0o600]);
  });

  test("has nothing of another rubric or another program", () => {
    expect(store().find("s")).toBeNull();
    expect(store({ program: "q" }).find("r")).toBeNull();
  });

  test("is not asked when all is to be read anew, and takes what was read", async () => {
    expect(store({ fresh: true }).find("r")).toBeNull();
    await store({ fresh: true }).keep("r", { ...readings, utterances: 4 });
    expect(store().find("r")?.utterances).toBe(4);
  });

  test("keeps nothing without a folder, or of a program that runs from its sources", async () => {
    for (const none of [{ folder: null }, { program: null }]) {
      await store(none).keep("n", readings);
      expect(store(none).find("n")).toBeNull();
    }
    expect(readdirSync(folder)).toHaveLength(1);
  });

  test.each([
    ["half of one", (text: string) => text.slice(0, text.length / 2)],
    ["an empty one", () => ""],
    ["one of another form", () => '{"utterances":3}'],
    ["one with a number below nought", (text: string) => text.replace('"response":1', '"response":-1')],
  ])("takes a broken file for none and writes it anew: %s", async (_, spoil) => {
    const path = join(folder, readdirSync(folder)[0]!);
    writeFileSync(path, spoil(readFileSync(path, "utf8")));
    expect(store().find("r")).toBeNull();
    await store().keep("r", readings);
    expect(store().find("r")).toEqual(readings);
  });

  test("a folder that cannot be made is no error", async () => {
    writeFileSync(join(scratch, "file"), "");
    const blocked = store({ folder: join(scratch, "file/below") });
    await blocked.keep("r", readings);
    expect(blocked.find("r")).toBeNull();
  });
});

test("of more files than may be the oldest go, also what an ended run left of one; what is not ours stays", () => {
  const folder = join(scratch, "full");
  mkdirSync(folder);
  const name = (digit: string) => `${digit.repeat(64)}.json`;
  [name("a"), `${name("b")}.1234567`, name("c"), "notes.json"].forEach((file, age) => {
    writeFileSync(join(folder, file), "{}");
    utimesSync(join(folder, file), age, age);
  });
  keepFile(join(folder, name("d")), "{}", 2);
  expect(readdirSync(folder).sort()).toEqual([name("c"), name("d"), "notes.json"]);
});

describe("rubric check", () => {
  const saidwell = built();
  const env = { SAIDWELL_CACHE: "kept" };
  const files = () => (existsSync(`${saidwell.work}/kept/rubric-check`) ? readdirSync(`${saidwell.work}/kept/rubric-check`).sort() : []);
  const check = (...args: string[]) => saidwell.run(["rubric", "check", "card.yaml", "--today", "2026-11-25", ...args], { env });
  const CARD = SOUND.replace("sections:\n", "sections:\n  - include: opening.yaml\n").replace("          - always shake the inhaler hard\n", "          - always shake the inhaler hard\n          - shake it and rinse your mouth with water afterwards\n");
  beforeEach(() => {
    rmSync(`${saidwell.work}/kept`, { recursive: true, force: true });
    saidwell.write("card.yaml", CARD);
    saidwell.write("opening.yaml", BLOCK);
  });
  /** The one file with another figure in it: whoever uses it shows that. */
  const mark = () => {
    const path = `${saidwell.work}/kept/rubric-check/${files()[0]!}`;
    writeFileSync(path, readFileSync(path, "utf8").replace(/"utterances":\d+/, '"utterances":4321'));
  };
  const utterances = (...args: string[]) => (JSON.parse(check("--format", "json", ...args).out) as { files: { figures: { utterances: number } }[] }).files[0]!.figures.utterances;

  test("says the second time, byte for byte, what it said the first, in every form", () => {
    for (const format of ["text", "json", "junit", "markdown", "sarif"]) {
      rmSync(`${saidwell.work}/kept`, { recursive: true, force: true });
      const first = check("--confusion", "--format", format);
      expect(files()).toHaveLength(1);
      expect(check("--confusion", "--format", format)).toEqual(first);
      expect(first.out).toContain("SW-C02");
    }
  });

  test("uses what was kept, unless --fresh is given, which keeps anew", () => {
    const read = utterances();
    mark();
    expect(utterances()).toBe(4321);
    expect(utterances("--fresh")).toBe(read);
    expect(utterances()).toBe(read);
  });

  test("a comment in the rubric changes lines, not what its phrases do", () => {
    const lineOf = ({ out }: { out: string }) => (JSON.parse(out) as { findings: { code: string; line: number }[] }).findings.find(({ code }) => code === "SW-C02")!.line;
    const before = lineOf(check("--format", "json"));
    mark();
    saidwell.write("card.yaml", `# A comment.\n${CARD}`);
    expect(utterances()).toBe(4321);
    expect(lineOf(check("--format", "json"))).toBe(before + 1);
    expect(files()).toHaveLength(1);
  });

  test.each([
    ["a response", "card.yaml", CARD.replace("give the inhaler a good shake", "give the inhaler a strong shake")],
    ["a block", "opening.yaml", BLOCK.replace("hello and welcome", "hello there and welcome")],
  ])("reads anew when %s has changed", (_, file, text) => {
    const read = utterances();
    mark();
    saidwell.write(file, text);
    expect(utterances()).toBe(read);
    expect(files()).toHaveLength(2);
  });

  test("reads anew with another program", () => {
    const read = utterances();
    mark();
    const program = join(saidwell.folder, "cli.cjs");
    const text = readFileSync(program, "utf8");
    const [, hash] = /PROGRAM_HASH\s*=\s*"([0-9a-f]{64})"/.exec(text)!;
    try {
      writeFileSync(program, text.replace(hash!, hash!.replace(/./g, (digit) => (digit === "0" ? "1" : "0"))));
      expect(utterances()).toBe(read);
    } finally {
      writeFileSync(program, text);
    }
    expect(utterances()).toBe(4321);
  });

  test("SAIDWELL_CACHE=off keeps nothing; without it the home folder's own place is used", () => {
    expect(saidwell.run(["rubric", "check", "card.yaml"], { env: { SAIDWELL_CACHE: "off" } }).code).toBe(0);
    expect(existsSync(`${saidwell.work}/.cache`)).toBe(false);
    saidwell.run(["rubric", "check", "card.yaml"]);
    expect(readdirSync(`${saidwell.work}/.cache/saidwell/rubric-check`)).toHaveLength(1);
    rmSync(`${saidwell.work}/.cache`, { recursive: true });
  });

  test("a folder that may not be written to changes nothing", () => {
    const usual = check();
    rmSync(`${saidwell.work}/kept`, { recursive: true });
    // A file in its place stops also those whom permissions do not.
    saidwell.write("kept", "");
    expect(check()).toEqual(usual);
    rmSync(`${saidwell.work}/kept`);
    mkdirSync(`${saidwell.work}/kept`, { mode: 0o500 });
    expect(check()).toEqual(usual);
    chmodSync(`${saidwell.work}/kept`, 0o700);
  });

  // Linux alone has such a folder; there Node 20's own way to make folders goes round for ever.
  test.skipIf(!existsSync("/proc/self"))("a place where no folder can be made changes nothing, and stops nothing", () => {
    expect(saidwell.run(["rubric", "check", "card.yaml"], { env: { SAIDWELL_CACHE: "/proc/nope" } })).toMatchObject({ code: 0, err: "" });
    mkdirSync(`${saidwell.work}/talks`);
    saidwell.write("talks/A1.txt", "[0:00] Pharmacist: Shake the inhaler well.\n[0:05] Patient: Okay.\n");
    expect(saidwell.run(["cohort", "talks", "-r", "card.yaml", "--out", "/proc/nope/marked"])).toMatchObject({ code: 6, err: expect.stringContaining("[SW-O02]") });
  }, 20_000);

  test("help says where, and how it is turned off", () => {
    const { out } = saidwell.run(["rubric", "check", "--help"]);
    for (const words of ["--fresh", "SAIDWELL_CACHE=off", "XDG_CACHE_HOME", "LOCALAPPDATA%\\saidwell\\cache"]) expect(out.replace(/\s+/g, " ")).toContain(words);
  });
});
