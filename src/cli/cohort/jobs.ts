import { createHash } from "node:crypto";
import { InvalidArgumentError } from "commander";
import type { Entry } from "../../cohort/entries.ts";
import type { MarkOptions } from "../../mark.ts";
import type { Corrections } from "../../scoring/corrections.ts";
import { parseTime } from "../duration.ts";

/** A rehearsal with all that marking it needs, or with its errors. */
export interface Job {
  entry: Entry;
  options: MarkOptions;
  optionsHash: string;
}

/** The plan's times are read here, where the command line's are: they are written in the same ways. */
export function jobOf(entry: Entry, { limit, target }: Pick<MarkOptions, "limit" | "target">, corrections: Corrections | undefined): Job {
  const errors = [...entry.errors];
  const time = (name: "from" | "to") => {
    if (entry[name] === undefined) return undefined;
    try {
      return parseTime(entry[name]);
    } catch (error) {
      if (!(error instanceof InvalidArgumentError)) throw error;
      errors.push({ code: "SW-B01", severity: "error", file: entry.file, message: `the time '${entry[name]}' in the column '${name}', line ${entry.line} of the plan, cannot be read`, mend: error.message });
      return undefined;
    }
  };
  const [from, to] = [time("from"), time("to")];
  if (from !== undefined && to !== undefined && to <= from) {
    errors.push({ code: "SW-B01", severity: "error", file: entry.file, message: `by line ${entry.line} of the plan the station would end before it starts`, mend: "Make 'to' later than 'from'." });
  }
  const options: MarkOptions = {
    ...(limit !== undefined && { limit }),
    ...(target !== undefined && { target }),
    ...(from !== undefined && { from }),
    ...(to !== undefined && { to }),
    ...(entry.speaker !== undefined && { candidate: entry.speaker }),
    // Part of the hash: a rehearsal that somebody corrects is marked anew.
    ...(corrections !== undefined && { corrections }),
  };
  const optionsHash = createHash("sha256").update(JSON.stringify(options)).digest("hex");
  return { entry: { ...entry, errors, rubric: errors.length > 0 ? null : entry.rubric }, options, optionsHash };
}
