import { expect, test } from "vitest";
import { nearest } from "../../src/problem/nearest.ts";

const names = ["eye-drops", "insulin-pen", "nasal-spray", "pressurised-inhaler", "dose"];

test.each([
  ["eye-drop", "eye-drops"],
  ["EYE-DROPS", "eye-drops"],
  ["insulinpen", "insulin-pen"],
  ["pressurized-inhaler", "pressurised-inhaler"],
  ["nasal", "nasal-spray"],
  ["inhaler", "pressurised-inhaler"],
  ["glucose-meter", undefined],
  ["xy", undefined],
  ["nope", undefined],
  ["does", "dose"],
  ["dos", "dose"],
])("for '%s' the nearest name is %s", (typed, name) => {
  expect(nearest(typed, names)).toBe(name);
});
