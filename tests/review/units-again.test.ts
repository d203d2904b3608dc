import { describe, expect, test } from "vitest";
import { broken, findingsOf, lineOf } from "./card.ts";

describe("a unit that is said again behind {quantity} is told", () => {
  test.each([
    ["hold your breath for {quantity} seconds", "seconds"],
    ["hold your breath {quantity} second|seconds long", "second|seconds"],
  ])("%s", (phrase, unit) => {
    const text = broken("- hold your breath for {quantity}", `- ${phrase}`);
    expect(findingsOf(text)).toContainEqual(expect.objectContaining({ code: "SW-C27", severity: "warning", line: lineOf(text, phrase), message: expect.stringMatching(/here 'ten seconds'/), mend: `Take '${unit}' out.` }));
  });

  test.each(["hold your breath for {quantity} every time", "for {quantity} hold your breath in, minutes don't count"])("'%s' says none", (phrase) => {
    expect(findingsOf(broken("- hold your breath for {quantity}", `- ${phrase}`)).filter(({ code }) => code === "SW-C27")).toEqual([]);
  });

  test("how often has its 'a day' in it", () => {
    const text = broken("quantity: { value: 10, unit: second }", "quantity: { value: 2, unit: time-per-day }").replace("- hold your breath for {quantity}", "- hold your breath {quantity} a day");
    expect(findingsOf(text)).toContainEqual(expect.objectContaining({ code: "SW-C27", message: expect.stringMatching(/here 'twice a day'/), mend: "Take 'a day' out." }));
    const times = text.replace("{quantity} a day", "{quantity} times a day");
    expect(findingsOf(times)).toContainEqual(expect.objectContaining({ code: "SW-C27", mend: "Take 'times a day' out." }));
    const habit = text.replace("{quantity} a day", "{quantity} every day");
    expect(findingsOf(habit).filter(({ code }) => code === "SW-C27")).toEqual([]);
  });
});
