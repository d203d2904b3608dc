/** Equally spread numbers in 0..1 from a seed (mulberry32, public domain), so that training repeats byte for byte. */
export function random(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let hash = Math.imul(state ^ (state >>> 15), 1 | state);
    hash = (hash + Math.imul(hash ^ (hash >>> 7), 61 | hash)) ^ hash;
    return ((hash ^ (hash >>> 14)) >>> 0) / 4294967296;
  };
}

/** Shuffles in place (Fisher and Yates). */
export function shuffle<T>(items: T[], next: () => number): T[] {
  for (let at = items.length - 1; at > 0; at--) {
    const other = Math.floor(next() * (at + 1));
    [items[at], items[other]] = [items[other]!, items[at]!];
  }
  return items;
}
