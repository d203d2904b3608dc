import { expect, test } from "vitest";
import { joinMarks } from "../../../src/cohort/agreement/join.ts";
import { agreementReport } from "../../../src/cohort/agreement/report.ts";
import { readMarks } from "../../../src/cohort/marks.ts";
import { agreementText } from "../../../src/report/cohort/agreement.ts";
import { record } from "../records.ts";

/* Invented marks, small enough to count by hand. */
const RECORDS = [
  record({ candidate: "A", items: { wash: "complete", dose: "absent", needle: "cannot-tell" }, critical: ["dose"] }),
  record({ candidate: "B", items: { wash: "complete", dose: "complete", needle: "partial" }, critical: ["dose"] }),
];
const CSV = `candidate,marker,item,content
A,Kim,wash,complete
,,dose,complete
,,needle,complete
,,overall:global,4
B,Kim,wash,complete
,,dose,complete
,,needle,partial
,,overall:global,2
A,Lee,wash,absent
,,dose,complete
B,Lee,wash,complete
`;
const joined = joinMarks(RECORDS, readMarks(CSV, "marks.csv"));
const report = agreementReport(joined, "0", 0);

test("tool beside Kim: of six marks one is undecided by the tool, four of five agree", () => {
  const { measures } = report.overall.pairs.find(({ first, second }) => first === "saidwell" && second === "Kim")!;
  expect(measures.n).toBe(5);
  expect(measures.undecided).toEqual({ first: 1, second: 0 });
  expect(measures.percent.value).toBeCloseTo(0.8, 12);
  // Four categories: (4 x 0.8 - 1) / 3.
  expect(measures.pabak.value).toBeCloseTo(2.2 / 3, 12);
  // Rows complete 3, partial 1, absent 1; columns complete 4, partial 1: pe = (12 + 1) / 25.
  expect(measures.kappa.value).toBeCloseTo((0.8 - 13 / 25) / (1 - 13 / 25), 12);
});

test("with two rehearsals there is no interval over all items, because there is nothing to draw from", () => {
  for (const { measures } of report.overall.pairs) expect(measures.percent).toMatchObject({ interval: null });
});

test("disagreements come critical first, with every marker and where to listen", () => {
  expect(report.disagreements.map(({ key, item }) => [key.candidate, item])).toEqual([["A", "dose"], ["A", "wash"]]);
  expect(report.disagreements[1]).toMatchObject({ tool: "complete", people: [{ marker: "Kim", content: "complete" }, { marker: "Lee", content: "absent" }], at: [{ time: 65 }] });
});

test("wording: who differs is told apart", () => {
  const of = (item: string) => report.wording.find((need) => need.item === item)!;
  expect(of("dose")).toMatchObject({ whose: "tool", people: { differ: 0, of: 1 }, tool: { differ: 2, of: 3 } });
  expect(of("wash")).toMatchObject({ whose: "both", people: { differ: 1, of: 2 } });
  expect(report.wording.some(({ item }) => item === "needle")).toBe(false);
});

test("wording: where the tool differs from people far more often than they from one another, its phrases need work", () => {
  // Of 20 rehearsals people differ in three; the tool finds the item in none, where they agree that it was said in 17.
  const twenty = Array.from({ length: 20 }, (_, i) => record({ candidate: `W${i}`, items: { a: "absent" } }));
  const lines = twenty.map(({ key }, i) => `${key.candidate},Kim,a,complete\n${key.candidate},Lee,a,${i < 3 ? "absent" : "complete"}`).join("\n");
  const own = agreementReport(joinMarks(twenty, readMarks(`candidate,marker,item,content\n${lines}\n`, "m.csv")), "0", 0);
  expect(own.wording).toMatchObject([{ whose: "tool", people: { differ: 3, of: 20 }, tool: { differ: 37, of: 40 } }]);
  expect(agreementText(own, { width: 200, colour: false, ascii: true }).replace(/\s+/g, " ")).toContain("people differ less from one another than the tool from them: its phrases find too little or too much");
});

test("disagreements of all people with the tool come before those of people among themselves", () => {
  const two = ["A", "B"].map((candidate) => record({ candidate, items: { a: "complete" } }));
  const lines = "A,Kim,a,complete\nA,Lee,a,absent\nB,Kim,a,absent\nB,Lee,a,absent";
  const own = agreementReport(joinMarks(two, readMarks(`candidate,marker,item,content\n${lines}\n`, "m.csv")), "0", 0);
  expect(own.disagreements.map(({ key }) => key.candidate)).toEqual(["B", "A"]);
});

