import type { Decoding, RoleWeights } from "./role-model.ts";
import { inBlocks } from "./weight-blocks.mjs";

/** The form of role-weights.json, which `npm run train:roles` writes. */
export interface StoredWeights {
  credit: string[];
  madeBy: string;
  /** Number of features kept. */
  features: number;
  /** What one step of a stored value is worth, in log-odds. */
  scale: number;
  /** By form of the text: punctuated or bare. */
  decoding: { punctuated: Decoding; bare: Decoding };
  /** Logistic calibration of a sentence's confidence: logit = intercept + slope × logit of the mean marginal. */
  calibration: { slope: number; intercept: number };
  /** Feature hashes in rising order, as differences in base-128 groups, least first (LEB128), in base64. */
  hashes?: string;
  /** The same as the bundle has them, each in base64: `starts` and `ends` of the weights. */
  starts?: string;
  ends?: string;
  /** One signed byte a feature, in base64. */
  values: string;
}

export function unpack(weights: StoredWeights): RoleWeights {
  const values = new Int8Array(bytesOf(weights.values).buffer);
  if (weights.starts !== undefined) return { starts: new Uint32Array(bytesOf(weights.starts).buffer), ends: bytesOf(weights.ends ?? ""), values, scale: weights.scale };
  return { ...inBlocks(bytesOf(weights.hashes ?? "")), values, scale: weights.scale };
}

/** A memory of its own: a small one would share Node's pool, and start anywhere in it. */
function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  return new Uint8Array(Buffer.from(base64, "base64"));
}

/** The inverse of `unpack`: keeps what a signed byte can tell from zero. */
export function packWeights(weights: ReadonlyMap<number, number>): Pick<StoredWeights, "features" | "scale" | "values"> & { hashes: string } {
  // The few largest weights are clipped, so that the many small ones keep their shape.
  const CLIP_QUANTILE = 0.9995;
  const sizes = [...weights.values()].map(Math.abs).sort((a, b) => a - b);
  const scale = (sizes[Math.floor((sizes.length - 1) * CLIP_QUANTILE)] ?? 1) / 127;
  const bytes: number[] = [];
  const values: number[] = [];
  let before = 0;
  for (const [hash, weight] of [...weights].sort((a, b) => a[0] - b[0])) {
    const value = Math.max(-127, Math.min(127, Math.round(weight / scale)));
    if (value === 0) continue;
    let gap = hash - before;
    while (gap >= 128) {
      bytes.push((gap & 127) | 128);
      gap >>>= 7;
    }
    bytes.push(gap);
    values.push(value);
    before = hash;
  }
  return { features: values.length, scale, hashes: Buffer.from(bytes).toString("base64"), values: Buffer.from(Int8Array.from(values).buffer).toString("base64") };
}
