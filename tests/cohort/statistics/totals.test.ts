import { expect, test } from "vitest";
import { limitsOfAgreement } from "../../../src/cohort/statistics/bland-altman.ts";
import { cronbachAlpha } from "../../../src/cohort/statistics/cronbach-alpha.ts";
import { generalizability } from "../../../src/cohort/statistics/generalizability.ts";
import { intraclassCorrelations } from "../../../src/cohort/statistics/intraclass.ts";
import { meanSquares } from "../../../src/cohort/statistics/mean-squares.ts";
import { error, interval, printed } from "./figures.ts";

/** Shrout and Fleiss 1979, table 2, page 423: four judges on six targets. */
const SIX_TARGETS = [
  [9, 2, 5, 8],
  [6, 1, 3, 2],
  [8, 4, 6, 8],
  [7, 1, 2, 6],
  [10, 5, 6, 9],
  [6, 2, 4, 7],
];

test("Shrout and Fleiss 1979, table 3: mean squares 11.24, 6.26, 32.49 and 1.02", () => {
  const { between, within, columns, error: left } = meanSquares(SIX_TARGETS);
  expect([between, within, columns, left].map((square) => square.toFixed(2))).toEqual(["11.24", "6.26", "32.49", "1.02"]);
});

test("Shrout and Fleiss 1979, table 4, page 424: .17 .29 .71 .44 .62 .91", () => {
  const icc = intraclassCorrelations(SIX_TARGETS);
  expect((["ICC(1,1)", "ICC(2,1)", "ICC(3,1)", "ICC(1,k)", "ICC(2,k)", "ICC(3,k)"] as const).map((form) => printed(icc[form], 2))).toEqual(["0.17", "0.29", "0.71", "0.44", "0.62", "0.91"]);
});

test("the R package psych prints these limits for the same data (from memory of its help page)", () => {
  const icc = intraclassCorrelations(SIX_TARGETS);
  expect(interval(icc["ICC(1,1)"], 3)[0]).toBe("-0.133");
  expect(interval(icc["ICC(1,1)"], 2)[1]).toBe("0.72");
  expect(interval(icc["ICC(2,1)"], 3)[0]).toBe("0.019");
  expect(interval(icc["ICC(2,1)"], 2)[1]).toBe("0.76");
  expect(interval(icc["ICC(3,1)"], 3)[0]).toBe("0.342");
  expect(interval(icc["ICC(3,1)"], 2)[1]).toBe("0.95");
  expect(interval(icc["ICC(1,k)"], 3)[0]).toBe("-0.884");
  expect(interval(icc["ICC(2,k)"], 3)[0]).toBe("0.071");
  expect(interval(icc["ICC(3,k)"], 3)[0]).toBe("0.676");
  expect(interval(icc["ICC(3,k)"], 2)[1]).toBe("0.99");
});

test("Shrout and Fleiss 1979, page 426: case 3 averaged is Cronbach's alpha; and the reliability of the examination relative and absolute is cases 3 and 2", () => {
  expect(printed(cronbachAlpha(SIX_TARGETS), 2)).toBe("0.91");
  expect(interval(cronbachAlpha(SIX_TARGETS), 3)[0]).toBe("0.676");
  const study = generalizability(SIX_TARGETS);
  if ("value" in study) throw new Error(study.why);
  expect(printed(study.relative, 2)).toBe("0.91");
  expect(printed(study.absolute, 2)).toBe("0.62");
  expect(printed(study.oneStation, 2)).toBe("0.71");
  // The same coefficients as ICC(3,k), ICC(2,k) and ICC(3,1), and so their intervals.
  const { "ICC(3,k)": mixed, "ICC(2,k)": random, "ICC(3,1)": one } = intraclassCorrelations(SIX_TARGETS);
  expect([study.relative, study.absolute, study.oneStation].map((figure) => interval(figure, 3))).toEqual([mixed, random, one].map((figure) => interval(figure, 3)));
  // 0.8 / 0.2 times 1.02 over (11.24 - 1.02) / 4 is 1.6: two stations would do for ranking.
  expect(study.stationsNeeded).toBe(2);
});

test("a coefficient of nought has an interval from nought, and stations that do not differ leave phi the relative coefficient", () => {
  // Candidates differ less than the rest: their variance is set to nought.
  const noise = generalizability([[10, 20], [20, 10], [12, 19], [19, 11]]);
  if ("value" in noise) throw new Error(noise.why);
  expect(noise.relative).toMatchObject({ value: 0, interval: { low: 0 } });
  // Means of both stations 40.
  const level = generalizability([[10, 12], [30, 26], [50, 49], [70, 73]]);
  if ("value" in level) throw new Error(level.why);
  expect(level.absolute).toEqual(level.relative);
});

test("totals that do not differ, one marker, or one candidate are not measurable", () => {
  expect(intraclassCorrelations([[5, 5], [5, 5]])["ICC(2,1)"].value).toBeNull();
  expect(intraclassCorrelations([[5], [6]])["ICC(2,1)"].value).toBeNull();
  expect(intraclassCorrelations([[5, 6]])["ICC(2,1)"].value).toBeNull();
  expect(generalizability([[1, 2], [1, 2]])).toMatchObject({ value: null });
});

test("full agreement of totals is 1 and claims no interval", () => {
  expect(intraclassCorrelations([[1, 1], [2, 2], [5, 5]])["ICC(2,1)"]).toMatchObject({ value: 1, interval: null });
});

/** Bland and Altman 1986, table, page 307: first readings of the large and the mini peak flow meter, l/min (data as the R package blandr holds them). */
const LARGE = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];

test("Bland and Altman 1986, pages 308-309: mean difference -2.1, sd 38.8, limits -79.7 and 75.5, with their intervals", () => {
  const limits = limitsOfAgreement(LARGE.map((value, i) => [value, MINI[i]!] as const), 2);
  if (!("bias" in limits)) throw new Error(limits.why);
  expect(printed(limits.bias, 1)).toBe("-2.1");
  expect(limits.standardDeviation.toFixed(1)).toBe("38.8");
  expect(error(limits.bias, 1)).toBe("9.4");
  expect(error(limits.lower, 1)).toBe("16.3");
  expect(interval(limits.bias, 0)).toEqual(["-22", "18"]);
  // The paper works on with its rounded figures (-2.1 -/+ 2 x 38.8; then 2.12 x 16.3), so its last digit may be off by one or two.
  expect([-2.1 - 2 * 38.8, -2.1 + 2 * 38.8].map((limit) => limit.toFixed(1))).toEqual(["-79.7", "75.5"]);
  const near = (figure: string, value: number) => expect(Math.abs(Number(figure) - value)).toBeLessThan(0.25);
  near(printed(limits.lower, 2), -79.7);
  near(printed(limits.upper, 2), 75.5);
  near(interval(limits.lower, 2)[0], -114.3);
  near(interval(limits.lower, 2)[1], -45.1);
  near(interval(limits.upper, 2)[0], 40.9);
  near(interval(limits.upper, 2)[1], 110.1);
});

test("one pair of totals has no limits", () => {
  expect(limitsOfAgreement([[1, 2]])).toMatchObject({ value: null });
});
