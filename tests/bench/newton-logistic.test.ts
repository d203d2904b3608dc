import { describe, expect, test } from "vitest";
import { fitLine, valueOf, type LineCase } from "./newton-logistic.ts";

/** Hours of study and whether the examination was passed: the worked example of Wikipedia's article "Logistic regression", read off from memory. */
const HOURS = [0.5, 0.75, 1, 1.25, 1.5, 1.75, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 4, 4.25, 4.5, 4.75, 5, 5.5];
const PASSED = [0, 0, 0, 0, 0, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 1, 1, 1, 1, 1];

const cases = (known: number): LineCase[] => HOURS.map((hours, place) => ({ words: new Map([["hours", hours]]), known, truth: PASSED[place] === 1 }));

describe("logistic regression over words", () => {
  test("gives the published line where the penalty is next to nothing: intercept -4.0777, slope 1.5046", () => {
    const line = fitLine(cases(0), 1e-6);
    expect(line.words.get("hours")).toBeCloseTo(1.5046, 3);
    expect(line.start).toBeCloseTo(-4.0777, 3);
  });

  test("what is known beforehand need not be learnt: the start is so much less", () => {
    const line = fitLine(cases(-4), 1e-6);
    expect(line.start).toBeCloseTo(-0.0777, 3);
    expect(valueOf(line, new Map([["hours", 2]]))).toBeCloseTo(-0.0777 + 2 * 1.5046, 2);
  });

  test("a word that only what is so has gets a weight that the penalty bounds", () => {
    const marked: LineCase[] = ["yes", "yes", "no", "no"].map((word) => ({ words: new Map([[word, 1]]), known: 0, truth: word === "yes" }));
    const [loose, tight] = [fitLine(marked, 0.1), fitLine(marked, 10)];
    expect(loose.words.get("yes")!).toBeGreaterThan(tight.words.get("yes")!);
    expect(tight.words.get("yes")!).toBeGreaterThan(0);
    // At the lowest point the slope is nought: 2(1 - p) = ridge x weight, with p at the weight (the start stays at nought).
    const weight = loose.words.get("yes")!;
    expect(2 * (1 - 1 / (1 + Math.exp(-weight)))).toBeCloseTo(0.1 * weight, 3);
  });
});
