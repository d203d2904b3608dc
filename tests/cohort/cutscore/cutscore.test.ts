import { expect, test } from "vitest";
import { joinMarks } from "../../../src/cohort/agreement/join.ts";
import { cutScoreReport, type CutScoreInput } from "../../../src/cohort/cutscore/report.ts";
import { placeJudgements, readJudgements } from "../../../src/cohort/cutscore/judgements.ts";
import { readScores, scoresOf } from "../../../src/cohort/cutscore/scores.ts";
import { readMarks } from "../../../src/cohort/marks.ts";
import { linearRegression } from "../../../src/cohort/statistics/linear-regression.ts";
import { estimated } from "../../../src/cohort/statistics/estimate.ts";
import { cutScoreText } from "../../../src/report/cohort/cut-score.ts";
import { cutScoreSvg } from "../../../src/report/cohort/cut-score-svg.ts";
import { ProblemError } from "../../../src/problem/problem.ts";
import { fiveGrades, fourGrades, percentTable } from "../graded-scores.ts";
import { record } from "../records.ts";

/* Invented scores. By hand: ratings 1 1 2 2 3 3, scores 40 50 50 60 60 70: slope 10, intercept 35, cut at 2 is 55. */
const TABLE = "candidate,score,rating\nA,40,1\nB,50,1\nC,50,2\nD,60,2\nE,60,3\nF,70,3\n";
const input = (over: Partial<CutScoreInput> = {}): CutScoreInput => ({ scores: readScores(TABLE, "s.csv"), borderline: 2, judgements: [], weightOf: () => 1, errorOfMeasurement: new Map(), ...over });
const one = (over: Partial<CutScoreInput> = {}) => cutScoreReport(input(over), "0").stations[0]!;

test("borderline regression by hand: cut 55, residual sqrt(150 / 4), error residual / sqrt(6) at the mean rating", () => {
  const { regression } = one();
  expect(regression!.cut.value).toBeCloseTo(55, 12);
  expect(regression).toMatchObject({ slope: 10, intercept: 35 });
  expect(regression!.cut.value !== null && regression!.cut.standardError!).toBeCloseTo(Math.sqrt(150 / 4) / Math.sqrt(6), 12);
  // Sum of squares of the scores 550, left 150.
  expect(regression!.rSquared).toBeCloseTo(1 - 150 / 550, 12);
});

test("the same cut as the line read at the borderline rating, and warnings that name their source", () => {
  const scores = input().scores;
  const line = linearRegression(scores.map(({ rating }) => rating!), scores.map(({ score }) => score));
  expect("slope" in line && line.at(2).value).toBe(one().regression!.cut.value);
  expect(one().regression!.warnings).toEqual([expect.stringMatching(/only 6 rated candidates: below 50 .*Homer/)]);
  expect(one({ borderline: 0 }).regression!.warnings).toContainEqual(expect.stringContaining("beyond the data"));
  const fifty = Array.from({ length: 50 }, (_, i) => ({ candidate: `C${i}`, station: "", score: 40 + (i % 5) * 10 + (i % 2), rating: i % 5, provisional: false }));
  expect(one({ scores: fifty }).regression!.warnings).toEqual([]);
});

// Data published by M. Roberts 2018 without a result (source in graded-scores.ts); cut and error by R 4.2.2, lm and predict, R squared as exact fraction, those below counted.
test.each([
  { name: "five grades, 25 marks", graded: fiveGrades, marks: 25, cut: 47.6348547717843, error: 1.43941235712667, rSquared: 3891963 / 5279587, low: 11.1906380334054, group: 50, groupError: 2, below: 8 },
  { name: "four grades, 20 marks", graded: fourGrades, marks: 20, cut: 57.730195849167, error: 1.37169408334745, rSquared: 23177045 / 32598709, low: 10.9986045844842, group: 60, groupError: 5 * 0.362738125055006, below: 14 },
])("published borderline data through the table of scores to the report: $name", ({ graded, marks, cut, error, rSquared, low, group, groupError, below }) => {
  const found = one({ scores: readScores(percentTable(graded, marks), "s.csv") });
  expect(found.regression).toMatchObject({ cut: { value: expect.closeTo(cut, 10), standardError: expect.closeTo(error, 10), interval: { low: expect.closeTo((100 * low) / marks, 5) } }, rSquared: expect.closeTo(rSquared, 12), warnings: [] });
  expect(found.regression!.errorBy).toContain("Draper and Smith 1998");
  expect(found.group).toMatchObject({ cut: { value: expect.closeTo(group, 10), standardError: expect.closeTo(groupError, 10) }, warnings: [] });
  expect(found.decision).toMatchObject({ method: "borderline regression", below });
});

