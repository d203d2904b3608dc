/*
 * Published example data of a borderline regression: 70 candidates with a global grade (1 lowest, 2 borderline) and a score.
 * M. Roberts (University of Plymouth), help page "Plot of the Borderline Regression method", 2018, function fnPlotBReg of the
 * R package psychometricsTNG2 0.1.0 (GPL-3; github.com/GergoIO/psychometricsTNG2, commit 58c508c), man/fnPlotBReg.Rd.
 * The data look made up by their author, not students' results. The page gives the data and the rule (least squares of score
 * on grade, pass mark = the line at grade 2) and prints no result: every expected figure is computed, and said by what.
 * Rearranged here as the number of candidates with each score, by grade.
 */
type Counts = Readonly<Record<number, Readonly<Record<number, number>>>>;

/** Of 25 marks, five grades. */
const FIVE_GRADES: Counts = {
  1: { 5: 1, 8: 1, 9: 1, 10: 2 },
  2: { 10: 1, 11: 2, 12: 2, 13: 2, 14: 2, 15: 1 },
  3: { 12: 1, 13: 3, 14: 4, 15: 4, 16: 4, 17: 3, 18: 1 },
  4: { 13: 1, 14: 2, 15: 3, 16: 4, 17: 5, 18: 4, 19: 3, 20: 2, 21: 1 },
  5: { 18: 1, 19: 1, 20: 2, 21: 2, 22: 2, 23: 1, 25: 1 },
};

/** Of 20 marks, four grades. */
const FOUR_GRADES: Counts = {
  1: { 5: 1, 6: 1, 8: 1, 9: 1, 10: 1 },
  2: { 9: 1, 10: 3, 11: 4, 12: 4, 13: 4, 14: 3, 15: 1 },
  3: { 11: 1, 12: 3, 13: 5, 14: 7, 15: 7, 16: 5, 17: 3, 18: 1 },
  4: { 15: 1, 16: 2, 17: 2, 18: 3, 19: 2, 20: 3 },
};

export interface Graded {
  rating: number;
  /** Marks. */
  score: number;
}

function candidates(counts: Counts): Graded[] {
  return Object.entries(counts).flatMap(([rating, scores]) =>
    Object.entries(scores).flatMap(([score, count]) => Array.from({ length: count }, () => ({ rating: Number(rating), score: Number(score) }))),
  );
}

export const fiveGrades = candidates(FIVE_GRADES);
export const fourGrades = candidates(FOUR_GRADES);

/** As a table of scores in per cent of the whole. */
export function percentTable(graded: readonly Graded[], marks: number): string {
  return `candidate,score,rating\n${graded.map(({ rating, score }, i) => `C${i + 1},${(100 * score) / marks},${rating}`).join("\n")}\n`;
}
