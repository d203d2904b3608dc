import { describe, expect, test } from "vitest";
import type { Attempt, Match } from "../../src/matching/types.ts";
import type { Item } from "../../src/rubric/schema.ts";
import type { JudgedElement } from "../../src/scoring/elements.ts";
import { ABSENT_SIGNS, absentSigns, COMPLETE_SIGNS, completeSigns, surenessOf } from "../../src/scoring/sureness.ts";
import weights from "../../src/scoring/sureness.json";

// Invented marks: behaviour only.
const item = { kind: "tell" } as Item;
const element = (content: JudgedElement["content"], more: Partial<JudgedElement> = {}): JudgedElement => ({ id: "one", label: "One", content, elicitation: null, evidence: [], confidence: 0.8, inTime: [], late: [], slips: [], standing: null, doubt: null, best: null, elsewhere: [], ...more });
const attempt = (score: number, closed: Attempt["closed"] = []): Attempt => ({ item: "item", element: "one", span: { first: 0, end: 1 }, score, response: "", aligned: [], missing: [], closed });
const sureness = (of: JudgedElement, found: number, nearest?: Attempt) => surenessOf(of, { nearest, almost: 0 }, item, [], found);

describe("how sure a mark is", () => {
  test("what is found is surer in a station that has much", () => {
    expect(sureness(element("complete"), 0.9)).toBeGreaterThan(sureness(element("complete"), 0.3));
  });

  test("nothing near makes an absence surer, and so does a passage that lacks what it must name", () => {
    expect(sureness(element("absent"), 0.7)).toBeGreaterThan(sureness(element("absent"), 0.7, attempt(0.9)));
    expect(sureness(element("absent"), 0.7, attempt(0.7, ["must"]))).toBeGreaterThan(sureness(element("absent"), 0.7, attempt(0.7)));
  });

  test("what the second reader almost takes for said, or for turned, is less sure", () => {
    const absent = (almost: number) => surenessOf(element("absent"), { nearest: undefined, almost }, item, [], 0.7);
    expect(absent(0.5)).toBeLessThan(absent(0.02));
    const complete = (turned: number) => sureness(element("complete", { best: { turned } as Match }), 0.7);
    expect(complete(0.45)).toBeLessThan(complete(0.01));
  });

  test("what was said after the limit was hardly said before it as well", () => {
    const late = [{ confidence: 0.9 } as Match];
    expect(sureness(element("absent", { late }), 0.9, attempt(0.9))).toBeGreaterThan(0.9);
  });

  test("what cannot be told, and what is stated wrongly, stay as sure as they were", () => {
    expect(sureness(element("cannot-tell", { confidence: 0.5 }), 0.9)).toBe(0.5);
    expect(sureness(element("incorrect", { confidence: 0.77 }), 0.1)).toBe(0.77);
  });

  test("every sign has its weight", () => {
    expect(weights.complete.signs).toHaveLength(COMPLETE_SIGNS.length);
    expect(completeSigns(element("complete"), 0.5)).toHaveLength(COMPLETE_SIGNS.length);
    expect(weights.absent.signs).toHaveLength(ABSENT_SIGNS.length);
    expect(absentSigns({ nearest: undefined, almost: 0 }, item, [])).toHaveLength(ABSENT_SIGNS.length);
  });
});
