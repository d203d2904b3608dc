import { compileRubric, type CompiledRubric } from "./matching/compile.ts";
import { matchStation } from "./matching/match.ts";
import { unpackRubric, type PackedRubric } from "./matching/packed.ts";
import type { Rubric } from "./rubric/schema.ts";
import { scoreStation } from "./scoring/sheet.ts";
import type { MarkSheet } from "./scoring/types.ts";
import { findStation } from "./station/find.ts";
import type { StationOptions } from "./station/types.ts";
import type { Transcript } from "./transcript/types.ts";

/** Written into every sheet; a test keeps it the same as package.json. */
export const VERSION = "0.1.0";

export interface MarkOptions extends StationOptions {
  /** Seconds, in place of the rubric's own. */
  limit?: number;
  /** Seconds, in place of the rubric's own. */
  target?: number;
}

const compiled = new WeakMap<Rubric, CompiledRubric>();

/** Compiled once, whatever number of transcripts it marks. */
export function compiledRubric(rubric: Rubric): CompiledRubric {
  let known = compiled.get(rubric);
  if (known === undefined) {
    known = compileRubric(rubric);
    compiled.set(rubric, known);
  }
  return known;
}

/** Takes a rubric compiled at build time, so that marking need not compile it again. */
export function rememberCompiled(rubric: Rubric, packed: PackedRubric): void {
  compiled.set(rubric, unpackRubric(packed));
}

/**
 * The pipeline: finds the station, matches what was said to the rubric, scores it. Pure.
 * @throws ProblemError when several stations are found and neither `from` nor `to` says which.
 */
export function mark(transcript: Transcript, rubric: Rubric, options: MarkOptions = {}): MarkSheet {
  const station = findStation(transcript, options);
  return scoreStation(station, rubric, matchStation(station, compiledRubric(rubric)), {
    version: VERSION,
    ...(options.limit !== undefined && { limit: options.limit }),
    ...(options.target !== undefined && { target: options.target }),
    candidate: options.candidate ?? null,
  });
}