test("ratings that go against the scores, or are all alike, give no cut", () => {
  const against = input().scores.map((score) => ({ ...score, rating: 4 - score.rating! }));
  expect(one({ scores: against }).regression!.cut).toMatchObject({ value: null, why: expect.stringContaining("higher ratings do not go with higher scores") });
  const alike = input().scores.map((score) => ({ ...score, rating: 3 }));
  expect(one({ scores: alike }).regression!.cut).toMatchObject({ value: null, why: "all candidates have the same rating" });
});

test("borderline group: mean of 50 and 60, error 7.07 / sqrt(2)", () => {
  const { group } = one();
  expect(group!.cut).toMatchObject({ value: 55 });
  expect(group!.cut.value !== null && group!.cut.standardError!).toBeCloseTo(5, 12);
  expect(group!.warnings).toEqual([expect.stringContaining("only 2 rated borderline"), "its 95% interval holds the whole scale and is left out"]);
});

test("who lies near the cut: within its error of 2.5 nobody, within an error of measurement of 5 two", () => {
  expect(one().decision).toMatchObject({ method: "borderline regression", below: 3, near: [] });
  const { near } = one({ errorOfMeasurement: new Map([["", estimated(5, 6)]]) }).decision!;
  expect(near.map(({ candidate, distance, withinCutError, withinMeasurementError }) => [candidate, Math.round(distance), withinCutError, withinMeasurementError])).toEqual([
    ["B", -5, false, true],
    ["C", -5, false, true],
    ["D", 5, false, true],
    ["E", 5, false, true],
  ]);
});

test("modified Angoff: weights from the table or the results; judges one by one", () => {
  const judgements = readJudgements("judge,item,percent\nKim,wash,50\nKim,dose,100\nLee,wash,70\nLee,dose,80\n", "j.csv");
  // Weights 1 and 3: Kim 87.5, Lee 77.5; mean 82.5, error 7.07 / sqrt(2) = 5.
  const { angoff, decision } = one({ scores: [], borderline: null, judgements, weightOf: (_, item) => (item === "dose" ? 3 : 1) });
  expect(angoff!.judges).toEqual([{ judge: "Kim", cut: 87.5 }, { judge: "Lee", cut: 77.5 }]);
  expect(angoff!.cut.value !== null && [angoff!.cut.value, angoff!.cut.standardError]).toEqual([82.5, expect.closeTo(5, 12)]);
  expect(decision).toMatchObject({ method: "modified Angoff" });
});

test("another program's weighted Angoff cut of 68.38 comes out of a table with weights", () => {
  // A differential of weak provenance, told in ../statistics/standard-setting.test.ts; weights halved, since the cut is in per cent of them.
  const [marks, percents] = [[24, 28.8, 27.2, 4, 10, 6], [75, 70, 60, 75, 70, 65]];
  const table = `judge,item,percent,weight\n${marks.map((weight, i) => `Kim,i${i},${percents[i]!},${weight / 2}`).join("\n")}\n`;
  const { angoff } = one({ scores: [], borderline: null, judgements: readJudgements(table, "j.csv") });
  expect(angoff).toMatchObject({ cut: { value: expect.closeTo(68.38, 10), standardError: null }, warnings: ["one judge only: no error can be told"] });
});

test("a judge who left an item out, a score of 120 and a rating that is no number are told with their lines", () => {
  const told = (read: () => unknown) => {
    try {
      read();
    } catch (error) {
      if (error instanceof ProblemError) return error.findings.map(({ line, message }) => `${line} ${message}`);
    }
    return [];
  };
  expect(told(() => readJudgements("judge,item,percent\nKim,wash,50\nKim,dose,100\nLee,wash,70\n", "j.csv"))).toEqual(["1 the judge 'Lee' has not judged dose"]);
  expect(told(() => readScores("candidate,score,rating\nA,120,2\nB,50,good\n", "s.csv"))).toEqual(["2 the score '120' is no per cent figure", "3 the rating 'good' is no number of a scale"]);
});

