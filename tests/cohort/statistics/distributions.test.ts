import { probit } from "simple-statistics";
import { expect, test } from "vitest";
import { binomialAtMost, fQuantile, normalQuantile, tQuantile } from "../../../src/cohort/statistics/distributions.ts";

// NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7 (tables of the normal, t and F distributions);
// values from memory of the printed tables, and the same to 7 digits from SciPy 1.17.1 (norm.ppf, t.ppf, f.ppf).
test("normal, t and F quantiles are those of published tables", () => {
  expect(normalQuantile(0.975)).toBeCloseTo(1.95996398, 7);
  expect(normalQuantile(0.995)).toBeCloseTo(2.5758293, 7);
  expect(normalQuantile(1e-6)).toBeCloseTo(-4.75342431, 7);
  expect(tQuantile(0.975, 1).toFixed(3)).toBe("12.706");
  expect(tQuantile(0.975, 10).toFixed(3)).toBe("2.228");
  expect(tQuantile(0.975, 16).toFixed(3)).toBe("2.120");
  expect(tQuantile(0.995, 3).toFixed(3)).toBe("5.841");
  expect(tQuantile(0.975, 1000)).toBeCloseTo(1.96233908, 6);
  expect(fQuantile(0.95, 4, 20).toFixed(3)).toBe("2.866");
  expect(fQuantile(0.95, 1, 1).toFixed(1)).toBe("161.4");
  expect(fQuantile(0.975, 5, 18)).toBeCloseTo(3.381967805875243, 6);
  expect(fQuantile(0.975, 5, 15)).toBeCloseTo(3.5764153492790607, 6);
  expect(fQuantile(0.975, 5, 2.7)).toBeCloseTo(18.379873683686498, 5);
  expect(fQuantile(0.975, 999, 4995)).toBeCloseTo(1.0991636515928216, 6);
});

test("the other package's normal quantile is off in the third digit, which is why it is not used", () => {
  expect(Math.abs(probit(0.975) - 1.95996398)).toBeGreaterThan(0.001);
});

test("ten coins show at most two heads with 56 chances of 1024", () => {
  expect(binomialAtMost(2, 10, 0.5)).toBeCloseTo(56 / 1024, 10);
});
