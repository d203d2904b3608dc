import { chmodSync, linkSync, realpathSync, renameSync, rmSync, statSync, writeFileSync, type Stats } from "node:fs";
import { basename, dirname, join } from "node:path";
import { problem, systemReason } from "./problems.ts";

export interface OutputOptions {
  /** Path of a file; absent, the text goes to standard output. */
  out?: string | undefined;
  force?: boolean | undefined;
  /** Files that were read and must not be overwritten, even by force. */
  inputs: readonly string[];
}

/** Refuses early what would be refused after the work. @throws ProblemError SW-O01, SW-O02 */
export function checkOutput({ out, force, inputs }: OutputOptions): void {
  if (out === undefined) return;
  const there = statusOf(out);
  if (there === null) {
    const folder = statusOf(dirname(out));
    if (folder === null) throw problem("SW-O02", out, "the output cannot be written: its folder does not exist", "Make the folder first, or write elsewhere.");
    return;
  }
  if (there.isDirectory()) throw problem("SW-O02", out, "the output cannot be written: it is a folder", "Name a file inside it.");
  if (!there.isFile()) return;
  for (const input of inputs) {
    const read = statusOf(input);
    if (read !== null && read.dev === there.dev && read.ino === there.ino) {
      throw problem("SW-O01", out, "the output would overwrite a file that this command reads", "Name another file.");
    }
  }
  if (force !== true) throw problem("SW-O01", out, "the file exists already", "Name another file, or add --force to replace it.");
}

/** Writes all of the text or nothing: into a new file beside the target, which then takes the target's place. */
export async function writeOutput(text: string, options: OutputOptions): Promise<void> {
  const { out, force } = options;
  if (out === undefined) return writeStandard(text);
  checkOutput(options);
  try {
    const there = statusOf(out);
    // A device or a pipe is written to, never replaced.
    if (there !== null && !there.isFile()) writeFileSync(out, text);
    else replace(out, text, there, force === true);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") throw problem("SW-O01", out, "the file exists already", "Name another file, or add --force to replace it.");
    throw problem("SW-O02", out, `the output cannot be written: ${systemReason(error)}`, "Write to another folder, or leave --out away and redirect.");
  }
}

function replace(out: string, text: string, there: Stats | null, force: boolean): void {
  // A link stays a link: what it points to is replaced.
  const target = there === null ? out : realpathSync(out);
  const fresh = join(dirname(target), `.${basename(target).slice(0, 100)}.${process.pid}.tmp`);
  try {
    writeFileSync(fresh, text, { flag: "wx" });
    if (there !== null) chmodSync(fresh, there.mode);
    if (force) renameSync(fresh, target);
    else place(fresh, target);
  } finally {
    rmSync(fresh, { force: true });
  }
}

/** A hard link fails when the name was taken meanwhile, a rename would not; some file systems have no links. */
function place(fresh: string, target: string): void {
  try {
    linkSync(fresh, target);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") throw error;
    if (statusOf(target) !== null) throw Object.assign(new Error("exists"), { code: "EEXIST" });
    renameSync(fresh, target);
  }
}

function statusOf(path: string): Stats | null {
  try {
    return statSync(path);
  } catch {
    return null;
  }
}

/** Resolves when all is handed over. A reader that went away (`| head`) is no error. */
function writeStandard(text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    process.stdout.write(text, (error) => {
      if (error === null || error === undefined || (error as NodeJS.ErrnoException).code === "EPIPE") resolve();
      else reject(problem("SW-O02", "<stdout>", `the output cannot be written: ${systemReason(error)}`));
    });
  });
}
