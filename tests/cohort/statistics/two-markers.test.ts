import { expect, test } from "vitest";
import { cohenKappa, cohenSimpleStandardError, linearWeights, quadraticWeights, type AgreementWeights } from "../../../src/cohort/statistics/cohen-kappa.ts";
import { pabak } from "../../../src/cohort/statistics/pabak.ts";
import { percentAgreement } from "../../../src/cohort/statistics/percent-agreement.ts";
import { error, interval, printed, tableOf } from "./figures.ts";

test("Cohen 1960, table 2b, page 45: kappa .492, standard error .055", () => {
  const table = tableOf([
    [88, 14, 18],
    [10, 40, 10],
    [2, 6, 12],
  ]);
  expect(printed(percentAgreement(table), 2)).toBe("0.70");
  expect(printed(cohenKappa(table), 3)).toBe("0.492");
  // The interval .384 to .600 of the same page rests on this error (error and limits from memory of the page).
  const simple = cohenSimpleStandardError(table);
  expect(printed(simple, 3)).toBe("0.055");
  expect([0.492 - 1.96 * 0.055, 0.492 + 1.96 * 0.055].map((limit) => limit.toFixed(3))).toEqual(["0.384", "0.600"]);
});

test("Cohen 1968, the same cases with his weights of disagreement 1, 3 and 6: weighted kappa .348", () => {
  const disagreement = [
    [0, 1, 3],
    [1, 0, 6],
    [3, 6, 0],
  ];
  const weights: AgreementWeights = (i, j) => 1 - disagreement[i]![j]! / 6;
  // The proportions .44 .07 .09 / .05 .20 .05 / .01 .03 .06 of 200 cases (as the R package psych gives them).
  const table = tableOf([
    [88, 14, 18],
    [10, 40, 10],
    [2, 6, 12],
  ]);
  expect(printed(cohenKappa(table, weights), 3)).toBe("0.348");
});

test("a SAS printout kept by statsmodels' tests: kappa .4842 and linear weighted kappa .4701, with errors and limits by Fleiss, Cohen and Everitt", () => {
  const table = tableOf([
    [0, 4, 1],
    [0, 8, 0],
    [0, 1, 5],
  ]);
  expect(printed(cohenKappa(table), 4)).toBe("0.4842");
  expect(error(cohenKappa(table), 4)).toBe("0.1380");
  expect(interval(cohenKappa(table), 4)).toEqual(["0.2137", "0.7547"]);
  const weighted = cohenKappa(table, linearWeights);
  expect(printed(weighted, 4)).toBe("0.4701");
  expect(error(weighted, 4)).toBe("0.1457");
  expect(interval(weighted, 4)).toEqual(["0.1845", "0.7558"]);
});

test("the R package irr (0.84) on its anxiety data, markers 2 and 3: -0.006289, linear 0.1459075, quadratic 0.2520325", () => {
  // irr leaves the category out that nobody used (5).
  const used = [1, 2, 3, 4, 6];
  // The columns as statsmodels lists them: marker by marker, 20 each.
  const anxiety = [3, 3, 3, 4, 5, 5, 2, 3, 5, 2, 2, 6, 1, 5, 2, 2, 1, 2, 4, 3, 3, 6, 4, 6, 2, 4, 2, 4, 3, 3, 2, 3, 3, 3, 2, 2, 1, 3, 3, 4, 2, 1, 4, 4, 3, 2, 1, 6, 1, 1, 1, 2, 3, 3, 1, 1, 3, 3, 2, 2];
  const [b, c] = [anxiety.slice(20, 40), anxiety.slice(40)];
  const table = tableOf(used.map((x) => used.map((y) => b.filter((mark, unit) => mark === x && c[unit] === y).length)));
  expect(printed(cohenKappa(table), 9)).toBe("-0.006289308");
  expect(printed(cohenKappa(table, linearWeights), 7)).toBe("0.1459075");
  expect(printed(cohenKappa(table, quadraticWeights), 7)).toBe("0.2520325");
});

test("Gwet's irrCAC on cont3x3abstractors (Handbook, 4th edition): kappa 0.7964, Brennan-Prediger 0.835 with error 0.04693", () => {
  const table = tableOf([
    [13, 0, 0],
    [0, 20, 7],
    [0, 4, 56],
  ]);
  expect(printed(cohenKappa(table), 7)).toBe("0.7964094");
  expect(printed(pabak(table), 3)).toBe("0.835");
  // irrCAC divides by n - 1 where this divides by n: the third digit is the same.
  expect(error(pabak(table), 3)).toBe("0.047");
});

test("Feinstein and Cicchetti 1990: 85% agreement may be kappa .70 or .32, and PABAK is .70 for both", () => {
  // Journal of Clinical Epidemiology 43, 543-549; the two tables from memory.
  const even = tableOf([
    [40, 9],
    [6, 45],
  ]);
  const skewed = tableOf([
    [80, 10],
    [5, 5],
  ]);
  expect([printed(cohenKappa(even), 2), printed(cohenKappa(skewed), 2)]).toEqual(["0.70", "0.32"]);
  expect([printed(pabak(even), 2), printed(pabak(skewed), 2)]).toEqual(["0.70", "0.70"]);
});

test("what has no meaning is not a number: one category throughout, one unit, none", () => {
  expect(cohenKappa(tableOf([[9, 0], [0, 0]]))).toMatchObject({ value: null, why: expect.stringContaining("one and the same category") });
  expect(cohenKappa(tableOf([[1, 0], [0, 0]]))).toMatchObject({ value: null, n: 1 });
  expect(percentAgreement(tableOf([[0, 0], [0, 0]]))).toMatchObject({ value: null });
});

test("full agreement has kappa 1 and claims no interval of no width", () => {
  expect(cohenKappa(tableOf([[5, 0], [0, 4]]))).toMatchObject({ value: 1, standardError: null, interval: null });
});
