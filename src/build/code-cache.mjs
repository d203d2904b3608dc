// Keeps what V8 compiled of the program while it marked a rehearsal: dist/cli.cjs.cache, which bin/saidwell.js hands
// back at the next start. Reading it takes less than compiling anew. V8 refuses it when the version, the flags or the
// program are others, and then compiles as if there were none.
import { spawnSync } from "node:child_process";
import { renameSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";

/** Its code is what most people wait for. */
const REHEARSAL = ["mark", "fixtures/rehearsals/inhaler-strong.txt", "--rubric", "pressurised-inhaler"];

/** Runs the built command in a process of its own: flags and compiled functions must be those of a real start. */
export function writeCodeCache() {
  const { status, stderr } = spawnSync(process.execPath, [fileURLToPath(import.meta.url), ...REHEARSAL], { stdio: ["ignore", "ignore", "pipe"] });
  if (status !== 0) throw new Error(`the built command did not run: ${String(stderr)}`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { script, file, finished } = createRequire(import.meta.url)("../../bin/saidwell.js");
  await finished;
  // Whole or not at all: a start in between must not read half of it.
  writeFileSync(`${file}.cache.new`, script.createCachedData());
  renameSync(`${file}.cache.new`, `${file}.cache`);
}
