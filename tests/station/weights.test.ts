import { statSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { findStation } from "../../src/station/find.ts";
import { HASH_BITS } from "../../src/station/weight-blocks.mjs";
import stored from "../../src/station/role-weights.json";
import { weightOf } from "../../src/station/role-model.ts";
import { packWeights, unpack, type StoredWeights } from "../../src/station/weights-format.ts";
import { laidOut } from "../../src/build/yaml-plugin.mjs";
import { transcriptOf } from "./transcript-of.ts";

test("weights come back from their packed form to within half a step", () => {
  fc.assert(
    fc.property(fc.dictionary(fc.integer({ min: 0, max: (1 << HASH_BITS) - 1 }).map(String), fc.double({ min: -3, max: 3, noNaN: true }), { minKeys: 1, maxKeys: 200 }), (entries) => {
      const weights = new Map(Object.entries(entries).map(([hash, weight]) => [Number(hash), weight]));
      const packed = packWeights(weights);
      const unpacked = unpack(packed as StoredWeights);
      const { scale } = unpacked;
      const largest = 127 * scale;
      for (const [hash, weight] of weights) {
        const clipped = Math.max(-largest, Math.min(largest, weight));
        expect(Math.abs(weightOf(unpacked, hash) * scale - clipped)).toBeLessThanOrEqual(scale / 2 + 1e-12);
      }
    }),
    { numRuns: 20 },
  );
});

test("the build lays the weights out as the program unpacks them", () => {
  expect(unpack(laidOut(stored))).toEqual(unpack(stored));
  expect(laidOut(stored)).not.toHaveProperty("hashes");
});

test("a feature without a weight weighs nothing", () => {
  const unpacked = unpack(packWeights(new Map([[64, 1], [66, -1]])) as StoredWeights);
  expect([63, 64, 65, 66, 67, 128].map((hash) => Math.sign(weightOf(unpacked, hash)))).toEqual([0, 1, 0, -1, 0, 0]);
});

test("the shipped weights are small, credited and whole", () => {
  expect(statSync("src/station/role-weights.json").size).toBeLessThan(400_000);
  expect(stored.credit.filter((line) => line.includes("CC BY 4.0"))).toHaveLength(3);
  expect(Buffer.from(stored.values, "base64")).toHaveLength(stored.features);
});

test("who spoke is worked out in time that grows as the transcript does", () => {
  const timeFor = (sentences: number) => {
    const text = Array.from({ length: sentences }, (_, at) => `Shake it well and breathe out number ${at}. Okay, and then what do I do?`).join(" ");
    const times = Array.from({ length: 5 }, () => {
      const transcript = transcriptOf(text);
      const from = performance.now();
      findStation(transcript);
      return performance.now() - from;
    });
    return Math.min(...times);
  };
  timeFor(90);
  // Sixteen times where every sentence looks at all others. How long it takes in all: bench:start, as a ratio.
  expect(timeFor(360) / timeFor(90)).toBeLessThan(10);
});
