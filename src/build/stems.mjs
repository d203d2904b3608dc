// Writes src/language/stems.json: the stem of every word of the lexicon and the shipped rubrics. Run it after changing
// either (a test says when it is stale):
//   node src/build/stems.mjs
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { COMMON } from "./bundle.mjs";

const TABLE = "src/language/stems.json";
const FOLDERS = ["src/language/lexicon", "rubrics", "rubrics/blocks"];

const words = new Set();
for (const folder of FOLDERS) {
  for (const name of (await readdir(folder)).filter((file) => file.endsWith(".yaml"))) {
    for (const [word] of (await readFile(join(folder, name), "utf8")).toLowerCase().matchAll(/[a-z]{3,}/g)) words.add(word);
  }
}
const place = await mkdtemp(join(tmpdir(), "saidwell-stems-"));
try {
  await writeFile(TABLE, "{}\n");
  const outfile = join(place, "stem.mjs");
  await build({ ...COMMON, entryPoints: ["src/language/stem.ts"], outfile });
  const { computeStem } = await import(pathToFileURL(outfile).href);
  await writeFile(TABLE, `${JSON.stringify(Object.fromEntries([...words].sort().map((word) => [word, computeStem(word)])))}\n`);
} finally {
  await rm(place, { recursive: true, force: true });
}
