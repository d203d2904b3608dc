// How the shipped model is fitted; the benchmark fits each fold alike.
import type { TrainOptions } from "./train.ts";

export const SETTINGS: TrainOptions = { epochs: 6, rate: 0.1, decay: 0.002, least: 5, dropout: 0.5, seed: 1, keep: 90_000 };
export const CORRECTIONS = "tests/bench/roles/corrections.yaml";
export const WEIGHTS = "src/station/role-weights.json";
