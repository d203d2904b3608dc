// Bundles the code and lays the data beside it: one file a door, because each file opened costs time and start-up is
// what a person waits for (`npm run bench:start`).
import { createHash } from "node:crypto";
import { readFile, rename, rm, writeFile } from "node:fs/promises";
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

/**
 * Packages that marking one rehearsal never calls: each a file of its own beside the program, so that a start does not
 * read them. The program's own code stays in one file.
 */
const APART = ["zod", "yaml", "junit-report-builder", "hyparquet-writer", "jstat", "csv-parse/sync", "csv-stringify/sync", "@humanwhocodes/momoa", "cli-progress", "write-file-atomic"];
const fileOf = (name) => `packages/${name.replaceAll("/", "-").replace("@", "")}`;
const packagesApart = {
  name: "packages-apart",
  setup(build) {
    build.onResolve({ filter: /^[@a-z]/ }, ({ path }) => (APART.includes(path) ? { path: `./${fileOf(path)}.cjs`, external: true } : undefined));
  },
};
/** Whether a terminal has colours the program finds out itself (src/cli/terminal.ts) and tells chalk; asking twice takes milliseconds. */
const coloursTold = {
  name: "colours-told",
  setup(build) {
    build.onResolve({ filter: /^#supports-color$/ }, () => ({ path: "supports-color", namespace: "told" }));
    build.onLoad({ filter: /.*/, namespace: "told" }, () => ({ contents: "export default { stdout: false, stderr: false };", loader: "js" }));
  },
};
/** A package as `require` gives it, by its name. */
const wholePackage = {
  name: "whole-package",
  setup(build) {
    build.onResolve({ filter: /^whole:/ }, ({ path }) => ({ path: path.slice("whole:".length), namespace: "whole" }));
    // Messages in forty languages, of which the program speaks one.
    build.onLoad({ filter: /zod\/v4\/locales\/index\.c?js$/ }, () => ({ contents: 'exports.en = require("./en.cjs").default;', resolveDir: `${process.cwd()}/node_modules/zod/v4/locales`, loader: "js" }));
    build.onLoad({ filter: /.*/, namespace: "whole" }, ({ path }) => ({ contents: `module.exports = require(${JSON.stringify(path)});`, resolveDir: process.cwd(), loader: "js" }));
  },
};

/** Stands in the program until its hash is known. */
const NO_HASH = "saidwell-program-hash-".padEnd(64, "0");

/** Writes the program's own hash into it (src/cli/program-hash.ts). @param {string} file */
async function writeHash(file) {
  const text = await readFile(file, "utf8");
  if (text.split(NO_HASH).length !== 2) throw new Error(`${file} has not one place for its hash`);
  await writeFile(file, text.replace(NO_HASH, createHash("sha256").update(text).digest("hex")));
}

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
  const small = { outdir, minifySyntax: true, minifyWhitespace: true, legalComments: "none", metafile: true };
  const built = await Promise.all([
    // The program is one file of CommonJS, in the function that Node would put round it (bin/saidwell.js calls it), whose compiled form can be kept (code-cache.mjs); what a command does not
    // need is not run.
    build({ ...COMMON, ...small, plugins: [packagesApart, coloursTold, ...COMMON.plugins], format: "cjs", entryPoints: { cli: "src/cli/main.ts" }, outExtension: { ".js": ".cjs" }, banner: { js: '(function (exports, require, module, __filename, __dirname) {const __moduleUrl = require("node:url").pathToFileURL(__filename).href;' }, footer: { js: "})" }, define: { "import.meta.url": "__moduleUrl", __PROGRAM_HASH__: JSON.stringify(NO_HASH) } }),
    build({ ...COMMON, ...small, plugins: [wholePackage], format: "cjs", entryPoints: Object.fromEntries(APART.map((name) => [fileOf(name), `whole:${name}`])), outExtension: { ".js": ".cjs" }, banner: {}, define: {} }),
    build({ ...COMMON, ...small, entryPoints: { index: "src/index.ts" } }),
    // The workers of `saidwell cohort`: one file each, whose hash says which program marked. The pool looks for its own
    // part at this place beside the file that holds it.
    build({ ...COMMON, ...small, entryPoints: { "cohort-worker": "src/cli/cohort/worker.ts", "entry/worker": "node_modules/tinypool/dist/entry/worker.js" } }),
  ]);
  await writeHash(join(outdir, "cli.cjs"));
  const inputs = [...new Set(built.flatMap(({ metafile }) => Object.keys(metafile.inputs)))].filter((input) => !/^(whole|told):/.test(input));
  await writeRubrics("rubrics", join(outdir, "rubrics"));
  await writeFile(join(outdir, "THIRD-PARTY.txt"), await thirdPartyText(inputs));
}
