import { expect, test } from "vitest";
import { slugOf } from "../../src/rubric/slug.ts";

test.each([
  ["Missed dose", "missed-dose"],
  ["Café, à la carte!", "cafe-a-la-carte"],
  ["2 puffs", "puffs"],
  ["already-one", "already-one"],
  ["12", null],
  ["", null],
])("'%s' as an id is %s", (text, id) => {
  expect(slugOf(text)).toBe(id);
});
