import { expect, test } from "vitest";
import { parseLength, parseTime } from "../../src/cli/duration.ts";

test.each([
  ["420", 420],
  ["12.5", 12.5],
  ["0", 0],
  ["7:00", 420],
  ["07:05", 425],
  ["75:00", 4500],
  ["6:30.5", 390.5],
  ["6:30,5", 390.5],
  ["1:02:30", 3750],
  ["7 min", 420],
  ["7min", 420],
  ["6.5 minutes", 390],
  ["90 s", 90],
  ["90sec", 90],
  ["1 h", 3600],
  [" 7 Min ", 420],
])("'%s' is %f seconds", (typed, seconds) => {
  expect(parseTime(typed)).toBe(seconds);
});

test.each(["", "abc", "-5", "7:60", "1:75:00", "7:", "7 parsecs", "1e3", "7:0", "NaN", "Infinity"])("'%s' is refused with the ways to write a time", (typed) => {
  expect(() => parseTime(typed)).toThrow(/seconds \(420\)/);
});

test("a limit of nothing is refused", () => {
  expect(() => parseLength("0:00")).toThrow("more than nothing");
  expect(parseLength("1")).toBe(1);
});

test("no recording lasts longer than the reader believes", () => {
  expect(() => parseLength("99999999999999")).toThrow("longer than 100 hours");
  expect(parseLength("100 h")).toBe(360_000);
});
