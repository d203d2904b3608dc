import { expect, test } from "vitest";
import { appearance, parseWidth } from "../../src/cli/terminal.ts";

const tty = { isTTY: true, columns: 132 };
const pipe = {};
const utf8 = { LANG: "en_GB.UTF-8", TERM: "xterm" };

test("the width is the option's, else COLUMNS, else the terminal's, else 80", () => {
  expect(appearance({ width: 70 }, tty, { COLUMNS: "90" }).width).toBe(70);
  expect(appearance({}, tty, { COLUMNS: "90" }).width).toBe(90);
  expect(appearance({}, tty, {}).width).toBe(132);
  expect(appearance({}, pipe, {}).width).toBe(80);
  expect(appearance({}, pipe, { COLUMNS: "wide" }).width).toBe(80);
  expect(appearance({ toFile: true }, tty, {}).width).toBe(80);
});

// no-color.org: "when present and not an empty string (regardless of its value), prevents the addition of ANSI color".
// force-color.org: the same in the other direction.
test.each([
  ["a terminal", {}, tty, utf8, true],
  ["a pipe", {}, pipe, utf8, false],
  ["a dumb terminal", {}, tty, { TERM: "dumb" }, false],
  ["NO_COLOR on a terminal", {}, tty, { NO_COLOR: "1" }, false],
  ["an empty NO_COLOR on a terminal", {}, tty, { NO_COLOR: "" }, true],
  ["FORCE_COLOR in a pipe", {}, pipe, { FORCE_COLOR: "1" }, true],
  ["FORCE_COLOR=0 on a terminal", {}, tty, { FORCE_COLOR: "0" }, false],
  ["both", {}, pipe, { NO_COLOR: "1", FORCE_COLOR: "1" }, false],
  ["--colour always in spite of NO_COLOR", { colour: "always" }, pipe, { NO_COLOR: "1" }, true],
  ["--colour never in spite of FORCE_COLOR", { colour: "never" }, tty, { FORCE_COLOR: "3" }, false],
  ["a file", { toFile: true }, tty, { FORCE_COLOR: "1" }, false],
  ["a file with --colour always", { toFile: true, colour: "always" }, tty, {}, true],
] as const)("colour for %s", (_name, wish, stream, environment, expected) => {
  expect(appearance(wish, stream, environment).colour).toBe(expected);
});

// POSIX.1-2017, section 8.2: LC_ALL goes before LC_CTYPE before LANG, and an empty value counts as not set.
test.each([
  [{ LANG: "en_GB.UTF-8" }, false],
  [{ LANG: "C.utf8" }, false],
  [{ LC_ALL: "C", LANG: "en_GB.UTF-8" }, true],
  [{ LC_ALL: "", LC_CTYPE: "POSIX", LANG: "en_GB.UTF-8" }, true],
  [{ LANG: "de_DE.ISO-8859-1" }, true],
  [{}, false],
])("with the locale %o the text is ASCII only: %s", (environment, ascii) => {
  expect(appearance({}, tty, environment).ascii).toBe(ascii);
  expect(appearance({ toFile: true }, tty, environment).ascii).toBe(false);
});

test("a width outside 60 to 200 is refused", () => {
  expect(parseWidth("60")).toBe(60);
  expect(parseWidth("200")).toBe(200);
  for (const typed of ["59", "201", "80.5", "", "-80", "eighty"]) expect(() => parseWidth(typed), typed).toThrow("60 to 200");
});
