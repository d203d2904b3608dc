import type { StationCut } from "../../cohort/cutscore/report.ts";
import { number } from "../figures.ts";

const ROWS = 16;
const COLUMNS = 40;
const TENS = 10;
/** Room of the scale on the left. */
const SCALE = 5;

/**
 * A plot of scores by rating in plain characters, one line each: figures count candidates in a cell (+ for ten or
 * more), dots are the line, = the cut, | the borderline rating.
 */
export function scatterLines({ points, regression, decision }: StationCut, borderline: number): string[] {
  if (points.length === 0) return [];
  const ratings = [...points.map(({ rating }) => rating), borderline];
  const [left, right] = [Math.min(...ratings), Math.max(...ratings)];
  const lowest = Math.floor(Math.min(...points.map(({ score }) => score), decision?.cut ?? 100) / TENS) * TENS;
  const highest = Math.max(lowest + TENS, Math.ceil(Math.max(...points.map(({ score }) => score), decision?.cut ?? 0) / TENS) * TENS);
  const column = (rating: number) => (right === left ? 0 : Math.round(((rating - left) / (right - left)) * (COLUMNS - 1)));
  const row = (score: number) => Math.round(((highest - score) / (highest - lowest)) * (ROWS - 1));
  const grid = Array.from({ length: ROWS }, () => Array<string>(COLUMNS).fill(" "));
  const put = (x: number, y: number, mark: string) => {
    if (y >= 0 && y < ROWS) grid[y]![x] = mark;
  };
  for (let y = 0; y < ROWS; y += 1) put(column(borderline), y, "|");
  if (decision !== null) for (let x = 0; x < COLUMNS; x += 1) put(x, row(decision.cut), "=");
  if (regression !== null && regression.slope !== null && regression.intercept !== null) {
    for (let x = 0; x < COLUMNS; x += 1) put(x, row(regression.intercept + regression.slope * (left + (x / (COLUMNS - 1)) * (right - left))), ".");
  }
  const cells = new Map<string, number>();
  for (const { rating, score } of points) {
    const cell = `${column(rating)},${row(score)}`;
    cells.set(cell, (cells.get(cell) ?? 0) + 1);
  }
  for (const [cell, count] of cells) {
    const [x, y] = cell.split(",").map(Number) as [number, number];
    put(x, y, count > 9 ? "+" : String(count));
  }
  const labels = new Map(Array.from({ length: (highest - lowest) / TENS + 1 }, (_, step) => lowest + step * TENS).map((score) => [row(score), String(score)]));
  const lines = grid.map((cellRow, y) => {
    const label = labels.get(y) ?? "";
    return `${label.padStart(SCALE - 1)} ${cellRow.join("")}`.trimEnd();
  });
  // Ratings of several people are means: two decimals tell them apart.
  const [from, to] = [number(left, 2), number(right, 2)];
  return [...lines, `${" ".repeat(SCALE)}${from.padEnd(COLUMNS - to.length)}${to}`];
}
