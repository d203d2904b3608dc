// Writes rubrics/rubric.schema.json and rubrics/block.schema.json from the zod schema of rubrics. Run it after changing
// that (a test says when they are stale):
//   node src/build/schema.mjs
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { COMMON } from "./bundle.mjs";

const place = await mkdtemp(join(tmpdir(), "saidwell-schema-"));
try {
  const outfile = join(place, "schema.mjs");
  await build({ ...COMMON, entryPoints: ["src/rubric/json-schema.ts"], outfile });
  const { jsonSchemaText, SCHEMA_FILES } = await import(pathToFileURL(outfile).href);
  for (const [form, file] of Object.entries(SCHEMA_FILES)) await writeFile(join("rubrics", file), jsonSchemaText(form));
} finally {
  await rm(place, { recursive: true, force: true });
}
