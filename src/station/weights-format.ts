import { HASH_BITS } from "./role-features.ts";
import type { Decoding, RoleWeights } from "./role-model.ts";

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
  /** The same differences as the bundle has them: two bytes each, in base64. */
  gaps?: string;
  /** One signed byte a feature, in base64. */
  values: string;
}

export function unpack(weights: StoredWeights): RoleWeights {
  const bytes = Buffer.from(weights.values, "base64");
  const values = new Int8Array(bytes.buffer, bytes.byteOffset, bytes.length);
  const table = new Int8Array(1 << HASH_BITS);
  if (weights.gaps !== undefined) {
    const gaps = Buffer.from(weights.gaps, "base64");
    for (let feature = 0, hash = 0; feature < values.length; feature++) {
      hash += gaps[2 * feature]! | (gaps[2 * feature + 1]! << 8);
      table[hash] = values[feature]!;
    }
    return { table, scale: weights.scale };
  }
  const hashes = Buffer.from(weights.hashes ?? "", "base64");
  let hash = 0;
  let feature = 0;
  let group = 0;
  let shift = 0;
  for (let at = 0; at < hashes.length; at++) {
    const byte = hashes[at]!;
    group |= (byte & 127) << shift;
    if (byte >= 128) {
      shift += 7;
      continue;
    }
    hash += group;
    table[hash] = values[feature++]!;
    group = 0;
    shift = 0;
  }
  return { table, scale: weights.scale };
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
