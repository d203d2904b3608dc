import { readdirSync } from "node:fs";
import { basename, dirname, join, relative, sep } from "node:path";
import { nearest } from "../problem/nearest.ts";

/**
 * `Did you mean 'drops.yaml'? ` or nothing: of the files of YAML beside a path where there is none.
 * @param from the folder that the name is told from; absent, the name is told as the path was written.
 */
export function nearFile(path: string, from?: string): string {
  let beside: string[];
  try {
    beside = readdirSync(dirname(path));
  } catch {
    // Without the folder there is nothing near.
    return "";
  }
  const near = nearest(basename(path), beside.filter((name) => /\.ya?ml$/i.test(name)));
  if (near === undefined) return "";
  const meant = join(dirname(path), near);
  return `Did you mean '${from === undefined ? meant : relative(from, meant).replaceAll(sep, "/")}'? `;
}
