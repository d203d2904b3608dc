import fc from "fast-check";
import { expect, test } from "vitest";
import { clean, toAscii } from "../../src/report/clean.ts";
import { toJson } from "../../src/report/json.ts";
import { render } from "../../src/report/render.ts";
import { completeSheet } from "./sheet.ts";

// Control functions by ECMA-48, 5th edition (1991): CSI (5.4), OSC and other control strings (5.6), C0 and C1 sets;
// OSC 8 and OSC 52 as terminals have them. Bidirectional controls by Unicode UAX #9, section 2.
test.each([
  ["colour", "red \u001b[31malert\u001b[0m", "red alert"],
  ["cursor movement and erasing", "a\u001b[2J\u001b[10;10Hb", "a b"],
  ["a window title", "a\u001b]0;owned\u0007b", "a b"],
  ["a link", "\u001b]8;;http://example.org\u001b\\click\u001b]8;;\u001b\\", "click"],
  ["the clipboard", "a\u001b]52;c;ZXZpbA==\u0007b", "a b"],
  ["a device control string", "a\u001bP1$tx\u001b\\b", "a b"],
  ["C1 forms of the same", "a\u009b31mb\u009d0;x\u009cc", "a b c"],
  ["a reset", "a\u001bcb", "a b"],
  ["an escape cut short", "a\u001b[31", "a"],
  ["carriage return and backspace", "pass\rfail\b\b", "pass fail"],
  ["text turned round", "\u202egnorw\u202c \u2066x\u2069", "gnorw x"],
  ["a blank without width", "do\u200b not", "do not"],
])("%s in a transcript is taken out", (_name, hostile, harmless) => {
  expect(clean(hostile)).toBe(harmless);
});

test("ordinary words of any language pass unchanged", () => {
  for (const words of ["don’t – “ten” µg", "naïve Zoë", "薬を吸う", "تنفس ببطء", "👩‍⚕️".replaceAll("\u200d", "")]) expect(clean(words)).toBe(words);
});

test("whatever a sheet holds, the page holds no control but the newline, and no bidirectional mark", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 40 }), fc.constantFrom("\u001b[2J", "\u009b5m", "\u001b]0;x", "\u202e", "\r", "\u0000"), (noise, hostile) => {
      const sheet = completeSheet();
      const evil = noise + hostile + noise;
      sheet.candidate = evil;
      sheet.transcript.file = evil;
      sheet.items[0]!.label = evil;
      sheet.items[0]!.elements[0]!.evidence[0]!.quote = evil;
      sheet.findings[0]!.message = evil;
      sheet.station.labelRoles[0]!.label = evil;
       
      expect(render(sheet, { format: "text" })).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
       
      expect(render(sheet, { format: "json" })).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
      expect(render(sheet, { format: "text", ascii: true })).toMatch(/^[\n -~]*$/);
    }),
    { numRuns: 60 },
  );
});

test("JSON escapes what could drive a terminal and loses nothing", () => {
  const data = { words: "a\u009b31m\u202eb\u007f\u2028c\u200b" };
  const json = toJson(data);
  expect(json).toMatch(/^[\n -~]*$/);
  expect(JSON.parse(json)).toEqual(data);
});

test("ASCII spelling keeps typographic marks readable and never leaves another character", () => {
  expect(toAscii("don’t “wait” – 10 µg… é")).toBe(`don't "wait" - 10 ug... e`);
  expect(toAscii("薬")).toBe("?");
});
