import { expect, test } from "vitest";
import { joinMarks } from "../../../src/cohort/agreement/join.ts";
import { itemsReport } from "../../../src/cohort/items/report.ts";
import { progressReport } from "../../../src/cohort/progress/report.ts";
import { readMarks } from "../../../src/cohort/marks.ts";
import { clusteredDifference, clusteredProportion } from "../../../src/cohort/statistics/clustered-proportion.ts";
import { itemsText } from "../../../src/report/cohort/items.ts";
import type { Content } from "../../../src/scoring/types.ts";
import { record } from "../records.ts";

/** Wuensch's ten students of ten items (see statistics/items.test.ts) as rehearsals, one item more that everybody earns. */
const QUIZ = ["1111110110", "1011011101", "1111011001", "0010001000", "0000010010", "1110111111", "1101110111", "1111111101", "0101111101", "1101101110"];
const COHORT = QUIZ.map((row, i) =>
  record({
    candidate: `C${i}`,
    critical: ["i4"],
    columns: { accent: i < 5 ? "north" : "south" },
    items: Object.fromEntries([...row].map((mark, item): [string, Content] => [`i${item}`, mark === "1" ? "complete" : "absent"])),
  }),
);

test("KR-20 of the station is the one of the worked example, and its error is in points of the per cent total", () => {
  const { reliability } = itemsReport(COHORT, "0").stations[0]!;
  expect(reliability.name).toBe("KR-20");
  expect(reliability.figure.value!.toFixed(3)).toBe(((10 / 9) * (1 - 2.18 / 5.84)).toFixed(3));
  // Totals in per cent have ten times the spread of the raw ones: sd 25.47 by n - 1.
  expect(reliability.errorOfMeasurement.value!).toBeCloseTo(10 * Math.sqrt((5.84 * 10) / 9) * Math.sqrt(1 - reliability.figure.value!), 6);
});

test("proportion earning, critical misses, and items that all or none earn", () => {
  const { items, criticalMissed } = itemsReport(COHORT.map((one) => ({ ...one, items: [...one.items, { ...one.items[0]!, id: "all", label: "All", content: "complete" as const, earned: 1, met: true }] })), "0").stations[0]!;
  expect(items.map(({ earning }) => earning.value)).toEqual([0.7, 0.7, 0.6, 0.7, 0.6, 0.8, 0.7, 0.7, 0.5, 0.6, 1]);
  expect(items.at(-1)).toMatchObject({ everybody: "all", itemTotal: { value: null, why: "all have the same mark for it" } });
  expect(criticalMissed).toMatchObject([{ item: "i4", count: 4 }]);
});

test("an item that often does not count stays out of alpha and is named; a rehearsal with a gap is not in it", () => {
  const gaps = COHORT.map((one, i) => ({ ...one, items: one.items.map((item) => (item.id === "i0" && i < 4 ? { ...item, content: "not-offered" as const } : item.id === "i1" && i === 9 ? { ...item, content: "cannot-tell" as const } : item)) }));
  const { reliability, items } = itemsReport(gaps, "0").stations[0]!;
  expect(reliability).toMatchObject({ leftOut: ["i0"], items: 9, rehearsals: 9 });
  expect(items[0]!.itemTotal).toMatchObject({ value: null });
  expect(items[1]!.contents["cannot-tell"]).toBe(1);
});

test("two versions of a rubric are not thrown together", () => {
  const two = [...COHORT, ...COHORT.map((one) => ({ ...one, key: { ...one.key, attempt: "2" }, rubric: { ...one.rubric, version: 2, hash: "other" } }))];
  expect(itemsReport(two, "0").stations.map(({ rubric, rehearsals }) => [rubric.version, rehearsals])).toEqual([[1, 10], [2, 10]]);
});

test("the examination: Shrout and Fleiss' six targets at four stations give .91 and .62; who missed a station is left out", () => {
  const scores = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]];
  const sat = scores.flatMap((row, i) => row.map((percent, station) => record({ candidate: `C${i}`, station: `s${station}`, items: { a: "complete" }, more: { percent } })));
  const late = record({ candidate: "C0", station: "s0", attempt: "2", items: { a: "complete" }, more: { percent: 100 } });
  const { examination } = itemsReport([...sat, late, record({ candidate: "X", station: "s0", items: { a: "absent" } })], "0");
  expect(examination).toMatchObject({ candidates: 6, leftOut: 1 });
  if ("value" in examination.study) throw new Error("not measurable");
  expect([examination.study.relative.value!.toFixed(2), examination.study.absolute.value!.toFixed(2)]).toEqual(["0.91", "0.62"]);
});

