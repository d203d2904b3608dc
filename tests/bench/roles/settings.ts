// How the shipped model is fitted; the benchmark fits each fold alike.
import type { TrainOptions } from "./train.ts";

export const SETTINGS: TrainOptions = { epochs: 8, scoutEpochs: 4, rate: 0.1, decay: 0.002, least: 4, dropout: 0.5, seed: 1, keep: 130_000 };

/** Variants of each invented talk that are trained on. */
export const VARIANTS = 3;
/** How much one pass counts an invented dialogue against 1 for every consultation of a corpus: the model is for talk of their kind. */
export const DIALOGUE_WEIGHT = 1.5;
/** And a station of annotated talk. */
export const TALK_WEIGHT = 0.4;
export const DIALOGUES = "fixtures/dialogue";
export const FOLDS = 5;
export const CORRECTIONS = "tests/bench/roles/corrections.yaml";
export const INVENTED = "tests/bench/roles/invented.yaml";
export const WEIGHTS = "src/station/role-weights.json";
export const DEFAULT_DATA = "../shared/data";