test("of several attempts the first counts, and several examiners' ratings are averaged", () => {
  const records = [record({ candidate: "A", attempt: "1", items: { a: "absent" } }), record({ candidate: "A", attempt: "2", items: { a: "complete" } })];
  const marks = readMarks("candidate,attempt,marker,item,content\nA,1,Kim,overall:global,2\nA,1,Lee,overall:global,3\nA,2,Kim,overall:global,5\n", "m.csv");
  expect(scoresOf(records, joinMarks(records, marks).records)).toEqual([{ candidate: "A", station: "pen", score: 0, rating: 2.5, provisional: false }]);
});

test("the examination's cut is the mean of the stations' and its error theirs as independent", () => {
  const scores = ["pen", "drops"].flatMap((station) => input().scores.map((score) => ({ ...score, station })));
  const { examination, stations } = cutScoreReport(input({ scores }), "0");
  const error = stations[0]!.regression!.cut.value === null ? NaN : stations[0]!.regression!.cut.standardError!;
  expect(examination).toMatchObject({ method: "borderline regression", cut: { value: expect.closeTo(55, 10), standardError: expect.closeTo(error / Math.SQRT2, 10) }, candidates: 6, below: 3 });
});

test("of the examination as a whole, too, it is said who lies within the error of measurement: that of the mean over the stations", () => {
  // Each candidate 4 points more at one station and 4 less at the other, in turn: residual variance 38.4, error of the mean of two sqrt(19.2), 4.38.
  const scores = ["pen", "drops"].flatMap((station, place) => input().scores.map((score, i) => ({ ...score, station, score: score.score + ((i + place) % 2 === 0 ? 4 : -4) })));
  const { examination } = cutScoreReport(input({ scores }), "0");
  expect(examination!.errorOfMeasurement).toMatchObject({ value: expect.closeTo(Math.sqrt(19.2), 10), n: 6 });
  expect(examination!.near.map(({ candidate, withinMeasurementError }) => [candidate, withinMeasurementError])).toEqual(examination!.near.filter(({ distance }) => Math.abs(distance) <= Math.sqrt(19.2)).map(({ candidate }) => [candidate, true]));
  const text = cutScoreText(cutScoreReport(input({ scores }), "0"), { width: 100, colour: false, ascii: true });
  expect(text).toMatch(/error of measurement {4}4\.4 points of a candidate's mean over the stations; from 6 candidates only/);
});

test("text and picture hold no figure that is none, and no text of a candidate's name as markup", () => {
  const hostile = input().scores.map((score, i) => ({ ...score, candidate: i === 0 ? "<script>&" : score.candidate }));
  const report = cutScoreReport(input({ scores: hostile }), "0");
  const svg = cutScoreSvg(report);
  expect(svg).not.toMatch(/NaN|Infinity|undefined|<script/);
  expect(svg.match(/<circle/g)).toHaveLength(6);
  const text = cutScoreText(report, { width: 60, colour: false, ascii: true });
  expect(text).not.toMatch(/NaN|Infinity|undefined/);
  for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(60);
});

/** The drawn line's height in per cent at a rating: the plot is 540 by 250 from 60, 50; half a step beyond the ratings. */
function drawnAt(svg: string, rating: number, low: number, high: number): number {
  const [[x1, y1], [x2, y2]] = /<polyline points="([^"]*)"/.exec(svg)![1]!.split(" ").map((point) => point.split(",").map(Number)) as [[number, number], [number, number]];
  const x = 60 + ((rating - low) / (high - low)) * 540;
  return 100 * (1 - (y1 + ((x - x1) / (x2 - x1)) * (y2 - y1) - 50) / 250);
}