test("by a column: error needs people's marks; with them the rates stand side by side and small groups are flagged", () => {
  const without = itemsReport(COHORT, "0", ["accent"]).groups[0]!;
  expect(without.groups.map(({ value, small, rates }) => [value, small, rates.error.value])).toEqual([["north", true, null], ["south", true, null]]);
  const marks = `candidate,marker,item,content\n${COHORT.map(({ key, items }, i) => `${key.candidate},Kim,i0,${i < 2 ? (items[0]!.content === "absent" ? "complete" : "absent") : items[0]!.content}`).join("\n")}\n`;
  const { groups } = itemsReport(COHORT, "0", ["accent"], joinMarks(COHORT, readMarks(marks, "m.csv")).records).groups[0]!;
  expect(groups.map(({ rates }) => rates.error.value)).toEqual([0.4, 0]);
  expect(itemsReport(COHORT, "0", ["school"]).groups[0]).toMatchObject({ without: 10, groups: [] });
});

test("a share of marks in rehearsals: by hand, and wider than if the marks were alone", () => {
  // Invented: 10 marks each, 0, 2 and 4 wrong. Ratio 0.2, error sqrt(3/2 x (4 + 0 + 4)) / 30 = 0.1155.
  const share = clusteredProportion([{ having: 0, of: 10 }, { having: 2, of: 10 }, { having: 4, of: 10 }]);
  expect([share.value, share.value === null ? null : share.standardError!.toFixed(4)]).toEqual([0.2, "0.1155"]);
  const none = clusteredProportion([{ having: 0, of: 10 }, { having: 0, of: 10 }]);
  expect(none).toMatchObject({ value: 0, interval: { low: 0 } });
  expect(none.value !== null && none.interval!.high).toBeGreaterThan(0.5);
  const far = clusteredDifference([{ having: 9, of: 10 }, { having: 8, of: 10 }, { having: 9, of: 10 }], [{ having: 1, of: 10 }, { having: 2, of: 10 }, { having: 1, of: 10 }]);
  expect(far.value !== null && far.interval!.low).toBeGreaterThan(0);
});

test("the text fits its width and prints no figure that is none", () => {
  for (const cohort of [COHORT, COHORT.slice(0, 1)]) {
    const text = itemsText(itemsReport(cohort, "0", ["accent"]), { width: 60, colour: false, ascii: true });
    expect(text).not.toMatch(/NaN|Infinity|undefined/);
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(60);
  }
});

test("attempts of one candidate are no candidates: the station's figures rest on the first of each", () => {
  const again = COHORT.slice(0, 5).map((one) => ({ ...one, key: { ...one.key, attempt: "2" }, criticalMissed: ["i4"] }));
  const [once, twice] = [COHORT, [...again, ...COHORT]].map((records) => itemsReport(records, "0").stations[0]!);
  expect([twice!.rehearsals, twice!.candidates]).toEqual([15, 10]);
  expect({ ...twice, rehearsals: 10 }).toEqual(once);
});

test("one candidate's three attempts have no reliability between candidates", () => {
  const tries = ["complete", "partial", "absent"].map((content, i) => record({ candidate: "A", attempt: String(i + 1), items: { a: content as Content, b: "complete", c: content as Content } }));
  const { reliability } = itemsReport(tries, "0").stations[0]!;
  expect(reliability.figure).toMatchObject({ value: null, why: "fewer than two candidates" });
  expect(reliability.errorOfMeasurement.value).toBeNull();
});

test("rates of a group take the candidate as the unit: the same rehearsal twice does not narrow the interval", () => {
  const twice = [...COHORT, ...COHORT.map((one) => ({ ...one, key: { ...one.key, attempt: "2" } }))];
  const rate = (records: typeof COHORT) => itemsReport(records, "0", ["accent"]).groups[0]!.groups[0]!.rates.missed;
  const [once, double] = [rate(COHORT), rate(twice)];
  expect(double.value !== null && double.interval).toEqual(once.value !== null && once.interval);
});

