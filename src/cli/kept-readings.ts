import { createHash } from "node:crypto";
import { readFileSync, utimesSync } from "node:fs";
import { join } from "node:path";
import { readingsSchema, type Readings } from "../review/readings.ts";
import { cacheFolder } from "./cache-folder.ts";
import { PROGRAM_HASH } from "./program-hash.ts";

/** Of the files; another form is never taken for this one, because it is part of the key. */
export const FORM = "saidwell/readings@1";

export interface Keeping {
  /** Null: nothing is kept and nothing is read. */
  folder: string | null;
  /** Hash of the program that reads; null as the folder. */
  program: string | null;
  /** Reads nothing that was kept; what is read now is kept all the same. */
  fresh: boolean;
}

/** As the environment has it. */
export function keepingOf(environment: Readonly<Record<string, string | undefined>>, fresh: boolean): Keeping {
  const folder = cacheFolder(environment);
  return { folder: folder === null ? null : join(folder, "rubric-check"), program: PROGRAM_HASH, fresh };
}

/**
 * What rubrics' phrases came to when the program read them, a file each, called by a hash of all that it follows from:
 * the rubric's content, the program, Node, whose numbers and letters the program reckons with, and the form of the file.
 * A file that is broken, foreign or cannot be written is as good as none: everything here can be worked out again.
 */
export class KeptReadings {
  private readonly keeping: Keeping;

  constructor(keeping: Keeping) {
    this.keeping = keeping;
  }

  /** @param rubric its content hash, blocks and responses read in. */
  find(rubric: string): Readings | null {
    const path = this.pathOf(rubric);
    if (path === null || this.keeping.fresh) return null;
    let kept: Readings;
    try {
      const parsed = readingsSchema.safeParse(JSON.parse(readFileSync(path, "utf8")));
      if (!parsed.success) return null;
      kept = parsed.data;
    } catch {
      return null;
    }
    touch(path);
    return kept;
  }

  /** @param rubric its content hash, blocks and responses read in. */
  async keep(rubric: string, readings: Readings): Promise<void> {
    const path = this.pathOf(rubric);
    // A module of its own: most checks write nothing.
    if (path !== null) (await import("./keep-file.ts")).keepFile(path, `${JSON.stringify(readings)}\n`);
  }

  private pathOf(rubric: string): string | null {
    const { folder, program } = this.keeping;
    if (folder === null || program === null) return null;
    const key = createHash("sha256").update(JSON.stringify([FORM, program, process.version, rubric])).digest("hex");
    return join(folder, `${key}.json`);
  }
}

/** What is used is not the oldest. */
function touch(path: string): void {
  try {
    const now = new Date();
    utimesSync(path, now, now);
  } catch {
    // On a disk that is only read, nothing is cleared away either.
  }
}
