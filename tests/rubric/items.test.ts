import { expect, test } from "vitest";
import { applies, elementsNeeded, itemsOf } from "../../src/rubric/items.ts";
import { CARD } from "../scoring/station-card.ts";

const item = { ...itemsOf(CARD)[0]!, elements: [1, 2, 3].map((number) => ({ id: `e${number}`, label: `Element ${number}`, say: ["anything"] })) };

test("the items of a rubric stand in the order of its sections", () => {
  const sections = [["c", "a"], ["b"]].map((ids) => ({ items: ids.map((id) => ({ ...item, id })) }));
  expect(itemsOf({ sections }).map(({ id }) => id)).toEqual(["c", "a", "b"]);
});

test("an item needs all of its elements, or as many as the rubric says", () => {
  expect(elementsNeeded({ ...item, needs: "all" })).toBe(3);
  expect(elementsNeeded({ ...item, needs: 2 })).toBe(2);
});

test.each([
  [undefined, ["child"], true],
  [["child"], ["child"], true],
  [["child"], [], false],
  [["not child"], [], true],
  [["not child"], ["child"], false],
  [["child", "arthritis"], ["child"], false],
  [["child", "not arthritis"], ["child"], true],
])("with the conditions %j an item applies in the scenario %j: %s", (when, conditions, holds) => {
  expect(applies({ ...item, when }, { conditions })).toBe(holds);
});
