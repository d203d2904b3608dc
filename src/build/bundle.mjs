// Builds dist/: one small entry a door, everything else split off and loaded when first needed,
// because start-up is what a person waits for (`npm run bench:start`).
import { rm } from "node:fs/promises";
import { build } from "esbuild";
import { yamlForEsbuild } from "./yaml-plugin.mjs";

await rm("dist", { recursive: true, force: true });
await build({
  entryPoints: { cli: "src/cli/main.ts", index: "src/index.ts" },
  outdir: "dist",
  bundle: true,
  splitting: true,
  format: "esm",
  platform: "node",
  target: "node20.19",
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: "linked",
  // Packages in CommonJS form call `require` for Node's own modules.
  banner: { js: 'import { createRequire as __createRequire } from "node:module"; const require = __createRequire(import.meta.url);' },
  plugins: [yamlForEsbuild],
  logLevel: "warning",
});
