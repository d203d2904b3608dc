import { basename, dirname, relative, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { slugOf } from "../../rubric/slug.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { problem } from "../problems.ts";
import { STARTER } from "./rubric-starter.ts";

/** The schemas lie in the package, beside the folder of the bundled code. */
const SCHEMA = fileURLToPath(new URL("../rubrics/rubric.schema.json", import.meta.url));

/** Writes a commented rubric to start from, to standard output or to a file that is not there yet. */
export async function runRubricNew(file: string | undefined): Promise<void> {
  if (file === undefined) return writeOutput(starter("my-station", "."), { inputs: [] });
  if (!/\.ya?ml$/i.test(file)) throw problem("SW-U01", file, "a rubric's file ends in .yaml", `Write 'saidwell rubric new ${file}.yaml'.`);
  const output = { out: file, inputs: [] };
  try {
    checkOutput(output);
  } catch (error) {
    // Never replaced, not even by force: the advice of other commands does not hold.
    if ((error as { findings?: { code: string }[] }).findings?.[0]?.code === "SW-O01") throw problem("SW-O01", file, "the file exists already, and a new rubric never replaces one", "Give another name.");
    throw error;
  }
  await writeOutput(starter(idOf(file), dirname(file)), output);
}

function starter(id: string, folder: string): string {
  const schema = relative(resolve(folder), SCHEMA).split(sep).join("/");
  return STARTER.replace("{schema}", schema).replaceAll("{id}", id);
}

/** The file's name as an id, as far as it gives one. */
function idOf(file: string): string {
  return slugOf(basename(file).replace(/\.ya?ml$/i, "")) ?? "my-station";
}
