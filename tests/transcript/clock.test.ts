import { describe, expect, test } from "vitest";
import { readClock, readLooseClock, showClock } from "../../src/transcript/clock.ts";

describe("a time as people and programs write it", () => {
  test.each([
    ["0:05", 5],
    ["7:00", 420],
    ["1:02:30", 3750],
    ["0:12.3", 12.3],
    ["0:12,345", 12.345],
    ["75:00", 4500],
  ])("%s is %f s", (text, seconds) => expect(readClock(text)).toBe(seconds));

  test.each(["0:60", "1:60:00", "1:2:3", "12", "1:234", ""])("'%s' is none: beside hours there are sixty minutes at most, beside minutes sixty seconds", (text) => expect(readClock(text)).toBeNull());
});

describe("a caption's time as found in the wild", () => {
  test.each([
    ["00:01:02.500", 62.5],
    ["01:02,500", 62.5],
    ["00:01:02:500", 62.5],
    ["1:02", 62],
    ["62.5", null],
    ["2.5", 2.5],
    ["1:75:00", null],
    ["1:2:3:4:5", null],
    ["-1:02", null],
  ])("%s: %j s", (text, seconds) => expect(readLooseClock(text)).toBe(seconds));
});

test("shown it is cut to the second, with hours from an hour on", () => {
  expect([59.9, 60, 3599.9, 3600, 3661].map(showClock)).toEqual(["0:59", "1:00", "59:59", "1:00:00", "1:01:01"]);
});
