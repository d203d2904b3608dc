import { expect, test } from "vitest";
import { fleissKappa } from "../../../src/cohort/statistics/fleiss-kappa.ts";
import { gwetAc1, gwetAc1OfTable } from "../../../src/cohort/statistics/gwet-ac1.ts";
import { krippendorffAlpha } from "../../../src/cohort/statistics/krippendorff-alpha.ts";
import { countsOf, error, interval, printed, tableOf } from "./figures.ts";

/** Fleiss 1971, table 1, page 379: 30 patients, six diagnoses each, as the tests of statsmodels and the package irr hold it. */
const DIAGNOSES = [
  "444444", "222555", "233335", "555555", "222444", "113333", "333355", "113334", "114444", "555555",
  "144444", "124444", "222333", "144444", "224445", "333335", "111455", "111112", "224444", "133555",
  "555555", "244444", "224555", "114444", "144445", "222224", "111155", "224444", "133333", "555555",
].map((marks) => [...marks].map(Number));

/** Krippendorff 2011 and Content Analysis chapter 12; Gwet's irrCAC has it as cac.raw4raters, with all figures below. */
const FOUR_OBSERVERS: (number | null)[][] = [
  [1, 1, null, 1],
  [2, 2, 3, 2],
  [3, 3, 3, 3],
  [3, 3, 3, 3],
  [2, 2, 2, 2],
  [1, 2, 3, 4],
  [4, 4, 4, 4],
  [1, 1, 2, 1],
  [2, 2, 2, 2],
  [null, 5, 5, 5],
  [null, null, 1, 1],
  [null, null, 3, null],
];

test("Fleiss 1971, table 1 and page 381: kappa .430 (irr: 0.4302445)", () => {
  const kappa = fleissKappa(countsOf(DIAGNOSES, 5));
  expect(printed(kappa, 3)).toBe("0.430");
  expect(printed(kappa, 7)).toBe("0.4302445");
});

test("Gwet's irrCAC on the first 15 of those patients: AC1 0.4448 (0.0842), Fleiss' kappa 0.4139 (0.0812), with limits", () => {
  const counts = countsOf(DIAGNOSES.slice(0, 15), 5);
  const ac1 = gwetAc1(counts);
  expect([printed(ac1, 7), error(ac1, 8)]).toEqual(["0.4448007", "0.08418757"]);
  expect(interval(ac1, 3)).toEqual(["0.264", "0.625"]);
  const kappa = fleissKappa(counts);
  expect([printed(kappa, 7), error(kappa, 8)]).toEqual(["0.4139265", "0.08119291"]);
  expect(interval(kappa, 3)).toEqual(["0.240", "0.588"]);
});

test("Gwet's irrCAC with missing marks, four observers: AC1 0.77544 (0.14295), Fleiss' kappa 0.76117 (0.15302)", () => {
  const counts = countsOf(FOUR_OBSERVERS, 5);
  const [ac1, kappa] = [gwetAc1(counts), fleissKappa(counts)];
  expect([printed(ac1, 5), error(ac1, 5)]).toEqual(["0.77544", "0.14295"]);
  expect(interval(ac1, 3)).toEqual(["0.461", "1.000"]);
  expect([printed(kappa, 5), error(kappa, 5)]).toEqual(["0.76117", "0.15302"]);
});

test("Gwet's irrCAC on two abstractors: AC1 0.8493305, error 0.0432", () => {
  const pairs = [...Array<number[]>(13).fill([1, 1]), ...Array<number[]>(20).fill([2, 2]), ...Array<number[]>(7).fill([2, 3]), ...Array<number[]>(4).fill([3, 2]), ...Array<number[]>(56).fill([3, 3])];
  const ac1 = gwetAc1(countsOf(pairs, 3));
  expect(printed(ac1, 7)).toBe("0.8493305");
  expect(printed(gwetAc1OfTable(tableOf([[13, 0, 0], [0, 20, 7], [0, 4, 56]])), 7)).toBe("0.8493305");
  // For a table of two markers irrCAC divides by n, for raw marks by n - 1; this always by n - 1.
  expect((Number(error(ac1, 8)) * Math.sqrt(99 / 100)).toFixed(4)).toBe("0.0432");
  expect(interval(ac1, 2)).toEqual(["0.76", "0.94"]);
});

test("Krippendorff's four observers and twelve units: alpha nominal .743, ordinal .815, interval .849", () => {
  const counts = countsOf(FOUR_OBSERVERS, 5);
  expect(printed(krippendorffAlpha(counts, "nominal"), 3)).toBe("0.743");
  expect(printed(krippendorffAlpha(counts, "nominal"), 5)).toBe("0.74342");
  expect(printed(krippendorffAlpha(counts, "ordinal"), 3)).toBe("0.815");
  expect(printed(krippendorffAlpha(counts, "interval", { values: [1, 2, 3, 4, 5] }), 3)).toBe("0.849");
});

test("the resampled interval holds the value, is the same each time and narrows with more units", () => {
  const width = (units: number[][]) => {
    const alpha = krippendorffAlpha(countsOf(units, 5), "nominal");
    if (alpha.value === null || alpha.interval === null) throw new Error("no interval");
    expect(alpha.interval.low).toBeLessThan(alpha.value);
    expect(alpha.interval.high).toBeGreaterThan(alpha.value);
    expect(krippendorffAlpha(countsOf(units, 5), "nominal")).toEqual(alpha);
    return alpha.interval.high - alpha.interval.low;
  };
  expect(width([...DIAGNOSES, ...DIAGNOSES, ...DIAGNOSES, ...DIAGNOSES])).toBeLessThan(0.7 * width(DIAGNOSES));
});

test("nobody but one marker, or one category throughout, is not measurable", () => {
  const one = [[1, 0], [0, 1]];
  const same = [[3, 0], [2, 0]];
  for (const figure of [fleissKappa(one), krippendorffAlpha(one, "nominal"), fleissKappa(same), krippendorffAlpha(same, "ordinal")]) expect(figure.value).toBeNull();
  // AC1 keeps its meaning where kappa loses it: chance agreement is held to be nought when one category is all there is.
  expect(gwetAc1(same).value).toBe(1);
});
