import { expect, test } from "vitest";
import { broken, findingsOf, lineOf } from "./card.ts";

test("a limit of seconds that were meant for minutes is told with how to write minutes", () => {
  const text = broken("time: { limit: 7 min, target: 6 min }", "time: { limit: 7, target: 6 }");
  expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C13", line: lineOf(text, "time:"), mend: "A number alone is seconds: write '7 min' for minutes." })]);
});
