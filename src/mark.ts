import { compileRubric, type CompiledRubric } from "./matching/compile.ts";
import { explainItem, type ExplainedPassage } from "./matching/explain.ts";
import { matchStation } from "./matching/match.ts";
import { packRubric, unpackRubric, type PackedRubric } from "./matching/packed.ts";
import { ProblemError } from "./problem/problem.ts";
import type { Rubric } from "./rubric/schema.ts";
import { correctionFaults, type Corrections } from "./scoring/corrections.ts";
import { evidenceOf } from "./scoring/evidence.ts";
import { heardFaults } from "./scoring/heard-unsafe.ts";
import { scoreStation } from "./scoring/sheet.ts";
import type { Evidence, ItemResult, MarkSheet } from "./scoring/types.ts";
import { findStation } from "./station/find.ts";
import type { Station, StationOptions } from "./station/types.ts";
import { textsIn } from "./station/written-words.ts";
import type { Transcript } from "./transcript/types.ts";

/** Written into every sheet; a test keeps it the same as package.json. */
export const VERSION = "0.1.0";

export interface MarkOptions extends StationOptions {
  /** Seconds, in place of the rubric's own. */
  limit?: number;
  /** Seconds, in place of the rubric's own. */
  target?: number;
  /** Marks that a person overruled: `readCorrections` reads them from a file. */
  corrections?: Corrections;
}

const compiled = new WeakMap<Rubric, CompiledRubric>();
/** Compiled elsewhere, and not asked for yet. */
const packed = new WeakMap<Rubric, PackedRubric>();

/** Compiled once, whatever number of transcripts it marks. */
export function compiledRubric(rubric: Rubric): CompiledRubric {
  let known = compiled.get(rubric);
  if (known === undefined) {
    const kept = packed.get(rubric);
    known = kept === undefined ? compileRubric(rubric) : unpackRubric(kept, rubric.learnt ?? null);
    packed.delete(rubric);
    compiled.set(rubric, known);
  }
  return known;
}

/** Takes a rubric compiled at build time or in another thread, so that marking need not compile it again. */
export function rememberCompiled(rubric: Rubric, form: PackedRubric): void {
  packed.set(rubric, form);
}

/** The compiled rubric as plain data for another thread: what came packed and was not asked for here goes on as it came. */
export function packedRubric(rubric: Rubric): PackedRubric {
  return packed.get(rubric) ?? packRubric(compiledRubric(rubric));
}

/**
 * The pipeline: finds the station, matches what was said to the rubric, scores it. Pure.
 * @throws ProblemError when several stations are found and neither `from` nor `to` says which; when corrections are of
 *   another rubric or transcript, of an item that is not in the rubric, or of a place where nobody speaks.
 */
export function mark(transcript: Transcript, rubric: Rubric, options: MarkOptions = {}): MarkSheet {
  const faults = options.corrections === undefined ? [] : correctionFaults(options.corrections, rubric, transcript.file);
  if (faults.length > 0) throw new ProblemError(faults);
  const station = findStation(transcript, options);
  const misheard = options.corrections === undefined ? [] : heardFaults(options.corrections, station);
  if (misheard.length > 0) throw new ProblemError(misheard);
  return markStation(station, rubric, options);
}

function markStation(station: Station, rubric: Rubric, options: MarkOptions): MarkSheet {
  return scoreStation(station, rubric, matchStation(station, compiledRubric(rubric)), {
    version: VERSION,
    ...(options.limit !== undefined && { limit: options.limit }),
    ...(options.target !== undefined && { target: options.target }),
    ...(options.corrections !== undefined && { corrections: options.corrections }),
    candidate: options.candidate ?? null,
  });
}

/** A passage that was tried for an element, its words drawn from the transcript. */
export interface ShownPassage extends Omit<ExplainedPassage, "span" | "aligned" | "item" | "element"> {
  evidence: Evidence;
  aligned: { term: string; words: string }[];
}

/** How one item of the rubric was decided. */
export interface Explanation {
  form: "saidwell/explanation@1";
  file: string;
  rubric: string;
  item: ItemResult;
  elements: { id: string; label: string; passages: ShownPassage[] }[];
}

/**
 * How one item was decided: for each element the best passages, what aligned in them and which gate closed. Pure.
 * @returns null when the rubric has no such item.
 * @throws ProblemError as `mark` does.
 */
export function explain(transcript: Transcript, rubric: Rubric, itemId: string, options: MarkOptions = {}): Explanation | null {
  const station = findStation(transcript, options);
  const item = markStation(station, rubric, options).items.find(({ id }) => id === itemId);
  if (item === undefined) return null;
  const words = (span: { first: number; end: number }) => textsIn(transcript, span).join(" ");
  const found = explainItem(station, compiledRubric(rubric), itemId);
  return {
    form: "saidwell/explanation@1",
    file: transcript.file,
    rubric: rubric.id,
    item,
    elements: item.elements.map(({ id, label }) => ({
      id,
      label,
      passages: (found.find(({ element }) => element === id)?.passages ?? []).map(({ span, aligned, item: _item, element: _element, ...passage }) => ({
        ...passage,
        evidence: evidenceOf(station, span),
        aligned: aligned.map(({ term, words: place }) => ({ term, words: words(place) })),
      })),
    })),
  };
}
