import { expect, test } from "vitest";
import { wordGroups } from "../../src/matching/word-group.ts";

test("a must-word may have any number of names, and none is lost", () => {
  const names = Array.from({ length: 60 }, (_, place) => `name${"abcdefghij"[place % 10]!.repeat(place)} of it`);
  const [group] = wordGroups([`(${names.join("|")})`], true);
  expect(group!.runs).toHaveLength(names.length);
});
