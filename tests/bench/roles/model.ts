// Fits and applies the model as it ships: pruned and in signed bytes.
import { marginals, type ChainScores } from "../../../src/station/chain.ts";
import { isPunctuated } from "../../../src/station/clauses.ts";
import { roleFeatures } from "../../../src/station/role-features.ts";
import { chainScores, weigh, type RoleWeights } from "../../../src/station/role-model.ts";
import { MARK, tokenise } from "../../../src/station/token.ts";
import { packWeights, unpack, type StoredWeights } from "../../../src/station/weights-format.ts";
import { MEASURED, type Consultation } from "./corpora.ts";
import type { Decodings } from "./decoding.ts";
import { inventedTalks } from "./invented.ts";
import { FOLDS, INVENTED, SETTINGS, VARIANTS } from "./settings.ts";
import { strip, type Stripped } from "./strip.ts";
import { example, train, type Example } from "./train.ts";

const made = new Map<Consultation, Example[]>();

/** Each consultation is seen twice: as written, and bare with paragraphs that break anywhere. */
function examplesOf(consultation: Consultation): Example[] {
  const found = made.get(consultation) ?? [example(strip(consultation, "written"), consultation.weight), example(strip(consultation, "bare", "anywhere"), consultation.weight)];
  made.set(consultation, found);
  return found;
}

let invented: Example[] | undefined;

export type Packed = ReturnType<typeof packWeights>;

export function fit(consultations: readonly Consultation[], log?: (line: string) => void): Packed {
  invented ??= inventedTalks(INVENTED, VARIANTS).flatMap((talk) => [example(strip(talk, "written")), example(strip(talk, "bare", "anywhere"))]);
  return packWeights(train([...consultations.flatMap(examplesOf), ...invented], SETTINGS, log));
}

export function weightsOf(packed: Packed): RoleWeights {
  return unpack(packed as StoredWeights);
}

/** The model's scores, before they are weighed. */
export interface Raw {
  scores: ChainScores;
  punctuated: boolean;
  /** The true sides: 0 candidate, 1 patient, by token. */
  gold: Uint8Array;
}

export interface Reading {
  scores: ChainScores;
  /** Probability of the candidate, by token. */
  candidate: Float64Array;
  /** 0 candidate, 1 patient. */
  labels: Uint8Array;
}

export function score(weights: RoleWeights, stripped: Stripped): Raw {
  const tokens = tokenise(stripped.transcript);
  return {
    scores: chainScores(roleFeatures(tokens), weights),
    punctuated: isPunctuated(tokens),
    gold: Uint8Array.from(tokens, (token) => (stripped.sides[token.word] === "candidate" ? 0 : 1)),
  };
}

export function read(raw: Raw, decodings: Decodings): Reading {
  const scores = weigh(raw.scores, raw.punctuated ? decodings.punctuated : decodings.bare);
  const { candidate } = marginals(scores);
  return { scores, candidate, labels: Uint8Array.from(candidate, (p) => (p >= 0.5 ? 0 : 1)) };
}

/** Folds of each corpus alike: by consultation, of invented talk by hand. */
export function foldOf(consultations: readonly Consultation[]): Map<string, number> {
  const folds = new Map<string, number>();
  for (const corpus of MEASURED) {
    const of = consultations.filter((each) => each.corpus === corpus);
    const units = [...new Set(of.map(({ id, hand }) => hand ?? id))];
    for (const { id, hand } of of) folds.set(id, units.indexOf(hand ?? id) % FOLDS);
  }
  return folds;
}

/** A found sentence: the mean of its words' marginals, how many words, how many of them right. */
export interface Belief {
  mean: number;
  words: number;
  right: number;
}

export function beliefs(stripped: Stripped, { candidate, labels }: Reading): Belief[] {
  const tokens = tokenise(stripped.transcript);
  const found: Belief[] = [];
  let sum = 0;
  let right = 0;
  let from = 0;
  tokens.forEach((token, at) => {
    sum += labels[at] === 0 ? candidate[at]! : 1 - candidate[at]!;
    if ((labels[at] === 0) === (stripped.sides[token.word] === "candidate")) right++;
    const next = tokens[at + 1];
    if (next !== undefined && token.mark < MARK.stop && !next.opensSegment && labels[at + 1] === labels[at]) return;
    found.push({ mean: sum / (at + 1 - from), words: at + 1 - from, right });
    [sum, right, from] = [0, 0, at + 1];
  });
  return found;
}

/** Logistic calibration by Newton's method, every sentence weighed by its words. */
export function calibrate(all: readonly Belief[]): { slope: number; intercept: number } {
  let [slope, intercept] = [1, 0];
  for (let step = 0; step < 50; step++) {
    let [g0, g1, h00, h01, h11] = [0, 0, 1e-9, 0, 1e-9];
    for (const { mean, words, right } of all) {
      const clipped = Math.min(1 - 1e-4, Math.max(1e-4, mean));
      const x = Math.log(clipped / (1 - clipped));
      const p = 1 / (1 + Math.exp(-(intercept + slope * x)));
      g0 += right - words * p;
      g1 += (right - words * p) * x;
      h00 += words * p * (1 - p);
      h01 += words * p * (1 - p) * x;
      h11 += words * p * (1 - p) * x * x;
    }
    const det = h00 * h11 - h01 * h01;
    // Short steps: far from the optimum the curve is too flat for Newton's own.
    const cap = (step: number): number => Math.max(-0.2, Math.min(0.2, step));
    intercept += cap((h11 * g0 - h01 * g1) / det);
    slope += cap((h00 * g1 - h01 * g0) / det);
  }
  // Four places: enough, and free of the last bits of a machine's arithmetic.
  return { slope: Math.round(slope * 1e4) / 1e4, intercept: Math.round(intercept * 1e4) / 1e4 };
}
