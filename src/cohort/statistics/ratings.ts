/** What each marker said of each unit: `ratings[unit][marker]`, null where the marker did not mark it. */
export type Ratings = readonly (readonly (string | null)[])[];

/** `counts[unit][category]`: how many markers put the unit there. Units nobody marked are left out. */
export function categoryCounts(ratings: Ratings, categories: readonly string[]): number[][] {
  const place = new Map(categories.map((category, index) => [category, index]));
  return ratings
    .map((unit) => {
      const counts = categories.map(() => 0);
      for (const mark of unit) if (mark !== null) counts[place.get(mark)!]! += 1;
      return counts;
    })
    .filter((counts) => counts.some((count) => count > 0));
}
