export const HASH_BITS: 22;
export const BLOCK_BITS: 6;
/** @param stored differences of rising feature hashes, LEB128. */
export function inBlocks(stored: Uint8Array): { starts: Uint32Array; ends: Uint8Array };
