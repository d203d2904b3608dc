import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chanceOfContent, chancesOf, type ElementChances } from "../../src/scoring/item-confidence.ts";

const element = (complete: number, incorrect: number, essential = false): ElementChances => ({ complete, incorrect, absent: 1 - complete - incorrect, essential });

// The chances by hand: two independent elements, each complete, incorrect or absent.
describe("how sure an item's mark is", () => {
  const two = [element(0.9, 0.05), element(0.6, 0.1)];

  test("all complete: the product", () => {
    expect(chanceOfContent("complete", two, 2)).toBeCloseTo(0.9 * 0.6);
  });

  test("one of two is enough: either, and neither wrong", () => {
    expect(chanceOfContent("complete", two, 1)).toBeCloseTo(0.9 * 0.6 + 0.9 * 0.3 + 0.05 * 0.6);
  });

  test("incorrect: one of them at least", () => {
    expect(chanceOfContent("incorrect", two, 2)).toBeCloseTo(1 - 0.95 * 0.9);
  });

  test("absent: none of them", () => {
    expect(chanceOfContent("absent", two, 2)).toBeCloseTo(0.05 * 0.3);
  });

  test("partial: some, and not enough", () => {
    expect(chanceOfContent("partial", two, 2)).toBeCloseTo(0.9 * 0.3 + 0.05 * 0.6);
  });

  test("without an essential one an item is not complete", () => {
    expect(chanceOfContent("complete", [element(0.9, 0), element(0.6, 0, true)], 1)).toBeCloseTo(0.6);
  });

  test("the four marks are all there is", () => {
    const chances = fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean()).map(([complete, rest, essential]) => element(complete, (1 - complete) * rest, essential));
    fc.assert(fc.property(fc.array(chances, { minLength: 1, maxLength: 6 }), fc.nat(5), (elements, more) => {
      const needs = 1 + (more % elements.length);
      const all = (["complete", "partial", "incorrect", "absent"] as const).map((content) => chanceOfContent(content, elements, needs));
      expect(all.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1);
    }));
  });
});

describe("what a reader may take an element for", () => {
  test("what the mark leaves open goes to what both readers hold likelier", () => {
    expect(chancesOf({ content: "absent", confidence: 0.8 }, { right: 0.3, wrong: 0.1 }, false)).toEqual({ complete: expect.closeTo(0.15) as number, incorrect: expect.closeTo(0.05) as number, absent: 0.8, essential: false });
    expect(chancesOf({ content: "complete", confidence: 0.7 }, { right: 0.6, wrong: 0.3 }, true)).toEqual({ complete: 0.7, incorrect: expect.closeTo(0.225) as number, absent: expect.closeTo(0.075) as number, essential: true });
  });

  test("evenly where the second reader knows nothing of it, or leaves nothing to the others", () => {
    for (const judged of [undefined, { right: 1, wrong: 0 }]) expect(chancesOf({ content: "complete", confidence: 0.8 }, judged, false)).toEqual({ complete: 0.8, incorrect: expect.closeTo(0.1) as number, absent: expect.closeTo(0.1) as number, essential: false });
  });
});
