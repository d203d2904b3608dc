// Plain JavaScript: the build, which Node 20 runs from its sources, lays the weights out with it as well.

/**
 * Features live in a space of 2^22 hashes: a feature that was not kept meets the weight of one that was in about one case
 * of fifty.
 */
export const HASH_BITS = 22;
/** Hashes that share all but so many last bits stand together: one or two features a block, so that finding one is a look or two. */
export const BLOCK_BITS = 6;

/** Reads the stored differences of the hashes (weights-format.ts). */
export function inBlocks(stored) {
  const starts = new Uint32Array((1 << (HASH_BITS - BLOCK_BITS)) + 1);
  const ends = [];
  let hash = 0;
  let group = 0;
  let shift = 0;
  for (const byte of stored) {
    group |= (byte & 127) << shift;
    shift += 7;
    if (byte >= 128) continue;
    hash += group;
    starts[(hash >> BLOCK_BITS) + 1] += 1;
    ends.push(hash & ((1 << BLOCK_BITS) - 1));
    group = 0;
    shift = 0;
  }
  for (let block = 1; block < starts.length; block++) starts[block] += starts[block - 1];
  return { starts, ends: Uint8Array.from(ends) };
}