/** Five invented rehearsals of four items; the tool finds three, three, two, two and one of them. */
const FIVE = [3, 3, 2, 2, 1].map((said, i) => record({ candidate: `T${i}`, items: Object.fromEntries(["a", "b", "c", "d"].map((id, place) => [id, place < said ? "complete" : "absent"])) }));
const totalsOf = (lines: string) => agreementReport(joinMarks(FIVE, readMarks(`candidate,marker,item,content\n${lines}\n`, "m.csv")), "0", 0).totals;
/** All four items of a rehearsal, so many complete. */
const marked = (marker: string, candidate: string, said: number) => ["a", "b", "c", "d"].map((id, place) => `${candidate},${marker},${id},${place < said ? "complete" : "absent"}`).join("\n");
const bias = (totals: ReturnType<typeof totalsOf>, second: string, basis = "from marks") => {
  const found = totals.limits.find((pair) => pair.first === "saidwell" && pair.second === second && pair.basis === basis)!;
  return "bias" in found.limits ? { n: found.n, bias: found.limits.bias.value } : { n: found.n, why: found.limits.why };
};
const KIM = [4, 3, 3, 2, 1].map((said, i) => marked("Kim", `T${i}`, said)).join("\n");

test("totals are worked out in one way from what both decided, or taken as given", () => {
  // From marks: differences -25, 0, -25, 0, 0.
  expect(bias(totalsOf(KIM), "Kim")).toEqual({ n: 5, bias: expect.closeTo(-10, 9) });
  const given = totalsOf([60, 70, 50, 50, 20].map((total, i) => `T${i},Kim,overall:total,${total}`).join("\n"));
  // Tool 75, 75, 50, 50, 25: differences 15, 5, 0, 0, 5.
  expect([given.basis, bias(given, "Kim", "given")]).toEqual(["given", { n: 5, bias: expect.closeTo(5, 9) }]);
  expect(given.limits).toHaveLength(1);
});

test("a marker who marked one rehearsal takes nothing from the others' totals", () => {
  const alone = totalsOf(KIM);
  const helped = totalsOf(`${KIM}\n${marked("Lee", "T0", 4)}`);
  expect(bias(helped, "Kim")).toEqual(bias(alone, "Kim"));
  expect(helped.n).toBe(1);
  expect(bias(helped, "Lee")).toEqual({ n: 1, why: "only 1 rehearsal has a total of both, and below 5 the figures say nothing" });
  for (const { figure } of helped.intraclass) expect(figure).toMatchObject({ value: null, why: expect.stringContaining("only 1 rehearsal has a total of every marker") });
});

test("one total that was given stands beside those from marks, and neither drops the other", () => {
  const both = totalsOf(`${KIM}\nT0,Kim,overall:total,90`);
  expect([both.basis, bias(both, "Kim"), bias(both, "Kim", "given").n]).toEqual(["from marks", bias(totalsOf(KIM), "Kim"), 1]);
});

test("marks of nobody, of no such item, or of an unclear attempt are left out and told with lines", () => {
  const twice = [...RECORDS, record({ candidate: "B", attempt: "2", items: { wash: "absent" } })];
  const { findings, records } = joinMarks(twice, readMarks("candidate,marker,item,content\nZ,Kim,wash,complete\nA,Kim,washing,complete\nB,Kim,wash,complete\nA,Kim,wash,complete\n", "m.csv"));
  expect(findings.map(({ line, message }) => `${line} ${message}`)).toEqual([
    expect.stringContaining("2 no result is of the candidate 'Z'"),
    expect.stringContaining("3 the rubric 'pen' (version 1) has no item 'washing'"),
    expect.stringContaining("4 the candidate 'B' has 2 results"),
  ]);
  expect(records.map(({ record: { key } }) => key.candidate)).toEqual(["A"]);
});

test("the text says what is not measurable, and never NaN", () => {
  const text = agreementText(report, { width: 80, colour: false, ascii: false });
  expect(text).toContain("80%");
  expect(text).toMatch(/~1:05/);
  expect(text).not.toMatch(/NaN|Infinity|undefined|null/);
  for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
});