test("two stations that nobody sat both of are two stations: what is missing is candidates", () => {
  const apart = [record({ candidate: "A", station: "pen", items: { a: "complete" } }), record({ candidate: "B", station: "drops", items: { a: "absent" } })];
  expect(itemsReport(apart, "0").examination).toMatchObject({ stations: ["drops", "pen"], candidates: 0, study: { value: null, why: "fewer than two candidates sat every station" } });
});

/** Item `x` of each candidate as given, and eight items of which so many are complete. */
const ranked = (x: Content[], others = 8) => x.map((content, i) => record({ candidate: `C${i}`, items: { x: content, ...Object.fromEntries(Array.from({ length: others }, (_, item): [string, Content] => [`i${item}`, item < i ? "complete" : "absent"])) } }));
const itemsPage = (records: Parameters<typeof itemsReport>[0]) => itemsText(itemsReport(records, "0"), { width: 80, colour: false, ascii: true }).replace(/\s+/g, " ");

test("an item goes against the rest only when its interval lies below nought", () => {
  expect(itemsPage(ranked(["complete", "complete", "complete", "complete", "absent", "absent", "absent", "absent"]))).toContain("against the rest Item x:");
  // r = -0.22 of eight candidates: the interval reaches from -0.8 to 0.6.
  expect(itemsPage(ranked(["complete", "absent", "complete", "absent", "complete", "absent", "complete", "absent"]))).not.toContain("against the rest");
});

test("critical misses that listening may undo are told apart in the items, in progress and in a candidate's next steps", () => {
  const [first, ...others] = COHORT;
  const doubted = { ...COHORT[3]!, criticalDoubted: ["i4"] };
  expect(first!.criticalMissed).toEqual([]);
  const records = [first!, ...others.filter(({ key }) => key.candidate !== "C3"), doubted];
  expect(itemsReport(records, "0").stations[0]!.criticalMissed).toMatchObject([{ item: "i4", count: 4, toConfirm: 1 }]);
  expect(itemsPage(records)).toMatch(/critical, missed 4 of 10, 40% \([^)]*\), 1 of them to be confirmed by listening: Item i4/);
  const progress = progressReport([doubted], "0");
  expect(progress.attempts[0]).toMatchObject({ criticalMissed: ["Item i4"], criticalDoubted: ["Item i4"] });
  expect(progress.practise[0]!.why).toBe("critical item, to be confirmed by listening to the last attempt");
});

test("groups that sat other stations are not put side by side without a word", () => {
  const at = (station: string, accent: string, n: number) => Array.from({ length: n }, (_, i) => record({ candidate: `${accent}${station}${i}`, station, columns: { accent }, items: { a: "complete" } }));
  const page = (records: Parameters<typeof itemsReport>[0]) => itemsText(itemsReport(records, "0", ["accent"]), { width: 100, colour: false, ascii: true }).replace(/\s+/g, " ");
  expect(page([...at("pen", "north", 8), ...at("drops", "north", 2), ...at("pen", "south", 2), ...at("drops", "south", 8)])).toContain("north: drops 2, pen 8; south: drops 8, pen 2): a difference may be the stations'");
  expect(page([...at("pen", "north", 5), ...at("drops", "north", 5), ...at("pen", "south", 5), ...at("drops", "south", 5)])).not.toContain("same stations");
});

test("of one rehearsal nobody says that all or none earn an item", () => {
  const everybody = (records: typeof COHORT) => itemsReport(records, "0").stations[0]!.items.map((item) => item.everybody);
  expect(everybody(COHORT.slice(0, 1))).toEqual(Array(10).fill(null));
  expect(everybody([0, 7].map((i) => COHORT[i]!)).filter((each) => each === "all")).toHaveLength(7);
});

test("of two groups that differ it is told once: the second says the same with the other sign", () => {
  const group = (accent: string, missed: number) => Array.from({ length: 12 }, (_, i) => record({ candidate: `${accent}${i}`, columns: { accent }, items: { a: i < missed ? "absent" : "complete", b: "complete" } }));
  const differing = (...records: ReturnType<typeof group>[]) => itemsReport(records.flat(), "0", ["accent"]).groups[0]!.differing;
  expect(differing(group("north", 1), group("south", 11))).toEqual([{ value: "north", rate: "missed" }]);
  expect(differing(group("north", 1), group("south", 11), group("west", 11)).map(({ value }) => value)).toContain("north");
});
