import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { nearFile } from "../../src/cli/near-file.ts";

const folder = mkdtempSync(join(tmpdir(), "saidwell-near-"));
mkdirSync(join(folder, "blocks"));
for (const name of ["drops.yaml", "blocks/opening.yml", "notes.txt"]) writeFileSync(join(folder, name), "");
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.each([
  ["drosp.yaml", "Did you mean 'drops.yaml'? "],
  ["drops", "Did you mean 'drops.yaml'? "],
  ["blocks/openning.yml", "Did you mean 'blocks/opening.yml'? "],
  ["note.txt", ""],
  ["warfarin.yaml", ""],
  ["nowhere/drops.yaml", ""],
])("where there is no '%s', this is offered: '%s'", (path, offered) => {
  expect(nearFile(join(folder, path), folder)).toBe(offered);
});

test("without a folder to tell it from, the name is told as the path was written", () => {
  expect(nearFile(join(folder, "drosp.yaml"))).toBe(`Did you mean '${join(folder, "drops.yaml")}'? `);
});
