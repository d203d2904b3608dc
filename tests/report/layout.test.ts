import stringWidth from "string-width";
import { coefficient } from "../../src/report/cohort/estimates.ts";
import { expect, test } from "vitest";
import { clean } from "../../src/report/clean.ts";
import { clock, measured, number, percent } from "../../src/report/figures.ts";
import { Page, styled, wrap } from "../../src/report/page.ts";
import { painter } from "../../src/report/style.ts";
import { displayWidth, padEnd, splitWide } from "../../src/report/width.ts";

test("display width agrees with string-width on every character that a clean text can hold", () => {
  const differ: string[] = [];
  for (let code = 0x20; code < 0x20000; code += 1) {
    // Scripts whose letters join into clusters (south and south-east Asian, loose Hangul letters) differ between terminals
    // too; emoji forms and skin tones are tried below with what they follow. Surrogates are no characters.
    if ((code >= 0x900 && code < 0x1e00) || (code >= 0xa800 && code < 0xac00) || (code >= 0x11000 && code < 0x12000)) continue;
    if ((code >= 0xd7b0 && code <= 0xdfff) || code === 0xfe0f || (code >= 0x1f3fb && code <= 0x1f3ff)) continue;
    const character = String.fromCodePoint(code);
    if (clean(character) === "" || /[\p{Mc}\uff9e\uff9f]/u.test(character)) continue;
    if (displayWidth(`a${character}b`) !== stringWidth(`a${character}b`)) differ.push(code.toString(16));
  }
  expect(differ).toEqual([]);
});

test("display width by Unicode UAX #11 and #29: wide characters two columns, combining marks none", () => {
  expect(displayWidth("日本")).toBe(4);
  expect(displayWidth("e\u0301")).toBe(1);
  expect(padEnd("日本", 6)).toBe("日本  ");
  expect(splitWide("日本語", 4)).toEqual(["日本", "語"]);
});

test.each(["❤️", "👩🏽", "🇬🇧", "👍", "한국어", "ﾃﾞｨ", "นี้", "e\u0301a\u0323", "薬を、吸う", "☎️ 1️⃣"])("display width agrees with string-width on '%s'", (text) => {
  expect(displayWidth(text)).toBe(stringWidth(text));
});

test("lines break at blanks, keep styles, and cut only what is wider than the line", () => {
  const lines = wrap([styled("one two", "plain"), styled(" three", "bad"), styled(".", "plain")], 8).map((line) => line.map((run) => run.text).join(""));
  expect(lines).toEqual(["one two", "three."]);
  expect(wrap([styled("abcdefghij k", "plain")], 4).map((line) => line.map((run) => run.text).join(""))).toEqual(["abcd", "efgh", "ij k"]);
});

test("what stands at the right edge ends there, and the text keeps clear of it", () => {
  const page = new Page({ width: 60, ascii: true, paint: painter(false) });
  page.entry({ indent: 2, lead: "mark", hang: 10, body: "word ".repeat(20).trim(), right: "12/12" });
  const lines = page.toString().trimEnd().split("\n");
  expect(lines[0]).toHaveLength(60);
  expect(lines[0]).toMatch(/^ {2}mark {6}word .*word +12\/12$/);
  for (const line of lines.slice(1)) expect(line).toMatch(/^ {12}word.{0,40}$/);
});

test.each([
  [0, "0:00"],
  [59.6, "1:00"],
  [432.5, "7:13"],
  [3599.6, "1:00:00"],
  [3725, "1:02:05"],
  [-12.4, "-0:12"],
  [-0.2, "0:00"],
])("%f seconds are %s on the clock", (seconds, shown) => {
  expect(clock(seconds)).toBe(shown);
});

test("a share short of all or above none never reads as all or none", () => {
  expect([percent(99.7), percent(100), percent(0.2), percent(0)]).toEqual(["99%", "100%", "1%", "0%"]);
});

test("figures keep no trailing zeros and no minus nought", () => {
  expect([number(2), number(2.5), number(2.04), number(-0.001), number(2.345, 2)]).toEqual(["2", "2.5", "2", "0", "2.35"]);
});

test("a figure that was not measured reads as the reason", () => {
  expect(measured({ value: null, why: "no times" }, clock)).toBe("not measurable: no times");
  expect(measured({ value: 61, estimated: true }, clock)).toBe("1:01 (estimated)");
});

test("a coefficient has two decimals and is never minus nought", () => {
  expect([0.125, 1, -0.001, -0.4].map(coefficient)).toEqual(["0.13", "1.00", "0.00", "-0.40"]);
});
