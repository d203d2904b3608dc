// Bundles one TypeScript file (YAML imports included) into a temporary file and runs it:
// `node tests/bench/run.mjs tests/bench/roles.ts --check`.
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { COMMON } from "../../src/build/bundle.mjs";

const [entry, ...rest] = process.argv.slice(2);
const folder = await mkdtemp(join(tmpdir(), "saidwell-bench-"));
try {
  const outfile = join(folder, "bench.mjs");
  await build({ ...COMMON, entryPoints: [entry], outfile });
  process.argv.splice(2, process.argv.length, ...rest);
  await import(pathToFileURL(outfile).href);
} finally {
  await rm(folder, { recursive: true, force: true });
}
