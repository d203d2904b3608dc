import { existsSync, readdirSync, realpathSync, statSync } from "node:fs";
import { dirname, join, relative, resolve, sep } from "node:path";
import { globSync } from "tinyglobby";
import { problem, systemReason } from "../problems.ts";
import { MANIFEST, readManifest } from "./manifest.ts";

/** Endings that transcripts have; what is inside decides the form. */
const ENDING = /\.(txt|text|vtt|srt|textgrid|json)$/i;

export interface CohortFolder {
  /** Transcripts, by their path below the folder, with forward slashes. */
  files: string[];
  /** Files with other endings, by ending: rubrics, marks, recordings. */
  others: Map<string, number>;
  /** Links to folders whose files are listed already. */
  repeated: string[];
  /** The file as the folder spells it, whatever its ending; null when it holds none. Accents in one piece or two are the same. */
  onDisk: (file: string) => string | null;
}

/**
 * Lists a folder and all below it. Hidden files, and folders that hold results of ours, are no part of it.
 * @throws ProblemError SW-B12
 */
export function listFolder(folder: string, out: string): CohortFolder {
  let paths: string[];
  try {
    if (!statSync(folder).isDirectory()) throw problem("SW-B12", folder, "this is a file, not a folder", `'saidwell mark ${folder}' marks one transcript.`);
    paths = globSync("**/*", { cwd: folder, onlyFiles: true, dot: false, expandDirectories: false });
  } catch (error) {
    if ((error as Error).name === "ProblemError") throw error;
    throw problem("SW-B12", folder, `the folder cannot be read: ${systemReason(error)}`, "Give the path of a folder with transcripts.");
  }
  const repeated = repeatedFolders(folder, paths);
  paths = [...paths.filter((path) => !repeated.some((prefix) => path.startsWith(`${prefix}/`))), ...danglingLinks(folder, paths, repeated)];
  const ours = resultFolders(folder, paths, out);
  const files: string[] = [];
  const others = new Map<string, number>();
  for (const path of paths) {
    if (ours.some((prefix) => path.startsWith(prefix))) continue;
    const ending = /\.[^./]+$/.exec(path)?.[0].toLowerCase() ?? "no ending";
    if (ENDING.test(path)) files.push(path);
    else others.set(ending, (others.get(ending) ?? 0) + 1);
  }
  // Code units: the same order on every machine.
  files.sort((a, b) => (a < b ? -1 : 1));
  const root = realpathSync(folder);
  const spelt = new Map(paths.map((path) => [path.normalize("NFC"), path]));
  return { files, others, repeated, onDisk: (file) => (isFileInside(root, file) ? file : (spelt.get(file.normalize("NFC")) ?? null)) };
}

/** Results of this or an earlier run may lie inside the folder; their sheets are no transcripts. */
function resultFolders(folder: string, paths: readonly string[], out: string): string[] {
  const inside = relative(resolve(folder), resolve(out)).split(sep).join("/");
  const earlier = paths.filter((path) => path.endsWith(`/${MANIFEST}`)).map((path) => dirname(path));
  const ours = earlier.filter((path) => readManifest(join(folder, path)) !== null);
  return [...(inside !== "" && !inside.startsWith("..") ? [inside] : []), ...ours].map((path) => `${path}/`);
}

/** Folders that are another listed folder under a second name, as by a link that leads back: their files would be twins of themselves. */
function repeatedFolders(folder: string, paths: readonly string[]): string[] {
  const found = new Map<string, string>([[realpathSync(folder), ""]]);
  const repeated: string[] = [];
  // Parents first: the way without a link is the shorter one.
  for (const path of foldersOf(paths).sort((a, b) => a.split("/").length - b.split("/").length || (a < b ? -1 : 1))) {
    if (repeated.some((prefix) => path.startsWith(`${prefix}/`))) continue;
    const real = realpathSync(join(folder, path));
    if (found.has(real)) repeated.push(path);
    else found.set(real, path);
  }
  return repeated;
}

/** Every folder on the way to a file. */
function foldersOf(paths: readonly string[]): string[] {
  const found = new Set<string>();
  for (const path of paths) for (let own = dirname(path); own !== "." && !found.has(own); own = dirname(own)) found.add(own);
  return [...found];
}

/** Transcripts by their name that are links to nothing: a transcript that is missing must be told, not passed over. */
function danglingLinks(folder: string, paths: readonly string[], repeated: readonly string[]): string[] {
  return ["", ...foldersOf(paths)].filter((own) => !repeated.some((prefix) => own === prefix || own.startsWith(`${prefix}/`))).flatMap((own) =>
    readdirSync(join(folder, own), { withFileTypes: true })
      .filter((entry) => entry.isSymbolicLink() && ENDING.test(entry.name) && !entry.name.startsWith(".") && !existsSync(join(folder, own, entry.name)))
      .map(({ name }) => (own === "" ? name : `${own}/${name}`)),
  );
}

function isFileInside(root: string, file: string): boolean {
  const path = join(root, file);
  return path.startsWith(root + sep) && existsSync(path) && statSync(path).isFile();
}