test("the drawn line is the line of the figures also where it leaves 0 to 100 inside the picture", () => {
  // Slope 30, intercept -10 (by hand): 110% at a rating of 4, 5% at 0.5.
  const steep = input().scores.map((score, i) => ({ ...score, rating: [1, 1, 2, 2, 3, 3][i]!, score: [15, 25, 45, 55, 75, 85][i]! }));
  const report = cutScoreReport(input({ scores: steep }), "0");
  expect(report.stations[0]!.regression).toMatchObject({ slope: expect.closeTo(30, 9), intercept: expect.closeTo(-10, 9) });
  for (const score of [-20, 30]) {
    const shifted = cutScoreReport(input({ scores: steep.map((one) => ({ ...one, score: one.score + score / 2 })) }), "0");
    const svg = cutScoreSvg(shifted);
    expect(drawnAt(svg, 2, 0.5, 3.5)).toBeCloseTo(shifted.stations[0]!.regression!.cut.value!, 0);
    for (const [, y] of /<polyline points="([^"]*)"/.exec(svg)![1]!.split(" ").map((point) => point.split(",").map(Number)) as [number, number][]) {
      expect(y).toBeGreaterThanOrEqual(50);
      expect(y).toBeLessThanOrEqual(300);
    }
  }
});

test("ratings that are means of several people are labelled with whole steps, and to two decimals in plain text", () => {
  const means = input().scores.map((score, i) => ({ ...score, rating: 1 + (i * 2) / 3 }));
  const report = cutScoreReport(input({ scores: means }), "0");
  for (const step of [1, 2, 3, 4]) expect(cutScoreSvg(report)).toContain(`text-anchor="middle">${step}</text>`);
  expect(cutScoreText(report, { width: 80, colour: false, ascii: true })).toMatch(/\n +1 +4\.33\n/);
});

test("where the line reaches borderline outside 0 to 100 there is no cut, nobody is below it, and the plot stays a plot", () => {
  for (const borderline of [9, 1e9, -1e9]) {
    const report = cutScoreReport(input({ borderline }), "0");
    expect(report.stations[0]).toMatchObject({ regression: { cut: { value: null, why: expect.stringMatching(/at the rating -?\d+ the line is at .*%, and no score can be/) }, slope: 10 }, decision: null });
    expect(cutScoreText(report, { width: 80, colour: false, ascii: true })).not.toMatch(/below the cut|near the cut/);
    expect(cutScoreSvg(report).length).toBeLessThan(10_000);
  }
});

test("scores that all lie on the line, judges who agree and a group of equals give no error, and no candidate is near by it", () => {
  const onLine = one({ scores: readScores("candidate,score,rating\na,50,1\nb,60,2\nc,70,3\n", "s.csv") });
  expect(onLine.regression).toMatchObject({ cut: { value: expect.closeTo(60, 9), standardError: null, interval: null }, warnings: expect.arrayContaining(["all scores lie on the line: no error can be told"]) });
  expect(onLine.decision).toMatchObject({ standardError: null, near: [] });
  const equals = one({ scores: readScores("candidate,score,rating\na,50,1\nb,60,2\nc,60,2\nd,75,3\n", "s.csv") });
  expect(equals.group).toMatchObject({ cut: { value: 60, standardError: null, interval: null } });
  const agreeing = one({ scores: [], borderline: null, judgements: readJudgements("judge,item,percent\nKim,a,60\nLee,a,60\n", "j.csv") });
  expect(agreeing.angoff).toMatchObject({ cut: { value: 60, standardError: null, interval: null }, warnings: ["all judges give the same cut: no error can be told"] });
});

test("where no error is known the text does not say that nobody is near; without candidates it speaks of none", () => {
  const judged = { borderline: null, judgements: readJudgements("judge,item,percent\nKim,a,60\n", "j.csv") };
  const text = (over: Partial<CutScoreInput>) => cutScoreText(cutScoreReport(input(over), "0"), { width: 80, colour: false, ascii: true });
  expect(text({ ...judged, scores: readScores("candidate,score\na,61\n", "s.csv") })).toMatch(/below the cut +0 of 1[^]*near the cut +not measurable: no standard error is known/);
  expect(text({ ...judged, scores: [] })).not.toMatch(/below the cut|near the cut|error of measurement/);
});

