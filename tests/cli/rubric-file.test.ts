import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { blockReader, MAX_RUBRIC_BYTES, rubricFromFile } from "../../src/cli/rubric-file.ts";

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "saidwell-rubric-"));
  mkdirSync(join(root, "ours/blocks"), { recursive: true });
  writeFileSync(join(root, "secret.yaml"), "secret: yes");
  writeFileSync(join(root, "ours/blocks/a.yaml"), "block");
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const read = (include: string) => blockReader(join(root, "ours/station.yaml"))(include);

test("a block in the rubric's folder or below is read", () => {
  expect(read("blocks/a.yaml")).toBe("block");
  expect(read("./blocks/../blocks/a.yaml")).toBe("block");
});

test.each([
  ["a path that climbs out", "../secret.yaml", "outside the rubric's folder"],
  ["one that climbs out from below", "blocks/../../secret.yaml", "outside the rubric's folder"],
  ["an absolute path", "/etc/hostname", "relative to the rubric"],
  ["backslashes", "..\\secret.yaml", "forward slashes"],
  ["a folder of a similar name", "../ours-too/b.yaml", "outside the rubric's folder"],
  ["the folder itself", ".", "outside the rubric's folder"],
  ["a folder", "blocks", "it is a folder"],
  ["nothing there", "blocks/none.yaml", "no such file"],
])("%s is refused", (_name, include, reason) => {
  expect(() => read(include)).toThrow(reason);
});

test("a link that leads outside is refused, one that stays inside is read", () => {
  symlinkSync(join(root, "secret.yaml"), join(root, "ours/blocks/link.yaml"));
  symlinkSync(root, join(root, "ours/up"));
  symlinkSync(join(root, "ours/blocks/a.yaml"), join(root, "ours/again.yaml"));
  expect(() => read("blocks/link.yaml")).toThrow("link that leads outside");
  expect(() => read("up/secret.yaml")).toThrow("link that leads outside");
  expect(read("again.yaml")).toBe("block");
});

test.each([
  ["missing", null, "there is no such file"],
  ["not UTF-8", new Uint8Array([0xff, 0xfe, 0x41, 0x00, 0xd8]), "not UTF-8"],
  ["too large", new Uint8Array(MAX_RUBRIC_BYTES + 1).fill(0x20), "larger than 1 MB"],
])("a rubric that is %s is refused in a sentence", (_name, bytes, reason) => {
  const path = join(root, "ours/r.yaml");
  if (bytes !== null) writeFileSync(path, bytes);
  expect(() => rubricFromFile(path)).toThrow(reason);
  expect(() => rubricFromFile(path)).toThrow("SW-R01");
});
