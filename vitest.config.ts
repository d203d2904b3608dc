import { defineConfig } from "vitest/config";
// @ts-expect-error a plain script without types
import { yamlForVite } from "./src/build/yaml-plugin.mjs";

export default defineConfig({
  plugins: [yamlForVite],
  test: { include: ["tests/**/*.test.ts"], testTimeout: 30_000 },
});
