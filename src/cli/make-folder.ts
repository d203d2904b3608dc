import { mkdirSync, statSync } from "node:fs";
import { dirname } from "node:path";

/**
 * Makes a folder and those above it that are missing, one after the other. `mkdirSync` with `recursive` goes round for
 * ever in Node 20 where the system says of a folder that is there that it is not (below /proc).
 * @throws the system's error
 */
export function makeFolder(path: string, mode = 0o777): void {
  const missing: string[] = [];
  for (let folder = path; statSync(folder, { throwIfNoEntry: false }) === undefined && dirname(folder) !== folder; folder = dirname(folder)) missing.push(folder);
  for (const folder of missing.reverse()) {
    try {
      mkdirSync(folder, { mode });
    } catch (error) {
      // Another run was quicker.
      if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
    }
  }
}
