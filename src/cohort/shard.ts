import { createHash } from "node:crypto";

/** Part `index` of `of`; the first is 1. */
export interface Shard {
  index: number;
  of: number;
}

/** More parts than this are a slip of the finger; a Slurm array holds about a thousand as it is set up. */
export const MOST_SHARDS = 100_000;

/** `2/8`. @throws Error with a sentence */
export function parseShard(typed: string): Shard {
  const match = /^\s*(\d{1,6})\s*\/\s*(\d{1,6})\s*$/.exec(typed);
  const [index, of] = [Number(match?.[1]), Number(match?.[2])];
  if (match === null || index < 1 || index > of || of > MOST_SHARDS) throw new Error("Write I/N, such as 1/8 for the first of eight parts.");
  return { index, of };
}

/**
 * Whether a file is of this part: by the first 48 bits of the SHA-256 of its path below the folder. The same on every
 * machine, also where it writes accents apart (NFC), whatever other files there are, so that parts stay whole when files are added.
 */
export function inShard(file: string, { index, of }: Shard): boolean {
  const bits = createHash("sha256").update(file.normalize("NFC")).digest().readUIntBE(0, 6);
  return bits % of === index - 1;
}
