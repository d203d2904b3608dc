import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import writeFileAtomic from "write-file-atomic";
import type { MarkingBasis } from "../../cohort/marking-basis.ts";
import type { Shard } from "../../cohort/shard.ts";
import { toJson } from "../../report/json.ts";
import { makeFolder } from "../make-folder.ts";
import { problem, systemReason } from "../problems.ts";

/** Marks a folder as the program's own, and says what is in it. No times, so that the same work gives the same bytes. */
export interface Manifest {
  form: "saidwell/cohort@1";
  version: string;
  shard: Shard | null;
  /** False while a run is under way or was ended before its end. */
  complete: boolean;
  /** Lines of results.jsonl; 0 until complete. */
  results: number;
  failed: number;
  /** Transcripts of the folder that the plan does not name; left out where there are none. Kept here so that merged parts can name them. */
  unplanned?: string[];
  /** What it was marked by; none in a folder that was merged of runs that marked differently, or that a killed run left. */
  marking?: MarkingBasis;
}

const FORM = "saidwell/cohort@1";
export const MANIFEST = "cohort.json";

/** Null when the folder holds no manifest of ours. */
export function readManifest(folder: string): Manifest | null {
  try {
    const manifest = JSON.parse(readFileSync(join(folder, MANIFEST), "utf8")) as Manifest | null;
    return manifest?.form === FORM ? manifest : null;
  } catch {
    return null;
  }
}

export function writeManifest(folder: string, manifest: Omit<Manifest, "form">): void {
  writeFileAtomic.sync(join(folder, MANIFEST), toJson({ form: FORM, ...manifest }));
}

/** What a run that was killed before it wrote its manifest may have left. */
const UNFINISHED = new RegExp(`^(${MANIFEST.replace(".", "\\.")}\\.\\d+|\\.lock)$`);

/**
 * Makes the folder for results, or takes one that this program made. A new one gets its manifest before anything else.
 * @returns what the earlier run left there; null for a new or empty folder.
 * @throws ProblemError SW-B07 when it holds anything else, SW-O02 when it cannot be made.
 */
export function claimFolder(folder: string, fresh: Pick<Manifest, "version" | "shard">): Manifest | null {
  try {
    makeFolder(folder);
    const manifest = readManifest(folder);
    if (manifest !== null) return manifest;
    if (readdirSync(folder).every((name) => UNFINISHED.test(name))) {
      writeManifest(folder, { ...fresh, complete: false, results: 0, failed: 0 });
      return null;
    }
  } catch (error) {
    throw problem("SW-O02", folder, `the folder for the results cannot be made: ${systemReason(error)}`, "Name another folder with --out.");
  }
  const torn = existsSync(join(folder, MANIFEST)) ? `, and its ${MANIFEST} is not of this program` : "";
  throw problem("SW-B07", folder, `the folder is not empty and was not made by 'saidwell cohort' or 'merge'${torn}`, "Name a new or an empty folder with --out: nothing that is there is touched.");
}
