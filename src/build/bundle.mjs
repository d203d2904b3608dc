// Bundles the code and lays the data beside it: one small entry a door, everything else split off and loaded when
// first needed, because start-up is what a person waits for (`npm run bench:start`).
import { rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { build } from "esbuild";
import { writeRubrics } from "./rubrics.mjs";
import { thirdPartyText } from "./third-party.mjs";
import { yamlForEsbuild } from "./yaml-plugin.mjs";

/** Options that every bundle of this project shares. */
export const COMMON = {
  bundle: true,
  format: "esm",
  platform: "node",
  target: "node20.19",
  // Packages in CommonJS form call `require` for Node's own modules.
  banner: { js: 'import { createRequire as __createRequire } from "node:module"; const require = __createRequire(import.meta.url);' },
  define: { __filename: "import.meta.filename" },
  plugins: [yamlForEsbuild],
  logLevel: "warning",
};

/** @param {string} target replaced as a whole when all is built; a build that fails leaves the last one as it was */
export async function bundle(target) {
  const outdir = `${target}.${process.pid}.new`;
  try {
    await bundleInto(outdir);
    await rm(target, { recursive: true, force: true });
    await rename(outdir, target);
  } finally {
    await rm(outdir, { recursive: true, force: true });
  }
}

async function bundleInto(outdir) {
  // Two builds: code shared between the two doors would be split into more files, and each file opened costs time.
  const built = await Promise.all(
    Object.entries({ cli: "src/cli/main.ts", index: "src/index.ts" }).map(([door, entry]) =>
      build({
        ...COMMON,
        entryPoints: { [door]: entry },
        outdir,
        splitting: true,
        minifySyntax: true,
        minifyWhitespace: true,
        legalComments: "none",
        metafile: true,
      }),
    ),
  );
  // The workers of `saidwell cohort`: one file each, whose hash says which program marked. The pool looks for its own
  // part at this place beside the file that holds it.
  built.push(
    await build({
      ...COMMON,
      entryPoints: { "cohort-worker": "src/cli/cohort/worker.ts", "entry/worker": "node_modules/tinypool/dist/entry/worker.js" },
      outdir,
      minifySyntax: true,
      minifyWhitespace: true,
      legalComments: "none",
      metafile: true,
    }),
  );
  const inputs = [...new Set(built.flatMap(({ metafile }) => Object.keys(metafile.inputs)))];
  await writeRubrics("rubrics", join(outdir, "rubrics"));
  await writeFile(join(outdir, "THIRD-PARTY.txt"), await thirdPartyText(inputs));
}
