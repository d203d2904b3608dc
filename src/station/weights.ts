import type { Decoding, RoleWeights } from "./role-model.ts";
import stored from "./role-weights.json";
import { unpack, type StoredWeights } from "./weights-format.ts";

let loaded: RoleWeights | undefined;

/** The shipped weights, unpacked at first use. */
export function roleWeights(): RoleWeights {
  return (loaded ??= unpack(stored));
}

export function calibration(): StoredWeights["calibration"] {
  return stored.calibration;
}

export function decoding(punctuated: boolean): Decoding {
  return punctuated ? stored.decoding.punctuated : stored.decoding.bare;
}
