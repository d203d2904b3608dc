// Reads every rubric through the product's own loader and writes it as JSON, its blocks read in, so that a shipped
// rubric needs neither YAML nor zod when a person waits. A rubric with a fault stops the build.
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { parse, stringify } from "yaml";
import { COMMON } from "./bundle.mjs";

/** @param {string} from folder of rubrics, with `blocks` in it @param {string} to */
export async function writeRubrics(from, to) {
  const { loadRubric, compileRubric, packRubric } = await loader();
  await mkdir(to, { recursive: true });
  const list = [];
  for (const file of await yamlFiles(from)) {
    const name = basename(file, ".yaml");
    const text = await readFile(file, "utf8");
    const rubric = loadRubric(text, { file, readBlock: (include) => readFileSync(join(from, include), "utf8") });
    if (rubric.id !== name) throw new Error(`${file}: its id is '${rubric.id}', but a shipped rubric is called by its file's name`);
    const items = rubric.sections.flatMap((section) => section.items);
    list.push({
      name,
      title: rubric.title,
      version: rubric.version,
      jurisdiction: rubric.jurisdiction,
      limit: rubric.time.limit,
      target: rubric.time.target,
      items: items.length,
      critical: items.filter((item) => item.critical).length,
    });
    await writeFile(join(to, `${name}.json`), JSON.stringify({ ...rubric, file: name }));
    await writeFile(join(to, `${name}.compiled.json`), JSON.stringify(packRubric(compileRubric(rubric))));
  }
  await writeFile(join(to, "index.json"), JSON.stringify(list));
  const blocks = {};
  for (const file of await yamlFiles(join(from, "blocks"))) blocks[basename(file, ".yaml")] = wholeBlock(await readFile(file, "utf8"), join(from, "blocks"));
  await writeFile(join(to, "blocks.json"), JSON.stringify(blocks));
}

/** A block for `shipped:NAME`, which has no folder to name a responses file in: its responses stand in it. */
function wholeBlock(text, folder) {
  const block = parse(text);
  if (block.responses === undefined) return text;
  const more = parse(readFileSync(join(folder, block.responses), "utf8"));
  delete block.responses;
  for (const item of block.items) {
    for (const element of item.elements ?? [item]) {
      for (const [list, phrases] of Object.entries(more.items?.[item.id]?.[element.id] ?? {})) element[list] = [...(element[list] ?? []), ...phrases];
    }
  }
  for (const statement of block.unsafe ?? []) statement.say.push(...(more.unsafe?.[statement.id]?.say ?? []));
  return stringify(block);
}

async function yamlFiles(folder) {
  const names = await readdir(folder);
  return names.filter((name) => name.endsWith(".yaml")).sort().map((name) => join(folder, name));
}

async function loader() {
  const folder = await mkdtemp(join(tmpdir(), "saidwell-build-"));
  try {
    const outfile = join(folder, "load.mjs");
    await build({ ...COMMON, entryPoints: [resolve("src/build/rubric-tools.ts")], outfile });
    return await import(pathToFileURL(outfile).href);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
