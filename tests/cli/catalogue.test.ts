import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { exitCodeOf, EXIT_MEANING } from "../../src/cli/exit-codes.ts";
import { describe as describeFinding, fail } from "../../src/cli/fail.ts";
import { CATALOGUE, EXIT, type CatalogueEntry } from "../../src/problem/catalogue.ts";
import { ProblemError, type Finding } from "../../src/problem/problem.ts";

function sources(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|yaml)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => !path.endsWith("problem/catalogue.ts"));
}

test("every code that the sources use is in the catalogue, and every code of the catalogue is used", () => {
  const used = new Set(sources("src").flatMap((path) => readFileSync(path, "utf8").match(/\bSW-[A-Z]\d\d\b/g) ?? []));
  // Named in help and comments as an example as well.
  expect([...used].sort()).toEqual(Object.keys(CATALOGUE).sort());
});

test("every code of rubrics and of their check says how to mend what has it", () => {
  const without = Object.entries<CatalogueEntry>(CATALOGUE).filter(([code, { mend }]) => /^SW-[RC]/.test(code) && !/^[A-Z].*\.$/.test(mend ?? ""));
  expect(without).toEqual([]);
});

test("the README's table of exit codes is the catalogue's", () => {
  const rows = [...readFileSync("README.md", "utf8").matchAll(/^\| (\d+) \| (.+) \|$/gm)].map(([, code, meaning]) => [Number(code), meaning]);
  expect(rows).toEqual(Object.entries(EXIT_MEANING).map(([code, meaning]) => [Number(code), meaning]));
  expect(rows.map(([code]) => code)).toEqual(Object.values(EXIT));
});

const finding = (code: string, severity: Finding["severity"] = "error"): Finding => ({ code, severity, file: "a.txt", message: "wrong" });

test("the exit code is that of the first error; a code outside the catalogue is a fault of the program", () => {
  expect(exitCodeOf([finding("SW-T12", "warning"), finding("SW-R03"), finding("SW-T03")])).toBe(EXIT.rubric);
  expect(exitCodeOf([finding("SW-X99")])).toBe(EXIT.internal);
  for (const [code, { exit }] of Object.entries(CATALOGUE) as [string, { exit?: number }][]) {
    if (exit !== undefined) expect(exitCodeOf([finding(code)])).toBe(exit);
  }
});

test("an error quotes hostile text harmlessly", () => {
  expect(describeFinding({ ...finding("SW-T03"), file: "a\u001b[2J.txt", message: "'\u001b]0;x\u0007' is odd", mend: "Take\u0000 it out." })).toBe(
    "a .txt: ' ' is odd [SW-T03]\n  Take it out.",
  );
});

test("every error found is told, not only the first", () => {
  let told = "";
  const code = fail(new ProblemError([finding("SW-R03"), { ...finding("SW-R05"), line: 3 }]), (text) => (told += text), {});
  expect(code).toBe(EXIT.rubric);
  expect(told).toBe("a.txt: wrong [SW-R03]\na.txt:3: wrong [SW-R05]\n");
});

test("a fault of the program asks for a report and shows its place only when asked", () => {
  const told = (environment: Record<string, string>) => {
    let text = "";
    expect(fail(new TypeError("x is not a function"), (part) => (text += part), environment)).toBe(70);
    return text;
  };
  expect(told({})).toMatch(/x is not a function \[SW-O03\]\n.*Please report/);
  expect(told({})).not.toContain("at ");
  expect(told({ SAIDWELL_DEBUG: "1" })).toContain("catalogue.test.ts");
});
