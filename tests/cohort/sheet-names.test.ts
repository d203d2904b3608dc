import { expect, test } from "vitest";
import { entryOf, identityOf, sheetNames } from "../../src/cohort/sheet-names.ts";

const entry = (candidate: string, station = "pen", attempt = "1", file = `${candidate}_${station}.txt`) => ({ key: { candidate, station, attempt }, file });
const named = (...entries: ReturnType<typeof entry>[]) => entries.map(sheetNames(entries));

test("a sheet is named by candidate, station and attempt", () => {
  expect(named(entry("A017", "eye-drops", "2"))).toEqual(["A017-eye-drops-2"]);
});

test("what a file system gives a meaning to becomes an underscore; a name neither hides nor looks like an option", () => {
  expect(named(entry("a/b:c d"), entry(".hidden"), entry("--force"))).toEqual(["a_b_c_d-pen-1", "_hidden-pen-1", "_force-pen-1"]);
});

test("letters keep their accents, composed, and a long part is cut between letters", () => {
  expect(named(entry("Zoe\u0308"))).toEqual(["Zo\u00eb-pen-1"]);
  expect(named(entry("\u{1f600}x".repeat(30)))[0]).toMatch(/^_x_x/);
  expect(named(entry("\u{20000}".repeat(50)))).toEqual([`${"\u{20000}".repeat(40)}-pen-1`]);
});

test("two that would have one name, also where case does not count, are told apart by their keys; the others keep theirs", () => {
  const [first, second, other] = named(entry("Ana"), entry("ANA"), entry("Ben"));
  expect(first).toMatch(/^Ana-pen-1-[0-9a-f]{8}$/);
  expect(second).toMatch(/^ANA-pen-1-[0-9a-f]{8}$/);
  expect(first!.slice(-8)).not.toBe(second!.slice(-8));
  expect(other).toBe("Ben-pen-1");
});

test("an identity gives back what it was made of, whatever stands in it", () => {
  for (const odd of [entry('a","b'), entry("", "", "", "x/y z.vtt"), entry("\u00e9\n")]) expect(entryOf(identityOf(odd))).toEqual(odd);
});
