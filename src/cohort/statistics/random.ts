/**
 * A generator of numbers from 0 to below 1 that gives the same row every time, so that a resampled interval is the
 * same on every machine. Mulberry32 (T. Ettinger, public domain): a 32-bit mixer, good enough to draw with
 * replacement, not for secrets.
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
