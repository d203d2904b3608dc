import type { Plugin as BundlerPlugin } from "esbuild";
import type { Plugin as TestPlugin } from "vite";

export const yamlForEsbuild: BundlerPlugin;
export const yamlForVite: TestPlugin;
export function inBlocks(stored: Uint8Array): { starts: Uint32Array; ends: Uint8Array };
