import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { nearOrAll } from "../problem/nearest.ts";
import { Unreadable } from "../problem/problem.ts";
import type { PackedRubric } from "../matching/packed.ts";
import type { Rubric } from "../rubric/schema.ts";

/** One line of the list of shipped rubrics, written by the build. */
export interface ShippedRubric {
  name: string;
  title: string;
  version: number;
  jurisdiction: string[];
  /** Seconds. */
  limit: number;
  /** Seconds. */
  target: number;
  items: number;
  critical: number;
}

/** The build lays the rubrics, blocks read in, beside the bundled code. */
const FOLDER = fileURLToPath(new URL("./rubrics/", import.meta.url));

export function shippedRubrics(folder = FOLDER): ShippedRubric[] {
  return JSON.parse(readFileSync(join(folder, "index.json"), "utf8")) as ShippedRubric[];
}

/** @param name one of the list's. */
export function shippedRubric(name: string, folder = FOLDER): Rubric {
  return JSON.parse(readFileSync(join(folder, `${name}.json`), "utf8")) as Rubric;
}

/** What the build compiled of it. */
export function shippedCompiled(name: string, folder = FOLDER): PackedRubric {
  return JSON.parse(readFileSync(join(folder, `${name}.compiled.json`), "utf8")) as PackedRubric;
}

/** The texts of the shared blocks, by name. */
export function shippedBlocks(folder = FOLDER): Record<string, string> {
  return JSON.parse(readFileSync(join(folder, "blocks.json"), "utf8")) as Record<string, string>;
}

/** The text of a shared block, for a rubric that includes `shipped:NAME`. @throws Unreadable */
export function shippedBlock(name: string, folder = FOLDER): string {
  const names = shippedBlocks(folder);
  const text = Object.hasOwn(names, name) ? names[name] : undefined;
  if (text === undefined) throw new Unreadable(`there is no shipped block '${name}'`, nearOrAll(`shipped:${name}`, Object.keys(names).map((known) => `shipped:${known}`), "There are"));
  return text;
}
