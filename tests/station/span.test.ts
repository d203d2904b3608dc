import { expect, test } from "vitest";
import { beginsIn, liesIn, meets } from "../../src/station/span.ts";

// Words `first` up to, not including, `end`.
const WHOLE = { first: 10, end: 20 };

test.each([
  [{ first: 8, end: 10 }, { meets: false, beginsIn: false, liesIn: false }],
  [{ first: 8, end: 11 }, { meets: true, beginsIn: false, liesIn: false }],
  [{ first: 10, end: 20 }, { meets: true, beginsIn: true, liesIn: true }],
  [{ first: 19, end: 21 }, { meets: true, beginsIn: true, liesIn: false }],
  [{ first: 20, end: 22 }, { meets: false, beginsIn: false, liesIn: false }],
])("the words %j beside those from 10 to 20: %j", (span, expected) => {
  expect({ meets: meets(span, WHOLE), beginsIn: beginsIn(span, WHOLE), liesIn: liesIn(span, WHOLE) }).toEqual(expected);
});
