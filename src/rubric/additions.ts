import type { PositionedYaml } from "./positioned-yaml.ts";

/** A run of phrases that came from a responses file: the list they went into, and the place of the first of them. */
export interface AddedPhrases {
  /** Keys inside the responses file. */
  path: string[];
  from: number;
  count: number;
  yaml: PositionedYaml;
}

/** Which lists of phrases were lengthened; by `keyOf` or `unsafeKeyOf`. */
export type Additions = Map<string, AddedPhrases[]>;

export function keyOf(item: string, element: string, list: "say" | "incorrect"): string {
  return `${item}/${element}/${list}`;
}

export function unsafeKeyOf(statement: string): string {
  return `unsafe/${statement}`;
}
