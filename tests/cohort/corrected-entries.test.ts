import { expect, test } from "vitest";
import { correctionsByEntry } from "../../src/cohort/corrected-entries.ts";
import type { Entry } from "../../src/cohort/entries.ts";
import { identityOf } from "../../src/cohort/sheet-names.ts";
import { ProblemError } from "../../src/problem/problem.ts";
import type { Corrections } from "../../src/scoring/corrections.ts";

const entry = (file: string, station = "drops"): Entry => ({ key: { candidate: file.split("_")[0]!, station, attempt: "1" }, file, columns: {}, rubric: station, errors: [] });
const of = (name: string, file = "a.yaml", id = "drops"): Corrections => ({ file, transcript: { name, line: 2 }, rubric: { id, hash: "0".repeat(12), line: 3 }, corrections: [] });

function fitted(corrections: Corrections[], entries: Entry[]): string[] {
  const found = correctionsByEntry(corrections, entries, "mine", ({ rubric }) => rubric ?? undefined);
  return entries.flatMap((one) => {
    const own = found.get(identityOf(one));
    return own === undefined ? [] : [`${one.file} ${one.key.station}: ${own.file}`];
  });
}

function faults(run: () => unknown) {
  try {
    run();
  } catch (error) {
    if (error instanceof ProblemError) return error.findings;
    throw error;
  }
  throw new Error("it was taken without a word");
}

test("corrections are of the rehearsal whose transcript has their name, whatever folder either lies in", () => {
  expect(fitted([of("A_1.txt"), of("june\\B_1.txt", "b.yaml")], [entry("A_1.txt"), entry("north/B_1.txt"), entry("C_1.txt")])).toEqual(["A_1.txt drops: a.yaml", "north/B_1.txt drops: b.yaml"]);
});

test("accents in one piece or two are the same name", () => {
  expect(fitted([of("Zoe\u0308_1.txt")], [entry("Zo\u00eb_1.txt")])).toHaveLength(1);
});

test("where two transcripts have one name, the folders tell them apart", () => {
  expect(fitted([of("june/south/A.txt")], [entry("north/A.txt"), entry("south/A.txt")])).toEqual(["south/A.txt drops: a.yaml"]);
  expect(faults(() => fitted([of("A.txt")], [entry("north/A.txt"), entry("south/A.txt")]))).toMatchObject([{ code: "SW-M04", file: "mine/a.yaml", line: 2, message: expect.stringMatching(/north\/A\.txt .* or south\/A\.txt/) }]);
});

test("where one recording holds several stations, the rubric tells them apart", () => {
  const stations = [entry("A.txt", "drops"), entry("A.txt", "spray")];
  expect(fitted([of("A.txt", "a.yaml", "spray"), of("A.txt", "b.yaml", "drops")], stations)).toEqual(["A.txt drops: b.yaml", "A.txt spray: a.yaml"]);
});

test("of a rubric that has changed its name they still fit: marking tells it, with file and line", () => {
  expect(fitted([of("A.txt", "a.yaml", "old-drops")], [entry("A.txt")])).toHaveLength(1);
});

test.each<[string, Corrections[], RegExp]>([
  ["of a transcript that is not there", [of("Z.txt")], /no transcript of the cohort is called 'Z\.txt'/],
  ["twice of one rehearsal", [of("A.txt"), of("A.txt", "b.yaml")], /A\.txt is corrected by a\.yaml too/],
])("corrections %s are told, not left out", (_what, corrections, message) => {
  expect(faults(() => fitted(corrections, [entry("A.txt")]))).toMatchObject([{ code: "SW-M04", message: expect.stringMatching(message) }]);
});
