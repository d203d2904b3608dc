import { entryOf, identityOf } from "../../cohort/sheet-names.ts";
import type { Shard } from "../../cohort/shard.ts";
import { plural } from "../../report/figures.ts";
import { problem } from "../problems.ts";
import { warn } from "../tell.ts";
import type { Job } from "./jobs.ts";
import type { Manifest } from "./manifest.ts";
import type { ResultStore } from "./store.ts";

/*
 * What a folder holds of an earlier run, and whether it may stay.
 */

/** A slip in --out must not put one cohort's results in the place of another's. @throws ProblemError SW-B07 */
export function checkSameCohort(store: ResultStore, jobs: readonly Job[], shard: Shard | null, earlier: Manifest | null, out: string): void {
  if (earlier === null || (earlier.complete && earlier.results === 0)) return;
  const part = (of: Shard | null) => (of === null ? "the whole cohort" : `part ${of.index}/${of.of}`);
  if (part(earlier.shard) !== part(shard)) {
    throw problem("SW-B07", out, `the folder holds the results of ${part(earlier.shard)}, not of ${part(shard)}`, "Give every part a folder of its own.");
  }
  const here = new Set(jobs.map(({ entry }) => entry.file));
  const files = [...store.index.keys()].map((identity) => entryOf(identity).file);
  if (files.length > 0 && !files.some((file) => here.has(file))) {
    throw problem("SW-B07", out, `the folder holds the results of other transcripts: ${files.slice(0, 3).join(", ")}${files.length > 3 ? ", ..." : ""}`, "Name another folder with --out.");
  }
}

/** Results whose transcript is gone, or is called otherwise now. */
export function dropForeign(store: ResultStore, jobs: readonly Job[], out: string): void {
  const wanted = new Set(jobs.map(({ entry }) => identityOf(entry)));
  const gone = [...store.index.keys()].filter((identity) => !wanted.has(identity));
  for (const identity of gone) store.index.delete(identity);
  if (gone.length === 0) return;
  const files = gone.slice(0, 3).map((identity) => entryOf(identity).file);
  warn("SW-B09", out, `${plural(gone.length, "earlier result")} left out: the transcript is no longer there, or its candidate, station or attempt is another now (${files.join(", ")}${gone.length > 3 ? ", ..." : ""})`);
}
