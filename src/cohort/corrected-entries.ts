import { ProblemError, type Finding } from "../problem/problem.ts";
import type { Corrections } from "../scoring/corrections.ts";
import type { Entry } from "./entries.ts";
import { identityOf } from "./sheet-names.ts";

/**
 * Which rehearsal each corrections file is of: by the transcript's name, by its folders where two have one name, and by
 * the rubric where one recording holds several stations.
 * @param folder that the files of corrections lie in, as typed, for messages
 * @param rubricOf the id of the rubric that marks an entry; undefined where none does
 * @returns corrections by `identityOf` the entry
 * @throws ProblemError SW-M04 with every file that fits none or several: a person's work is never left out without a word
 */
export function correctionsByEntry(all: readonly Corrections[], entries: readonly Entry[], folder: string, rubricOf: (entry: Entry) => string | undefined): Map<string, Corrections> {
  const byName = new Map<string, Entry[]>();
  for (const entry of entries) {
    const name = partsOf(entry.file).at(-1)!;
    byName.set(name, [...(byName.get(name) ?? []), entry]);
  }
  const found = new Map<string, Corrections>();
  const faults: Finding[] = [];
  for (const corrections of all) {
    const { file, transcript, rubric } = corrections;
    const fault = (message: string, mend: string) => faults.push({ code: "SW-M04", severity: "error", file: `${folder}/${file}`, line: transcript.line, message, mend });
    const named = byName.get(partsOf(transcript.name).at(-1)!) ?? [];
    const placed = nearest(named, transcript.name);
    const ofRubric = placed.filter((entry) => rubricOf(entry) === rubric.id);
    const fitting = placed.length > 1 && ofRubric.length > 0 ? ofRubric : placed;
    const [entry] = fitting;
    if (entry === undefined) {
      fault(`no transcript of the cohort is called '${transcript.name}'`, "Mend the name, or take the file out of the folder of corrections.");
      continue;
    }
    if (fitting.length > 1) {
      fault(`they may be of ${fitting.slice(0, 3).map(({ file: path, key }) => `${path} (${key.candidate}, ${key.station}, attempt ${key.attempt})`).join(" or ")}`, "Write the transcript with its folders, as the cohort has it.");
      continue;
    }
    const before = found.get(identityOf(entry));
    if (before !== undefined) fault(`${entry.file} is corrected by ${before.file} too`, "Put the corrections of one rehearsal into one file.");
    else found.set(identityOf(entry), corrections);
  }
  if (faults.length > 0) throw new ProblemError(faults);
  return found;
}

/** Of entries with one name those that share most folders with the path, which may start elsewhere: all where none does. */
function nearest(entries: readonly Entry[], path: string): Entry[] {
  const shared = entries.map(({ file }) => sharedEnd(partsOf(file), partsOf(path)));
  return entries.filter((_entry, place) => shared[place] === Math.max(...shared));
}

function sharedEnd(one: readonly string[], other: readonly string[]): number {
  let count = 0;
  while (count < one.length && one.at(-1 - count) === other.at(-1 - count)) count += 1;
  return count;
}

function partsOf(path: string): string[] {
  return path.normalize("NFC").split(/[/\\]/);
}
