import { existsSync, realpathSync } from "node:fs";
import { join } from "node:path";
import { differences, type MarkingBasis } from "../../cohort/marking-basis.ts";
import type { Shard } from "../../cohort/shard.ts";
import { entryOf, sheetNames } from "../../cohort/sheet-names.ts";
import { ProblemError, type Finding } from "../../problem/problem.ts";
import { finish } from "../cohort/finish.ts";
import { lockFolder } from "../cohort/lock.ts";
import { claimFolder, readManifest, writeManifest, type Manifest } from "../cohort/manifest.ts";
import { showSummary } from "../cohort/show-summary.ts";
import { JOURNAL, RESULTS, ResultStore, type Located } from "../cohort/store.ts";
import { problem } from "../problems.ts";
import { VERSION } from "../version.ts";
import type { OutputFlags } from "./options.ts";

export interface MergeFlags extends Pick<OutputFlags, "width" | "colour"> {
  out: string;
  json?: boolean;
}

interface Part {
  folder: string;
  manifest: Manifest;
}

/** Puts the parts of a cohort together: the same bytes as one run over all of it would have written. */
export async function runMerge(folders: readonly string[], flags: MergeFlags): Promise<void> {
  const parts = folders.map(partOf);
  checkParts(parts, flags.out);
  claimFolder(flags.out, { version: VERSION, shard: null });
  const unlock = lockFolder(flags.out);
  const store = new ResultStore();
  try {
    const clashes: Finding[] = [];
    for (const { folder } of parts) store.load(folder, RESULTS, (identity, before, now) => clashes.push(...clash(store, identity, before, now)));
    if (clashes.length > 0) throw new ProblemError(clashes);
    const marking = markingOf(parts, store, flags.out);
    for (const [path, count] of store.broken) throw problem("SW-B11", path, `${count} of its lines cannot be read`, "Run the cohort command of this part again; it does only what is broken.");
    writeManifest(flags.out, { version: VERSION, shard: null, complete: false, results: 0, failed: 0 });
    const entries = [...store.index.keys()].map(entryOf);
    const planned = new Set(entries.map(({ file }) => file));
    const unplanned = [...new Set(parts.flatMap(({ manifest }) => manifest.unplanned ?? []))].filter((file) => !planned.has(file)).sort();
    const { summary } = finish(store, { folder: flags.out, version: VERSION, shard: null, json: flags.json === true, marking, sheetName: sheetNames(entries), unplanned, columns: new Map() });
    await showSummary(summary, flags.out, flags);
  } finally {
    store.close();
    unlock();
  }
}

function partOf(folder: string): Part {
  const manifest = readManifest(folder);
  if (manifest === null) throw problem("SW-B11", folder, "this folder was not made by 'saidwell cohort'", "Give the folders that 'saidwell cohort --out' wrote.");
  if (!manifest.complete || existsSync(join(folder, JOURNAL))) throw problem("SW-B11", folder, "the run that writes this folder has not ended", "Run its cohort command again: it goes on where it was.");
  return { folder, manifest };
}

function checkParts(parts: readonly Part[], out: string): void {
  const real = parts.map(({ folder }) => realpathSync(folder));
  if (existsSync(out) && real.includes(realpathSync(out))) throw problem("SW-B11", out, "the output folder is one of the parts", "Name another folder with --out.");
  const versions = [...new Set(parts.map(({ manifest }) => manifest.version))];
  if (versions.length > 1) throw problem("SW-B11", out, `the parts were marked by different versions of the program: ${versions.join(", ")}`, "Mark all parts with one version: what has not changed since is not done twice.");
  const shards = parts.flatMap(({ manifest }) => manifest.shard ?? []);
  const wholes = [...new Set(shards.map(({ of }) => of))];
  if (wholes.length > 1) throw problem("SW-B11", out, `the parts are of different divisions: ${wholes.map((of) => `I/${of}`).join(", ")}`, "Merge the parts of one division.");
  const missing = missingParts(shards);
  if (missing.length > 0) throw problem("SW-B11", out, `parts are missing: ${missing.slice(0, 10).join(", ")}${missing.length > 10 ? ", ..." : ""}`, "Give every part's folder.");
}

/**
 * Parts of one division, and parts that share a station, must be marked alike: else their figures are of different
 * things, and no one run could have given them. What one run marked by is what the whole was marked by.
 */
function markingOf(parts: readonly Part[], store: ResultStore, out: string): MarkingBasis | undefined {
  const [first, ...others] = parts as [Part, ...Part[]];
  const { marking } = first.manifest;
  const stations = stationsByFolder(store);
  for (const part of others) {
    const told = marking === undefined || part.manifest.marking === undefined ? (marking === part.manifest.marking ? [] : ["one of them by a build that did not keep what it marked by"]) : differences(marking, part.manifest.marking);
    if (told.length === 0) continue;
    const shared = [...(stations.get(first.folder) ?? [])].filter((station) => stations.get(part.folder)?.has(station));
    if (first.manifest.shard === null && part.manifest.shard === null && shared.length === 0) continue;
    throw problem("SW-B11", out, `${first.folder} and ${part.folder} were not marked alike: ${told.join("; ")}`, "Mark all parts with one command but for --shard: what has not changed is not done twice.");
  }
  return others.every((part) => JSON.stringify(part.manifest.marking) === JSON.stringify(marking)) ? marking : undefined;
}

function stationsByFolder(store: ResultStore): Map<string, Set<string>> {
  const found = new Map<string, Set<string>>();
  for (const [identity, { folder }] of store.index) {
    const own = found.get(folder) ?? new Set<string>();
    found.set(folder, own.add(entryOf(identity).key.station));
  }
  return found;
}

function missingParts(shards: readonly Shard[]): string[] {
  const of = shards[0]?.of ?? 0;
  const there = new Set(shards.map(({ index }) => index));
  return Array.from({ length: of }, (_, place) => place + 1).filter((index) => !there.has(index)).map((index) => `${index}/${of}`);
}

/** The same line twice is one; two different ones leave nobody knowing which counts. */
function clash(store: ResultStore, identity: string, before: Located, now: Located): Finding[] {
  if (store.read(before) === store.read(now)) return [];
  const { file } = entryOf(identity);
  return [{ code: "SW-B11", severity: "error", file, message: `${before.folder} and ${now.folder} hold different results of this file`, mend: "Take one of the two folders out, or mark both anew." }];
}
