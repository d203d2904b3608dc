/** Shuffles in place (Fisher and Yates). */
export function shuffle<T>(items: T[], next: () => number): T[] {
  for (let at = items.length - 1; at > 0; at--) {
    const other = Math.floor(next() * (at + 1));
    [items[at], items[other]] = [items[other]!, items[at]!];
  }
  return items;
}
