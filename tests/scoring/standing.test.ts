import { expect, test } from "vitest";
import { stands } from "../../src/scoring/standing.ts";

test.each([
  ["said and left so", { corrected: false, listen: false }, true],
  ["put right before the end", { corrected: true, listen: false }, false],
  ["perhaps mis-heard", { corrected: false, listen: true }, false],
  ["perhaps mis-heard, and put right", { corrected: true, listen: true }, false],
])("an unsafe statement that was %s", (_, statement, standing) => {
  expect(stands(statement)).toBe(standing);
});
