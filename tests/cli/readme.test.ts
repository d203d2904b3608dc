import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { excerptArguments, withExcerpt } from "../../src/build/readme-excerpt.mjs";
import { built } from "./built.ts";

const command = built();

test("the README's sheet is what the command prints", () => {
  const { out, err } = command.bash(`cd '${process.cwd()}' && saidwell ${excerptArguments().join(" ")}`, { COLUMNS: "80" });
  expect(err).toBe("");
  const readme = readFileSync("README.md", "utf8");
  expect(readme, "run: npm run build && npm run excerpt").toBe(withExcerpt(readme, out));
});

test("what the command prints stands in the README whole, from the head of the sheet to the first items", () => {
  const sheet = "Mark sheet: a\n\nCRITICAL ITEMS MISSED\nITEMS --\n  one\n";
  const readme = withExcerpt("before\n<!-- excerpt: begin -->\nold\n<!-- excerpt: end -->\nafter\n", sheet);
  expect(readme).toMatch(/^before\n[^]*Mark sheet: a\n[^]*ITEMS --\n {2}one\n[^]*after\n$/);
  expect(readme).not.toContain("old");
  expect(() => withExcerpt("no place", sheet)).toThrow("no place");
});
