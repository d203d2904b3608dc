/** What a run marks by, besides the plan's lines: the same for every part of one run. Kept with the results, so that parts can be held together. */
export interface MarkingBasis {
  /** SHA-256 of the program. */
  program: string;
  /** Seconds, as given on the command line; null for each rubric's own. */
  limit: number | null;
  target: number | null;
  /** SHA-256 of the corrections that were laid over; null where none were, none in a folder of an earlier version. */
  corrections?: string | null;
  /** Sorted. `station` is empty for a rubric of all stations or of single lines of the plan. */
  rubrics: { station: string; id: string; version: number; hash: string }[];
}

/** Every way in which two runs marked differently, as a clause; none when they marked alike. */
export function differences(a: MarkingBasis, b: MarkingBasis): string[] {
  const time = (seconds: number | null) => (seconds === null ? "the rubric's" : `${seconds} s`);
  const said = ({ station, id, version, hash }: MarkingBasis["rubrics"][number]) => `${id} version ${version} (${hash.slice(0, 8)})${station === "" ? "" : ` for ${station}`}`;
  const only = (one: MarkingBasis, other: MarkingBasis) => one.rubrics.map(said).filter((rubric) => !other.rubrics.map(said).includes(rubric)).join(", ") || "no other";
  return [
    a.program === b.program ? null : "another build of the program",
    a.limit === b.limit ? null : `limit ${time(a.limit)} and ${time(b.limit)}`,
    a.target === b.target ? null : `target ${time(a.target)} and ${time(b.target)}`,
    (a.corrections ?? null) === (b.corrections ?? null) ? null : "other corrections",
    JSON.stringify(a.rubrics) === JSON.stringify(b.rubrics) ? null : `rubrics ${only(a, b)} and ${only(b, a)}`,
  ].filter((difference) => difference !== null);
}

/** Of what was typed and planned, with each rubric that was found. */
export function markingBasis(program: string, times: { limit?: number; target?: number }, corrections: string | null, rubrics: readonly { station: string; rubric: { id: string; version: number; hash: string } }[]): MarkingBasis {
  const named = rubrics.map(({ station, rubric: { id, version, hash } }) => ({ station, id, version, hash }));
  const once = new Map(named.map((one) => [JSON.stringify(one), one]));
  return { program, limit: times.limit ?? null, target: times.target ?? null, corrections, rubrics: [...once].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, one]) => one) };
}
