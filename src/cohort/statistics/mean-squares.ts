import { mean } from "./moments.ts";

/** Mean squares of a table of rows (candidates) by columns (markers, stations), one value a cell. */
export interface MeanSquares {
  /** Between rows. */
  between: number;
  /** Within rows. */
  within: number;
  /** Between columns. */
  columns: number;
  /** What rows and columns leave over. */
  error: number;
}

/** Two-way analysis of variance without replication. @param table complete, at least two rows and two columns */
export function meanSquares(table: readonly (readonly number[])[]): MeanSquares {
  const n = table.length;
  const k = table[0]!.length;
  const grand = mean(table.flat());
  const rowMeans = table.map((row) => mean(row));
  const columnMeans = table[0]!.map((_, j) => mean(table.map((row) => row[j]!)));
  const rows = k * rowMeans.reduce((sum, value) => sum + (value - grand) ** 2, 0);
  const columns = n * columnMeans.reduce((sum, value) => sum + (value - grand) ** 2, 0);
  let within = 0;
  let error = 0;
  table.forEach((row, i) =>
    row.forEach((value, j) => {
      within += (value - rowMeans[i]!) ** 2;
      // By its own deviations: the difference of two large sums would leave rounding behind.
      error += (value - rowMeans[i]! - columnMeans[j]! + grand) ** 2;
    }),
  );
  return { between: rows / (n - 1), within: within / (n * (k - 1)), columns: columns / (k - 1), error: error / ((n - 1) * (k - 1)) };
}