test("ten rehearsals that are all alike give figures without an interval: every draw is the same, which is no certainty", () => {
  const alike = Array.from({ length: 10 }, (_, i) => record({ candidate: `S${i}`, items: { a: "complete", b: "absent" } }));
  const lines = alike.map(({ key }) => `${key.candidate},Kim,a,complete\n${key.candidate},Kim,b,absent`).join("\n");
  const { measures } = agreementReport(joinMarks(alike, readMarks(`candidate,marker,item,content\n${lines}\n`, "m.csv")), "0", 0).overall.pairs[0]!;
  for (const figure of [measures.percent, measures.kappa, measures.pabak, measures.alphaNominal]) expect(figure).toMatchObject({ value: 1, interval: null });
});

test("one mark, the same or another, gives no figure beyond chance; no mark of an item gives no word on wording", () => {
  for (const content of ["complete", "absent"]) {
    const { overall } = agreementReport(joinMarks(RECORDS, readMarks(`candidate,marker,item,content\nB,Kim,wash,${content}\n`, "m.csv")), "0", 0);
    const { kappa, pabak, ac1, alphaNominal, alphaOrdinal } = overall.pairs[0]!.measures;
    for (const figure of [kappa, pabak, ac1, alphaNominal, alphaOrdinal, overall.all.fleiss, overall.all.ac1]) expect(figure).toMatchObject({ value: null, why: expect.stringMatching(/^only one unit was marked by/) });
  }
  const none = agreementReport(joinMarks(RECORDS, readMarks("candidate,marker,item,content\nB,Kim,overall:global,3\n", "m.csv")), "0", 0);
  const text = agreementText(none, { width: 80, colour: false, ascii: false });
  expect(text).toContain("Not measurable: no item was marked.");
  expect(text).not.toContain("nobody differed");
});

test("weighted kappa of ratings goes by the numbers of the scale, also over steps that nobody used", () => {
  const pairs = [[1, 1], [2, 5], [5, 5], [1, 2], [2, 2], [5, 5]] as const;
  const rated = pairs.map((_, i) => record({ candidate: `R${i}`, items: { a: "complete" } }));
  const lines = pairs.flatMap(([kim, lee], i) => [`R${i},Kim,overall:global,${kim}`, `R${i},Lee,overall:global,${lee}`]).join("\n");
  const { ratings } = agreementReport(joinMarks(rated, readMarks(`candidate,marker,item,content\n${lines}\n`, "m.csv")), "0", 0);
  // Cohen 1968: 1 minus squared differences observed over those of every rating of the one with every rating of the other.
  const observed = pairs.reduce((sum, [a, b]) => sum + (a - b) ** 2, 0) / 6;
  const chance = pairs.flatMap(([a]) => pairs.map(([, b]) => (a - b) ** 2)).reduce((sum, value) => sum + value, 0) / 36;
  expect(ratings[0]!.pairs[0]!.quadraticKappa.value).toBeCloseTo(1 - observed / chance, 12);
});

test("the items show people among themselves beside the tool with each, and the categories stand at the figures that count them", () => {
  const text = agreementText(report, { width: 100, colour: false, ascii: false });
  expect(text).toMatch(/Item wash \(people among themselves\) +2 +50%/);
  expect(text).toContain("PABAK, 4 categories");
  expect(text.replace(/\s+/g, " ")).toContain("four categories (incorrect, absent, partial, complete)");
});

test("markers whose names differ only by case or accents are told; nobody has the tool's name", () => {
  const both = joinMarks(RECORDS, readMarks("candidate,marker,item,content\nA,Kim,wash,complete\nB,kim,wash,complete\n", "m.csv"));
  expect(both.findings).toMatchObject([{ code: "SW-A10", severity: "warning", message: expect.stringContaining("'Kim' and 'kim'") }]);
  expect(() => readMarks("candidate,marker,item,content\nA,Saidwell,wash,complete\n", "m.csv")).toThrow("'Saidwell' is the tool's own name");
});

test("a place to listen to is named once", () => {
  const at = [{ time: 117, line: 1, estimated: true }, { time: 118.2, line: 2, estimated: true }, { time: 118.4, line: 2, estimated: true }];
  const twice = RECORDS.map((one) => ({ ...one, items: one.items.map((item) => ({ ...item, at })) }));
  const text = agreementText(agreementReport(joinMarks(twice, readMarks(CSV, "marks.csv")), "0", 0), { width: 100, colour: false, ascii: false });
  expect(text).toContain("Listen at ~1:57, ~1:58.");
});
