import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { SHEET_KEYS, toJson } from "../../src/report/json.ts";
import { render } from "../../src/report/render.ts";
import { completeSheet } from "./sheet.ts";

test("the JSON form holds the whole sheet, its keys in the documented order", () => {
  const sheet = completeSheet();
  const json = render(sheet, { format: "json" });
  expect(JSON.parse(json)).toEqual(JSON.parse(JSON.stringify(sheet)));
  expect(Object.keys(JSON.parse(json) as object)).toEqual([...SHEET_KEYS]);
  expect([...SHEET_KEYS].sort()).toEqual(Object.keys(sheet).sort());
});

test("the order of keys does not depend on how the sheet was put together", () => {
  const sheet = completeSheet();
  const reversed = Object.fromEntries(Object.entries(sheet).reverse()) as unknown as typeof sheet;
  expect(render(reversed, { format: "json" })).toBe(render(sheet, { format: "json" }));
});

test("two blanks of indentation and a newline at the end", () => {
  expect(toJson({ a: [1] })).toBe('{\n  "a": [\n    1\n  ]\n}\n');
});

test.each([Number.NaN, Number.POSITIVE_INFINITY])("%s is refused rather than written as null", (figure) => {
  const sheet = completeSheet();
  sheet.time.patientShare = figure;
  expect(() => render(sheet, { format: "json" })).toThrow("patientShare");
});

test("the README documents every key of the form", () => {
  const readme = readFileSync("README.md", "utf8");
  for (const key of SHEET_KEYS) expect(readme, key).toMatch(new RegExp(`^\\| \`${key}\` \\|`, "m"));
});
