import { expect, test } from "vitest";
import { DEFAULT_PATTERN, nameReader, stem } from "../../src/cohort/names.ts";

const read = (pattern: string, path: string) => nameReader(pattern)(path);

test.each([
  ["A017_eye-drops_2.vtt", { candidate: "A017", station: "eye-drops", attempt: "2" }],
  ["day one/A017_eye-drops.txt", { candidate: "A017", station: "eye-drops" }],
  ["A017.srt", { candidate: "A017" }],
  ["Zoë Ö'Hara.TextGrid", { candidate: "Zoë Ö'Hara" }],
])("by default '%s' is read from candidate to attempt, what is missing is absent", (path, key) => {
  expect(read(DEFAULT_PATTERN, path)).toEqual({ key, columns: {} });
});

test("a name with more parts than the pattern is not guessed at", () => {
  expect(read(DEFAULT_PATTERN, "anna_maria_pen_1.txt")).toBeNull();
  expect(read("{candidate}_{station}_{attempt}", "A017_pen.txt")).toBeNull();
});

test("a value ends at the character that follows it, so that a name can be read in one way only", () => {
  expect(read("{candidate}-{station}_{attempt}", "A1-eye-drops_1.txt")?.key).toEqual({ candidate: "A1", station: "eye-drops", attempt: "1" });
});

test("folders may carry parts, and other names become columns", () => {
  expect(read("{school}/{candidate}_{station}", "june/north/A1_pen.txt")).toEqual({ key: { candidate: "A1", station: "pen" }, columns: { school: "north" } });
});

test("text in a pattern stands for itself, also where it means something in a regular expression", () => {
  expect(read("(x.y)+{candidate}", "(x.y)+A1.txt")?.key).toEqual({ candidate: "A1" });
  expect(read("(x.y)+{candidate}", "(xzy)+A1.txt")).toBeNull();
});

test.each([
  ["{station}", "{candidate}"],
  ["{candidate}{attempt}", "side by side"],
  ["{candidate}_{candidate}", "twice"],
  ["{candidate}[_{station}", "'['"],
  ["{candidate}_]", "']'"],
  ["{candidate", "braces"],
])("the pattern '%s' is refused with a reason that names %s", (pattern, reason) => {
  expect(() => nameReader(pattern)).toThrow(reason);
});

test("only the last ending of a file's name is taken off", () => {
  expect([stem("a.b.vtt"), stem("x.y/a"), stem(".hidden")]).toEqual(["a.b", "x.y/a", ".hidden"]);
});
