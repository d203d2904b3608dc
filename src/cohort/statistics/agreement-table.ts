/** Counts of pairs: `counts[i][j]` units that the first marker put in category i and the second in j. */
export interface AgreementTable {
  categories: string[];
  counts: number[][];
  n: number;
}

/** @param categories in their order, where one matters; every mark must be one of them */
export function agreementTable(pairs: readonly (readonly [string, string])[], categories: readonly string[]): AgreementTable {
  const place = new Map(categories.map((category, index) => [category, index]));
  const counts = categories.map(() => categories.map(() => 0));
  for (const [first, second] of pairs) counts[place.get(first)!]![place.get(second)!]! += 1;
  return { categories: [...categories], counts, n: pairs.length };
}

/** Sums of rows (first marker) and columns (second marker), as proportions. */
export function marginals({ counts, n }: AgreementTable): { rows: number[]; columns: number[] } {
  const rows = counts.map((row) => row.reduce((sum, count) => sum + count, 0) / n);
  const columns = counts.map((_, column) => counts.reduce((sum, row) => sum + row[column]!, 0) / n);
  return { rows, columns };
}

/** How many units both markers put in the same category. */
export function agreed({ counts }: AgreementTable): number {
  return counts.reduce((sum, row, index) => sum + row[index]!, 0);
}
