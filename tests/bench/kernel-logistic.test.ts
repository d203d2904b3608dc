import { describe, expect, test } from "vitest";
import { fitKernel } from "./kernel-logistic.ts";

/** Hours of study and whether the examination was passed: the worked example of Wikipedia's article "Logistic regression", read off from memory. */
const HOURS = [0.5, 0.75, 1, 1.25, 1.5, 1.75, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 4, 4.25, 4.5, 4.75, 5, 5.5];
const PASSED = [0, 0, 0, 0, 0, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 1, 1, 1, 1, 1];

describe("logistic regression in its dual form", () => {
  test("gives the published line where the penalty is next to nothing: intercept -4.0777, slope 1.5046", () => {
    const gram = HOURS.map((one) => Float64Array.from(HOURS, (other) => one * other + 1));
    const times = fitKernel(gram, PASSED.map((passed) => passed === 1), 1e-6);
    const slope = times.reduce((sum, time, place) => sum + time * HOURS[place]!, 0);
    const intercept = times.reduce((sum, time) => sum + time, 0);
    expect(slope).toBeCloseTo(1.5046, 3);
    expect(intercept).toBeCloseTo(-4.0777, 3);
  });
});
