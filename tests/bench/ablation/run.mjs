// What each part of the matcher is worth, by leaving it out: `npm run bench:ablation`, or `-- "sound keys"` for some parts.
// For each part the bench is bundled with something else in a module's place and run in a process of its own.
import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { promisify } from "node:util";
import { build } from "esbuild";
import { COMMON } from "../../../src/build/bundle.mjs";
import { PARTS } from "./parts.mjs";

const run = promisify(execFile);
const wanted = process.argv.slice(2).filter((word) => !word.startsWith("--"));
const unknown = wanted.filter((name) => !PARTS.some((part) => part.name === name));
if (unknown.length > 0) {
  console.error(`No such part: ${unknown.join(", ")}. Parts: ${PARTS.map(({ name }) => name).join(", ")}.`);
  process.exit(2);
}

/** A module with some of its exports replaced: what is named stands before what a star exports. */
function replaced({ module, instead }) {
  const target = resolve(module);
  return {
    name: "replaced",
    setup(builder) {
      builder.onResolve({ filter: /^whole:/ }, ({ path }) => ({ path: path.slice("whole:".length), namespace: "whole" }));
      builder.onLoad({ filter: /.*/, namespace: "whole" }, async ({ path }) => ({ contents: await readFile(path, "utf8"), loader: path.endsWith(".json") ? "json" : "ts", resolveDir: dirname(path) }));
      builder.onLoad({ filter: /\.(ts|json)$/, namespace: "file" }, ({ path }) =>
        path === target ? { contents: `import * as whole from "whole:${target}"; export * from "whole:${target}"; ${instead}`, loader: "js", resolveDir: dirname(target) } : undefined);
    },
  };
}

const folder = await mkdtemp(join(tmpdir(), "saidwell-ablation-"));
try {
  console.log("# What each part of the matcher is worth, by leaving it out\n\nF1 over labelled passages, Cohen's kappa with a reader over the items of whole stations. All texts invented.\n");
  console.log("| left out | passages, tuning | passages, unseen | stations, tuned | stations, unseen |\n|---|---|---|---|---|");
  for (const part of PARTS.filter(({ name }) => wanted.length === 0 || wanted.includes(name))) {
    const outfile = join(folder, "measure.mjs");
    await build({ ...COMMON, entryPoints: ["tests/bench/ablation/measure.ts"], outfile, plugins: [...(part.module === undefined ? [] : [replaced(part)]), ...COMMON.plugins] });
    const { stdout } = await run(process.execPath, [outfile], { maxBuffer: 1 << 24 });
    const { passages, stations } = JSON.parse(stdout);
    console.log(`| ${[part.name, ...[passages.tuning, passages.unseen, stations.tuned, stations.unseen].map((value) => value.toFixed(3))].join(" | ")} |`);
  }
} finally {
  await rm(folder, { recursive: true, force: true });
}
