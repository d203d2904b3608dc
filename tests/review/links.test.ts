import { describe, expect, test } from "vitest";
import { broken, findingsOf, lineOf, SOUND } from "./card.ts";

describe("an unsafe statement that takes the wrong statements of an element", () => {
  const linked = (text: string) => text.replace("say: [swallow the rinsing water every time] }", "say: [swallow the rinsing water every time], wrong_of: [rinse/rinse] }");
  const given = linked(broken("          - rinse and spit afterwards\n", "          - rinse and spit afterwards\n        incorrect: [leave your mouth as it is]\n"));
  test("which has none is told, at the link", () => {
    const rubric = linked(SOUND);
    expect(findingsOf(rubric)).toEqual([expect.objectContaining({ code: "SW-C31", severity: "warning", line: lineOf(rubric, "wrong_of"), message: "'swallow' takes the wrong statements of 'rinse/rinse', which has none" })]);
  });
  test("which has some is not", () => expect(findingsOf(given)).toEqual([]));
});
