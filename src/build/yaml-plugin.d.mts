import type { Plugin as BundlerPlugin } from "esbuild";
import type { Plugin as TestPlugin } from "vite";
import type { StoredWeights } from "../station/weights-format.ts";

export const yamlForEsbuild: BundlerPlugin;
export const yamlForVite: TestPlugin;
export function laidOut(weights: StoredWeights & { hashes: string }): StoredWeights;
