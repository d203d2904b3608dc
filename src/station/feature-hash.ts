import { HASH_BITS } from "./weight-blocks.mjs";

const HASH_MASK = (1 << HASH_BITS) - 1;

/** The hash of a transition feature for one direction: 0 from candidate to patient, 1 back. */
export function directed(feature: number, direction: 0 | 1): number {
  return direction === 0 ? feature : (Math.imul(feature ^ 0x2c1b3c6d, 0x297a2d39) >>> 7) & HASH_MASK;
}

/** The hash of a template filled with up to three values. */
export function mix(template: number, a: number, b = 0, c = 0): number {
  let hash = Math.imul(template + 0x9e3779b9, 0x85ebca6b);
  hash = Math.imul((hash ^ (hash >>> 15)) ^ a, 0xc2b2ae35);
  hash = Math.imul((hash ^ (hash >>> 13)) ^ b, 0x27d4eb2f);
  hash = Math.imul((hash ^ (hash >>> 16)) ^ c, 0x165667b1);
  return (hash ^ (hash >>> 15)) & HASH_MASK;
}

/** Hashes of features as they are found: one template after the other, however many there will be. */
export class FeatureHashes {
  data = new Int32Array(1 << 14);
  length = 0;
  /** @param apart is added to the number of every template. */
  constructor(private readonly apart = 0) {}
  push(value: number): void {
    if (this.length === this.data.length) {
      const wider = new Int32Array(this.data.length * 2);
      wider.set(this.data);
      this.data = wider;
    }
    this.data[this.length++] = value;
  }
  add(template: number, a: number, b = 0, c = 0): void {
    this.push(mix(this.apart + template, a, b, c));
  }
  whole(): Int32Array {
    return this.data.subarray(0, this.length);
  }
}
