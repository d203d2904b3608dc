import { createHash } from "node:crypto";
import type { CohortResult, ResultKey } from "./result.ts";

/** Most file systems take 255 bytes in a name; a letter may take four. Three parts, a mark and an ending must fit. */
const LONGEST_PART = 40;

/** Letters, digits and what no system gives a meaning; a dot or hyphen not in front, where it would hide or be an option. */
function plainPart(text: string): string {
  const plain = text.normalize("NFC").replace(/[^\p{L}\p{N}\p{M}._+@-]+/gu, "_").replace(/^[.\-]+/, "_");
  return [...plain].slice(0, LONGEST_PART).join("");
}

function plainName({ candidate, station, attempt }: ResultKey): string {
  return `${plainPart(candidate)}-${plainPart(station)}-${plainPart(attempt)}`;
}

/** Identifies a line of the results: what is marked once. */
export function identityOf({ key, file }: Pick<CohortResult, "key" | "file">): string {
  return JSON.stringify([key.candidate, key.station, key.attempt, file]);
}

/** What `identityOf` was given. */
export function entryOf(identity: string): { key: ResultKey; file: string } {
  const [candidate, station, attempt, file] = JSON.parse(identity) as [string, string, string, string];
  return { key: { candidate, station, attempt }, file };
}

/**
 * Names of the sheets, without an ending: CANDIDATE-STATION-ATTEMPT. Where two would have one name (also on a system
 * that takes upper and lower case as the same), each carries eight digits of its key's SHA-256.
 * @param entries all of the cohort, also those of other shards, so that a name does not depend on the shard.
 * @returns name by `identityOf`.
 */
export function sheetNames(entries: Iterable<Pick<CohortResult, "key" | "file">>): (entry: Pick<CohortResult, "key" | "file">) => string {
  const seen = new Set<string>();
  const shared = new Set<string>();
  for (const { key } of entries) {
    const folded = plainName(key).toLowerCase();
    if (seen.has(folded)) shared.add(folded);
    seen.add(folded);
  }
  seen.clear();
  return (entry) => {
    const name = plainName(entry.key);
    if (!shared.has(name.toLowerCase())) return name;
    return `${name}-${createHash("sha256").update(identityOf(entry)).digest("hex").slice(0, 8)}`;
  };
}
