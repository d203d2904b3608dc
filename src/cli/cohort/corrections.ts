import { createHash } from "node:crypto";
import { statSync } from "node:fs";
import { join } from "node:path";
import { globSync } from "tinyglobby";
import { ProblemError } from "../../problem/problem.ts";
import type { Corrections } from "../../scoring/corrections.ts";
import { readCorrections } from "../../scoring/corrections-file.ts";
import { problem, systemReason } from "../problems.ts";
import { readText } from "../rubric-file.ts";

/* In a module of its own, because YAML and zod cost more start-up than all the rest. */

/** A YAML file that says so is one of ours; others (rubrics) may stand beside it. */
const OURS = /^saidwell:\s*["']?corrections@/m;

/**
 * Every corrections file of a folder and below, sorted by path. They are named by their path below the folder: the same
 * bytes from wherever the command is given.
 * @throws ProblemError SW-M01 with every fault of every file
 */
export function correctionsOfFolder(folder: string): Corrections[] {
  let paths: string[];
  try {
    if (!statSync(folder).isDirectory()) throw problem("SW-M01", folder, "this is a file, not a folder", "Name the folder that holds the corrections files.");
    paths = globSync("**/*.{yaml,yml}", { cwd: folder, onlyFiles: true, dot: false, expandDirectories: false }).sort();
  } catch (error) {
    if (error instanceof ProblemError) throw error;
    throw problem("SW-M01", folder, `the folder of corrections cannot be read: ${systemReason(error)}`, "Name the folder that holds the corrections files.");
  }
  const read = paths.map((path): Corrections | ProblemError | null => {
    const typed = join(folder, path);
    try {
      const text = readText(typed);
      return OURS.test(text) ? { ...readCorrections(text, typed), file: path } : null;
    } catch (error) {
      return error instanceof ProblemError ? error : problem("SW-M01", typed, `the file cannot be read: ${systemReason(error)}`, "Make it readable, or take it out of the folder.");
    }
  });
  const faults = read.flatMap((one) => (one instanceof ProblemError ? one.findings : []));
  if (faults.length > 0) throw new ProblemError(faults);
  const found = read.filter((one): one is Corrections => one !== null && !(one instanceof ProblemError));
  if (found.length === 0) throw problem("SW-M01", folder, "there is no corrections file in this folder", "A corrections file is YAML and starts with 'saidwell: corrections@1'.");
  return found;
}

/** Of what all of them say: parts of a cohort must be corrected alike. */
export function correctionsHash(all: readonly Corrections[]): string {
  return createHash("sha256").update(JSON.stringify(all)).digest("hex");
}
