import { expect, test } from "vitest";
import { isJurisdiction, jurisdictionMeant } from "../../src/rubric/jurisdictions.ts";

test("every country that Unicode's table (CLDR) names by two letters of ISO 3166-1 is one, and no other two letters", () => {
  const names = new Intl.DisplayNames(["en"], { type: "region", fallback: "none" });
  // What CLDR names besides: reserved codes of the post and of taxes, outlying islands, groups, and codes that users make.
  const besides = new Set(["AC", "CP", "CQ", "DG", "EA", "EZ", "IC", "QO", "TA", "UN", "ZZ"]);
  const letters = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZ"];
  const wrong = letters.flatMap((first) => letters.map((second) => first + second)).filter((code) => {
    if (code.startsWith("X")) return !isJurisdiction(code);
    const known = names.of(code) !== undefined && new Intl.Locale(`und-${code}`).region === code && !besides.has(code);
    return isJurisdiction(code) !== known;
  });
  expect(wrong).toEqual([]);
});

test.each([
  ["any", true],
  ["GB", true],
  ["GB-SCT", true],
  ["EU", true],
  ["UK", false],
  ["gb", false],
  ["Scotland", false],
  ["", false],
])("'%s' is a jurisdiction: %s", (code, expected) => {
  expect(isJurisdiction(code)).toBe(expected);
});

test.each([
  ["UK", "GB"],
  ["gb", "GB"],
  ["United States", "US"],
  ["USA", "US"],
  ["Scotland", "GB-SCT"],
  ["Northern Ireland", "GB-NIR"],
  ["worldwide", "any"],
  ["Any", "any"],
  ["our ward", null],
])("'%s' was probably meant to be %s", (written, meant) => {
  expect(jurisdictionMeant(written)).toBe(meant);
});
