// Writes src/language/stems.json, the stem of every word of the lexicon and the shipped rubrics, and
// src/language/lexicon/lookup.json, the lexicon as tables to look up in. Run it after changing either (a test says when
// they are stale):
//   node src/build/stems.mjs
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { parse } from "yaml";
import { COMMON } from "./bundle.mjs";

const TABLE = "src/language/stems.json";
const LOOKUP = "src/language/lexicon/lookup.json";
const FOLDERS = ["src/language/lexicon", "rubrics", "rubrics/blocks", "rubrics/responses"];

const words = new Set();
for (const folder of FOLDERS) {
  for (const name of (await readdir(folder)).filter((file) => file.endsWith(".yaml"))) {
    // What stands with a capital everywhere is somebody's name ("Morgan Leckie, 71, ..."), no word of the trade.
    for (const [word] of (await readFile(join(folder, name), "utf8")).matchAll(/(?<![A-Za-z])[a-z]{3,}/g)) words.add(word);
  }
}
const place = await mkdtemp(join(tmpdir(), "saidwell-stems-"));
try {
  await writeFile(TABLE, "{}\n");
  const outfile = join(place, "stem.mjs");
  await build({ ...COMMON, entryPoints: ["src/language/stem.ts"], outfile });
  const { computeStem } = await import(pathToFileURL(outfile).href);
  await writeFile(TABLE, `${JSON.stringify(Object.fromEntries([...words].sort().map((word) => [word, computeStem(word)])))}\n`);
  const lookup = join(place, "lookup.mjs");
  await build({ ...COMMON, entryPoints: ["src/language/lexicon/lookup.ts"], outfile: lookup });
  const { buildLookup } = await import(pathToFileURL(lookup).href);
  const read = async (name) => parse(await readFile(`src/language/lexicon/${name}.yaml`, "utf8"));
  await writeFile(LOOKUP, `${JSON.stringify(buildLookup(await read("synonyms"), await read("wordings")))}\n`);
} finally {
  await rm(place, { recursive: true, force: true });
}