test("an interval of judges' cuts that holds the whole scale is none, and that is said", () => {
  const { angoff } = one({ scores: [], borderline: null, judgements: readJudgements("judge,item,percent\nKim,a,50\nLee,a,60\n", "j.csv") });
  // 55 with an error of 5 and t 12.7: without bounds -8.5 to 118.5.
  expect(angoff!.cut).toMatchObject({ value: 55, standardError: expect.closeTo(5, 10), interval: null });
  expect(angoff!.warnings).toContain("its 95% interval holds the whole scale and is left out");
});

test("a group of one gives no mean, and no word of how steady its mean is", () => {
  const alone = one({ scores: readScores("candidate,score,rating\na,50,1\nb,60,2\nc,75,3\n", "s.csv") });
  expect(alone.group).toMatchObject({ cut: { value: null }, warnings: [] });
});

const DROPS = new Map([["drops", new Set(["wash", "dose"])]]);
const JUDGED = readJudgements("judge,item,percent\nKim,wash,50\nKim,dose,100\n", "j.csv");

test("a judgement without a station is of the only one there is", () => {
  expect(placeJudgements(JUDGED, DROPS, "j.csv")).toMatchObject({ judgements: [{ station: "drops" }, { station: "drops" }], findings: [] });
  expect(placeJudgements(readJudgements("judge,station,item,percent\nKim,pen,a,50\n", "j.csv"), new Map([["", null]]), "j.csv")).toMatchObject({ judgements: [{ station: "" }], findings: [] });
});

test("judgements of no known station or item are left out and told with their lines", () => {
  const told = (table: string, known = DROPS) => placeJudgements(readJudgements(table, "j.csv"), known, "j.csv");
  const misspelt = told("judge,station,item,percent\nKim,drop,wash,50\nKim,drops,hnds,50\nKim,,dose,70\n");
  expect(misspelt.judgements).toMatchObject([{ item: "dose", station: "drops" }]);
  expect(misspelt.findings.map(({ code, line, message }) => `${code} ${line} ${message}`)).toEqual([
    "SW-A09 2 there are no scores of the station 'drop': the judgement was left out",
    "SW-A09 3 the station 'drops' has no item 'hnds': the judgement was left out",
  ]);
  const two = told("judge,item,percent\nKim,wash,50\nKim,dose,60\n", new Map([...DROPS, ["pen", new Set(["wash"])]]));
  expect(two).toMatchObject({ judgements: [], findings: [{ message: "it is not said of which station the judgement is: 2 judgements were left out (lines 2, 3)" }] });
});

test("a judge who names the station and one who does not are held together, with what one of them left out", () => {
  const table = "judge,station,item,percent\nKim,drops,wash,50\nKim,drops,dose,50\nLee,,wash,60\n";
  expect(() => placeJudgements(readJudgements(table, "j.csv"), DROPS, "j.csv")).toThrow("the judge 'Lee' has not judged dose of drops");
});

test("an item has one weight", () => {
  expect(() => readJudgements("judge,item,percent,weight\nJ1,a,50,1\nJ2,a,60,3\n", "j.csv")).toThrow("the weight of 'a' is 3 here and 1 in line 2");
});

test("a cut of two of 25 items is not held against totals of all of them", () => {
  const { angoff, decision } = one({ borderline: null, scores: readScores("candidate,score\na,50\n", "s.csv"), judgements: readJudgements("judge,item,percent\nKim,a,50\nKim,b,80\n", "j.csv"), itemsOf: () => 25 });
  expect(angoff).toMatchObject({ items: 2, ofItems: 25, cut: { value: 65 }, warnings: expect.arrayContaining([expect.stringContaining("2 of the station's 25 items were judged")]) });
  expect(decision).toBeNull();
});

test("a rating that no scale has is told, and does not end the program", () => {
  expect(() => readScores("candidate,score,rating\nA,50,1e200\n", "s.csv")).toThrow("the rating '1e200' is no number of a scale");
});

test("below the examination's cut are only candidates who sat every station", () => {
  const table = (station: string) => TABLE.split("\n").slice(1, -1).map((line) => `${line},${station}`).join("\n");
  const scores = readScores(`candidate,score,rating,station\n${table("pen")}\n${table("drops")}\nZ,10,1,pen\n`, "s.csv");
  expect(cutScoreReport(input({ scores }), "0").examination).toMatchObject({ candidates: 6 });
});
