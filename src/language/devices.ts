import deviceData from "./lexicon/devices.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { PhraseSet } from "./phrase-set.ts";
import type { Token } from "./token.ts";

const DEVICES = new PhraseSet((deviceData as LexiconFile<"devices">).flatMap((names, place) => names.map((name) => [name, place] as const)));

/** Kinds of device or medicine form that are named in a run of tokens, with where. */
export function devicesIn(tokens: readonly Token[], first = 0, end = tokens.length): { kind: number; first: number; end: number }[] {
  return DEVICES.find(tokens, first, end).map(({ value, first: from, end: to }) => ({ kind: value, first: from, end: to }));
}
