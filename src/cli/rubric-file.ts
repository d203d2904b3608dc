import { readFileSync, realpathSync, statSync } from "node:fs";
import { basename, dirname, isAbsolute, join, resolve, sep } from "node:path";
import { Unreadable } from "../problem/problem.ts";
import { loadPlacedRubric, type PlacedRubric } from "../rubric/load.ts";
import type { Rubric } from "../rubric/schema.ts";
import { nearFile } from "./near-file.ts";
import { problem, systemReason } from "./problems.ts";
import { shippedBlock, shippedBlocks } from "./shipped.ts";

/** The largest shipped rubric is under 100 kB; a file ten times that is not a rubric somebody wrote. */
export const MAX_RUBRIC_BYTES = 1024 * 1024;

export const SHIPPED = "shipped:";

/**
 * Loads a rubric from a YAML file. In a module of its own, because YAML and zod cost more start-up than all the rest.
 * @param reads takes the path of every file that is read, its blocks and responses too: no output may take their place.
 * @throws ProblemError SW-R01 and those of loadRubric.
 */
export function rubricFromFile(path: string, reads: string[] = []): Rubric {
  reads.push(path);
  return placedRubric(rubricText(path), path, reads).rubric;
}

/** The text of a rubric or block file. @throws ProblemError SW-R01 */
export function rubricText(path: string): string {
  try {
    return readText(path);
  } catch (error) {
    const mend = error instanceof Unreadable ? error.mend : `${nearFile(path)}Give the path of a rubric file, or the name of a shipped rubric ('saidwell rubrics' lists them).`;
    throw problem("SW-R01", path, `the rubric cannot be read: ${systemReason(error)}`, mend);
  }
}

/**
 * @param path of the rubric that the text is from: its blocks are read from beside it.
 * @param reads takes the path of every file that is read, also of those that turn out to be faulty.
 * @throws ProblemError those of loadRubric
 */
export function placedRubric(text: string, path: string, reads: string[] = []): PlacedRubric {
  return loadPlacedRubric(text, { file: path, readBlock: blockReader(path, reads), blockFile: (include) => blockPath(path, include), foreign: isShipped });
}

/** Whether an include names a block of the program's own. */
export function isShipped(include: string): boolean {
  return include.startsWith(SHIPPED);
}

/** The path under which an included file is found; `shipped:NAME` stays. */
export function blockPath(rubric: string, include: string): string {
  return isShipped(include) ? include : join(dirname(rubric), include);
}

/**
 * Reads blocks from the folder of the rubric and below, and `shipped:NAME` from the program's own.
 * A path or a link that leads outside is refused: a rubric from somebody else must not read this person's files.
 * @param reads takes the path of every file that is read.
 */
export function blockReader(rubric: string, reads: string[] = []): (include: string) => string {
  const folder = realpathSync(dirname(resolve(rubric)));
  const own = join(folder, basename(rubric));
  return (include) => {
    if (isShipped(include)) return shippedBlock(include.slice(SHIPPED.length));
    if (isAbsolute(include) || include.includes("\\")) throw new Unreadable("it is not relative to the rubric, with forward slashes", "Write it as seen from this file: 'blocks/opening.yaml'.");
    const wanted = resolve(folder, include);
    if (!inside(folder, wanted)) throw new Unreadable("it lies outside the rubric's folder", INSIDE);
    let real: string;
    try {
      real = realpathSync(wanted);
    } catch (error) {
      const meant = Object.hasOwn(shippedBlocks(), include) ? `Did you mean '${SHIPPED}${include}'? ` : nearFile(wanted, folder);
      throw new Unreadable(systemReason(error), `${meant}Name a file relative to this one, in its folder or below.`, { cause: error });
    }
    if (!inside(folder, real)) throw new Unreadable("it is a link that leads outside the rubric's folder", INSIDE);
    if (real === own) throw new Unreadable("it is this rubric itself: the include would never end", "Name a block, or take the include out.");
    reads.push(real);
    let text: string;
    try {
      text = readText(real);
    } catch (error) {
      if (error instanceof Unreadable) throw error;
      throw new Error(systemReason(error), { cause: error });
    }
    if (IS_RUBRIC.test(text)) throw new Unreadable("it is a rubric, and only blocks can be included: a rubric that includes rubrics could go round in a circle", "Move the items that both share to a file that starts with 'saidwell: block@1', and include that in both.");
    return text;
  };
}

/** Of a text that is a rubric and no block. */
export const IS_RUBRIC = /^saidwell:[ \t]*["']?rubric@/m;

function inside(folder: string, path: string): boolean {
  return path.startsWith(folder.endsWith(sep) ? folder : folder + sep);
}

const INSIDE = "Copy the file into the rubric's folder or below it, and name it from there.";

const tooLarge = () => new Unreadable(`it is larger than ${MAX_RUBRIC_BYTES / 1024 / 1024} MB`, "See whether it is a rubric at all; of a very long one move responses to files of their own ('responses:').");

/** The text of a file of YAML. @throws Unreadable, and the system's own error where there is no such file */
export function readText(path: string): string {
  const status = statSync(path);
  if (status.isDirectory()) throw new Unreadable("it is a folder", "Name a file in it.");
  if (status.size > MAX_RUBRIC_BYTES) throw tooLarge();
  const bytes = readFileSync(path);
  if (bytes.length > MAX_RUBRIC_BYTES) throw tooLarge();
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new Unreadable("it is not UTF-8 text", "Save it as UTF-8: most editors have it under 'Save as' or 'Encoding'.");
  }
}
