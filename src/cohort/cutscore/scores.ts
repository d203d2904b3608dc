import type { FindingCode } from "../../problem/catalogue.ts";
import { ProblemError, type Finding } from "../../problem/problem.ts";
import type { JoinedRecord } from "../agreement/join.ts";
import { csvFinding, figure, readTable } from "../csv.ts";
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
  /** An item, or the result, waits for somebody to listen. */
  provisional: boolean;
}

const CODE: FindingCode = "SW-A08";
/** No scale of ratings goes further. */
const MOST_RATING = 1000;

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
    if (rating !== null && !(Math.abs(rating) <= MOST_RATING)) faults.push(csvFinding(CODE, file, line, `the rating '${cells.get("rating")!}' is no number of a scale`, "Write the number of the rating scale."));
    const name = JSON.stringify([candidate, station]);
    const known = found.get(name) ?? { candidate, station, scores: [], ratings: [] };
    found.set(name, known);
    if (score !== null) known.scores.push(score);
    if (rating !== null) known.ratings.push(rating);
  }
  if (faults.length > 0) throw new ProblemError(faults);
  return [...found.values()].map(({ candidate, station, scores, ratings }) => ({ candidate, station, score: mean(scores), rating: ratings.length === 0 ? null : mean(ratings), provisional: false }));
}
