import type { FindingCode } from "../../problem/catalogue.ts";
import { ProblemError, type Finding } from "../../problem/problem.ts";
import type { JoinedRecord } from "../agreement/join.ts";
import { csvFinding, readTable } from "../csv.ts";
import { firstAttempts } from "../first-attempts.ts";
import { keyText, type SheetRecord } from "../record.ts";
import { mean } from "../statistics/moments.ts";

/** One candidate at one station. */
export interface Score {
  candidate: string;
  station: string;
  /** Per cent, 0 to 100. */
  score: number;
  /** The mean of the examiners' global ratings; null when nobody rated. */
  rating: number | null;
  provisional: boolean;
}

const CODE: FindingCode = "SW-A08";

/** Scores of the first attempts, with the global ratings that people gave. Rehearsals without a total are left out. */
export function scoresOf(records: readonly SheetRecord[], joined: readonly JoinedRecord[]): Score[] {
  const ratings = new Map(joined.map(({ record, people }) => [keyText(record.key), [...people.values()].map(({ whole }) => whole.global).filter((rating) => rating !== undefined)]));
  return firstAttempts(records).flatMap(({ key, percent, provisional }) => {
    const own = ratings.get(keyText(key)) ?? [];
    return percent === null ? [] : [{ candidate: key.candidate, station: key.station, score: percent, rating: own.length === 0 ? null : mean(own), provisional }];
  });
}

/**
 * Scores from a table: CSV with the columns candidate and score (per cent) and, where there are any, station and rating.
 * Several lines of one candidate and station, as of several examiners, are averaged.
 * @throws ProblemError SW-A08 with every fault
 */
export function readScores(text: string, file: string): Score[] {
  const faults: Finding[] = [];
  const found = new Map<string, { candidate: string; station: string; scores: number[]; ratings: number[] }>();
  for (const { cells, line } of readTable(text, file, CODE, "the table of scores", ["candidate", "score"])) {
    const [candidate, station] = [cells.get("candidate") ?? "", cells.get("station") ?? ""];
    const score = figure(cells.get("score") ?? "");
    const rating = (cells.get("rating") ?? "") === "" ? null : figure(cells.get("rating")!);
    if (candidate === "") faults.push(csvFinding(CODE, file, line, "the line names no candidate", "Write one."));
    if (score === null || score < 0 || score > 100) faults.push(csvFinding(CODE, file, line, `the score '${cells.get("score") ?? ""}' is no per cent figure`, "Write a number from 0 to 100."));
    if (Number.isNaN(rating)) faults.push(csvFinding(CODE, file, line, `the rating '${cells.get("rating")!}' is no number`, "Write the number of the rating scale."));
    const name = JSON.stringify([candidate, station]);
    const known = found.get(name) ?? { candidate, station, scores: [], ratings: [] };
    found.set(name, known);
    if (score !== null) known.scores.push(score);
    if (rating !== null) known.ratings.push(rating);
  }
  if (faults.length > 0) throw new ProblemError(faults);
  return [...found.values()].map(({ candidate, station, scores, ratings }) => ({ candidate, station, score: mean(scores), rating: ratings.length === 0 ? null : mean(ratings), provisional: false }));
}

function figure(text: string): number | null {
  const plain = text.replace(",", ".").replace(/\s*%$/, "");
  return plain === "" ? null : Number.isFinite(Number(plain)) ? Number(plain) : NaN;
}

/** What each judge expects of borderline candidates, item by item. */
export interface Judgement {
  judge: string;
  station: string;
  item: string;
  /** 0 to 1. */
  share: number;
  weight: number | null;
}

/**
 * Modified Angoff judgements: CSV with the columns judge, item, percent (of borderline candidates who would earn it,
 * 0 to 100) and, where there are any, station and weight. Every judge must judge every item of a station.
 * @throws ProblemError SW-A08 with every fault
 */
export function readJudgements(text: string, file: string): Judgement[] {
  const faults: Finding[] = [];
  const seen = new Map<string, number>();
  const found = readTable(text, file, CODE, "the table of judgements", ["judge", "item", "percent"]).flatMap(({ cells, line }): Judgement[] => {
    const value = (name: string) => cells.get(name) ?? "";
    const percent = figure(value("percent"));
    const weight = figure(value("weight"));
    const fault = (message: string, mend: string) => faults.push(csvFinding(CODE, file, line, message, mend));
    if (value("judge") === "" || value("item") === "") fault("the line names no judge or no item", "Fill in both.");
    if (percent === null || !(percent >= 0 && percent <= 100)) fault(`the judgement '${value("percent")}' is no per cent figure`, "Write a number from 0 to 100.");
    if (weight !== null && !(weight > 0)) fault(`the weight '${value("weight")}' is no positive number`, "Write the item's marks, or leave it empty.");
    const name = JSON.stringify([value("station"), value("judge"), value("item")]);
    if (seen.has(name)) fault(`the judge '${value("judge")}' has judged '${value("item")}' in line ${seen.get(name)!} already`, "Keep one of the two lines.");
    seen.set(name, line);
    return [{ judge: value("judge"), station: value("station"), item: value("item"), share: (percent ?? 0) / 100, weight }];
  });
  for (const station of new Set(found.map((one) => one.station))) {
    const own = found.filter((one) => one.station === station);
    const items = [...new Set(own.map(({ item }) => item))];
    for (const judge of new Set(own.map((one) => one.judge))) {
      const missing = items.filter((item) => !own.some((one) => one.judge === judge && one.item === item));
      if (missing.length > 0) faults.push(csvFinding(CODE, file, 1, `the judge '${judge}' has not judged ${missing.join(", ")}${station === "" ? "" : ` of ${station}`}`, "Every judge must judge every item: their cuts are compared."));
    }
  }
  if (faults.length > 0) throw new ProblemError(faults);
  return found;
}
