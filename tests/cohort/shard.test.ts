import { expect, test } from "vitest";
import { inShard, parseShard } from "../../src/cohort/shard.ts";

const FILES = Array.from({ length: 400 }, (_, place) => `june/A${place}_pen.vtt`);

test("a part is written I/N, counted from one", () => {
  expect(parseShard(" 2 / 8 ")).toEqual({ index: 2, of: 8 });
});

test.each(["0/8", "9/8", "1/0", "1/1000000", "1/100001", "1", "1/8/2", "a/b", "-1/8", "1.5/8"])("'%s' is no part", (typed) => {
  expect(() => parseShard(typed)).toThrow("Write I/N");
});

test("every file is of one part and of one alone, and the parts are of about the same size", () => {
  const sizes = [1, 2, 3, 4].map((index) => FILES.filter((file) => inShard(file, { index, of: 4 })).length);
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBe(FILES.length);
  for (const file of FILES) expect([1, 2, 3, 4].filter((index) => inShard(file, { index, of: 4 }))).toHaveLength(1);
  expect(Math.min(...sizes)).toBeGreaterThan(60);
});

test("a file is of the same part on a system that writes accents apart", () => {
  for (let index = 1; index <= 97; index += 1) expect(inShard("Zoe\u0308.vtt", { index, of: 97 })).toBe(inShard("Zo\u00eb.vtt", { index, of: 97 }));
});
