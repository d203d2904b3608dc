import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { openJournal, ResultStore } from "../../src/cli/cohort/store.ts";

const folder = mkdtempSync(join(tmpdir(), "saidwell-store-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const head = { form: "saidwell/result@1", key: { candidate: "A", station: "s", attempt: "1" }, file: "a.txt", hashes: { transcript: "t", rubric: "r", options: "o", program: "p" }, version: "0", columns: {} } as const;
const line = `${JSON.stringify({ ...head, sheet: null, errors: [] })}\n`;

test("of a result only its place and hashes stay in memory, whatever else is handed over", () => {
  const journal = openJournal(folder);
  const store = new ResultStore();
  const done = { marked: true, again: false, line: "a whole sheet" };
  store.note(head, { fd: journal.fd, folder, ...journal.append(line) }, done);
  const [located] = [...store.index.values()];
  expect(Object.keys(located!).sort()).toEqual(["again", "basis", "columns", "fd", "folder", "length", "marked", "offset", "transcript"]);
  expect(store.read(located!)).toBe(line.trimEnd());
  journal.close();
});

test("a torn last line is cut off before anything is added", () => {
  writeFileSync(join(folder, "journal.jsonl"), `${line}{"form":"saidwell/res`);
  const journal = openJournal(folder);
  const { offset, length } = journal.append(line);
  journal.close();
  expect([offset, length]).toEqual([line.length, line.length - 1]);
  const store = new ResultStore();
  store.load(folder, "journal.jsonl");
  expect([store.index.size, store.broken.size]).toEqual([1, 0]);
  store.close();
});

test("a letter of several bytes does not shift the places", () => {
  const other = `${JSON.stringify({ ...head, key: { ...head.key, candidate: "Zoë" }, sheet: null, errors: [] })}\n`;
  writeFileSync(join(folder, "results.jsonl"), other + line);
  const store = new ResultStore();
  store.load(folder, "results.jsonl");
  expect([...store.index.values()].map((located) => store.read(located))).toEqual([other.trimEnd(), line.trimEnd()]);
  store.close();
});
