import { statSync } from "node:fs";
import { join, resolve } from "node:path";
import { CATALOGUE } from "../problem/catalogue.ts";
import type { Finding } from "../problem/problem.ts";
import { nearFile } from "./near-file.ts";
import { problem, systemReason } from "./problems.ts";
import { rubricText } from "./rubric-file.ts";
import { ProblemError } from "../problem/problem.ts";

export interface FoundFile {
  path: string;
  text: string;
  kind: "rubric" | "block" | "responses";
}

const YAML = "**/*.{yaml,yml}";
const PATTERN = /[*?{}[\]]/;
/** Of the first line that says what a file is. */
const KIND = /^saidwell:[ \t]*["']?(rubric|block|responses)@/m;
/** Of a sheet, and no part of a rubric. */
const IS_CORRECTIONS = /^saidwell:[ \t]*["']?corrections@/m;
/** The same with a slip in it. */
const CLAIM = /^saidwell:[ \t]*(.*)$/m;

/**
 * The rubrics, blocks and responses files that paths name: files, folders with all below them, or patterns. Links to
 * folders are not followed. What a folder holds besides is counted in a finding.
 * @throws ProblemError SW-R01 when a path names nothing
 * @returns `read`: every file that was looked into, those left out too
 */
export async function rubricFiles(paths: readonly string[]): Promise<{ files: FoundFile[]; findings: Finding[]; read: string[] }> {
  const files = new Map<string, FoundFile>();
  const findings: Finding[] = [];
  const read: string[] = [];
  for (const path of paths) {
    const { named, others } = await namesOf(path);
    const leftOut: string[] = [];
    read.push(...named, ...others);
    for (const name of named) if (!files.has(resolve(name))) files.set(resolve(name), { path: name, ...readNamed(name) });
    for (const name of others) {
      if (files.has(resolve(name))) continue;
      try {
        const text = rubricText(name);
        const kind = KIND.exec(text)?.[1] as FoundFile["kind"] | undefined;
        if (kind !== undefined) files.set(resolve(name), { path: name, text, kind });
        else if (IS_CORRECTIONS.test(text)) continue;
        else if (CLAIM.test(text)) findings.push(strange(name, text));
        else leftOut.push(name);
      } catch (error) {
        if (!(error instanceof ProblemError)) throw error;
        findings.push(...error.findings);
      }
    }
    if (leftOut.length > 0) {
      const which = leftOut.length === 1 ? "this is" : `this and ${leftOut.length - 1} more YAML file${leftOut.length === 2 ? " are" : "s are"}`;
      findings.push({ code: "SW-C16", severity: "info", file: leftOut[0]!, line: 1, message: `${which} neither rubric nor block and left out`, mend: KINDS });
    }
    if (named.length + others.length === 0) throw problem("SW-R01", path, "there is no YAML file here", "Name a rubric, a folder that holds rubrics, or a pattern such as 'rubrics/**/*.yaml'.");
  }
  return { files: [...files.values()], findings, read };
}

const KINDS = CATALOGUE["SW-C16"].mend;

/** A file that means to be one of ours is not passed over in silence for a slip in that very line. */
function strange(file: string, text: string): Finding {
  const { index, 1: claim } = CLAIM.exec(text)!;
  const line = text.slice(0, index).split("\n").length;
  return { code: "SW-C16", severity: "warning", file, line, message: `it says 'saidwell: ${claim!.trim()}', which is no form that is known, and was left out`, mend: KINDS };
}

/** A file named by the person is checked whatever it says of itself. */
function readNamed(path: string): { text: string; kind: FoundFile["kind"] } {
  const text = rubricText(path);
  return { text, kind: (KIND.exec(text)?.[1] as FoundFile["kind"] | undefined) ?? "rubric" };
}

async function namesOf(path: string): Promise<{ named: string[]; others: string[] }> {
  let folder: boolean;
  try {
    folder = statSync(path).isDirectory();
  } catch (error) {
    if (!PATTERN.test(path)) throw problem("SW-R01", path, `the rubric cannot be read: ${systemReason(error)}`, `${nearFile(path)}Name a rubric or block file, a folder, or a pattern such as 'rubrics/**/*.yaml'.`);
    return { named: [], others: await search(path, ".") };
  }
  if (!folder) return { named: [path], others: [] };
  return { named: [], others: (await search(YAML, path)).map((name) => join(path, name)) };
}

async function search(pattern: string, cwd: string): Promise<string[]> {
  const { glob } = await import("tinyglobby");
  const names = await glob(pattern, { cwd, followSymbolicLinks: false, ignore: ["**/node_modules/**"], expandDirectories: false });
  return names.filter((name) => /\.ya?ml$/i.test(name)).sort();
}
