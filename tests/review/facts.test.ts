import { describe, expect, test } from "vitest";
import { broken, findingsOf, lineOf } from "./card.ts";

describe("a fact holds where the rubric's guidance does", () => {
  const where = (rubric: string, fact: string) => broken("jurisdiction: [any]\nscenario", `jurisdiction: [${rubric}]\nscenario`).replace("fact: { source: guideline, jurisdiction: [any]", `fact: { source: guideline, jurisdiction: [${fact}]`);

  test("one of another country alone is told", () => {
    const text = where("GB", "US, CA");
    expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C30", severity: "warning", line: lineOf(text, "fact:"), message: "the fact of 'shake' holds in US, CA, and the rubric follows GB" })]);
  });

  test.each([["GB-SCT", "GB-WLS"], ["GB", "EU"], ["GB", "FR"]])("so is, of a rubric of %s, a fact of %s", (rubric, fact) => {
    expect(findingsOf(where(rubric, fact)).map(({ code }) => code)).toEqual(["SW-C30"]);
  });

  test.each([["GB", "GB, US"], ["GB", "any"], ["any", "US"], ["GB-SCT", "GB"], ["GB", "GB-SCT"], ["FR", "EU"], ["EU", "FR"]])("a rubric of %s may rest on a fact of %s", (rubric, fact) => {
    expect(findingsOf(where(rubric, fact))).toEqual([]);
  });
});
