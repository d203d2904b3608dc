import { expect, test } from "vitest";
import { formatFinding, ProblemError } from "../../src/problem/problem.ts";

test("a finding reads as file, line, sentence, code, and how to mend it", () => {
  const finding = {
    code: "SW-T13",
    severity: "warning" as const,
    file: "a.txt",
    line: 3,
    column: 2,
    message: "the time '9:99' cannot be read",
    mend: "Write minutes and seconds as 9:09.",
  };
  expect(formatFinding(finding)).toBe("a.txt:3:2: the time '9:99' cannot be read [SW-T13]\n  Write minutes and seconds as 9:09.");
  expect(new ProblemError([finding, finding]).message.split("\n")).toHaveLength(4);
});
