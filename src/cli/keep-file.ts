import { readdirSync, rmSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import writeFileAtomic from "write-file-atomic";
import { makeFolder } from "./make-folder.ts";

/**
 * At most so many files: the shipped rubrics and a dozen edits of each. One is some kilobytes, so that a folder stays
 * below a few megabytes.
 */
export const MOST_KEPT = 200;
/** Files of ours, and what a run that was ended left of one. Whatever else lies there is not touched. */
const OURS = /^[0-9a-f]{64}\.json(\.\d+)?$/;

/** Writes whole or not at all, and clears away the oldest beyond `MOST_KEPT`. What the system refuses is no error: nothing is kept then. */
export function keepFile(path: string, text: string, most = MOST_KEPT): void {
  try {
    // Rubrics of an examination may be secret: for this person alone.
    makeFolder(dirname(path), 0o700);
    // A file lost with the power can be made again; waiting for the disk takes longer than that.
    writeFileAtomic.sync(path, text, { mode: 0o600, fsync: false });
    clearOldest(dirname(path), most);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === undefined) throw error;
  }
}

function clearOldest(folder: string, most: number): void {
  const names = readdirSync(folder).filter((name) => OURS.test(name));
  if (names.length <= most) return;
  const aged = names.map((name) => ({ path: join(folder, name), used: usedAt(join(folder, name)) })).sort((a, b) => a.used - b.used);
  for (const { path } of aged.slice(0, names.length - most)) rmSync(path, { force: true });
}

/** Milliseconds; 0 for one that another run has just cleared away. */
function usedAt(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0;
}
