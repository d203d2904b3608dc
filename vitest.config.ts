import { defineConfig } from "vitest/config";
import { yamlForVite } from "./src/build/yaml-plugin.mjs";

export default defineConfig({
  plugins: [yamlForVite],
  test: { include: ["tests/**/*.test.ts"], testTimeout: 30_000 },
});
