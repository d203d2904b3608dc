import { describe, expect, test } from "vitest";
import type { Attempt, Match } from "../../src/matching/types.ts";
import type { Item } from "../../src/rubric/schema.ts";
import type { JudgedElement } from "../../src/scoring/elements.ts";
import { ABSENT_SIGNS, absentSigns, COMPLETE_SIGNS, completeSigns, surenessOf, type Near } from "../../src/scoring/sureness.ts";
import weights from "../../src/scoring/sureness.json";

// Invented marks: behaviour only.
const item = { kind: "tell" } as Item;
const element = (content: JudgedElement["content"], more: Partial<JudgedElement> = {}): JudgedElement => ({ id: "one", label: "One", content, elicitation: null, evidence: [], confidence: 0.8, inTime: [], late: [], slips: [], standing: null, doubt: null, best: null, elsewhere: [], ...more });
const attempt = (score: number, closed: Attempt["closed"] = []): Attempt => ({ item: "item", element: "one", span: { first: 0, end: 1 }, score, response: "", aligned: [], missing: [], closed });
const sureness = (of: JudgedElement, found: number, nearest?: Attempt) => surenessOf(of, { nearest, judged: { right: 0.5, wrong: 0.05 } }, item, [], found);

describe("how sure a mark is", () => {
  test("what is found is surer in a station that has much", () => {
    expect(sureness(element("complete"), 0.9)).toBeGreaterThan(sureness(element("complete"), 0.3));
  });

  test("nothing near makes an absence surer, and so does a passage that lacks what it must name", () => {
    expect(sureness(element("absent"), 0.7)).toBeGreaterThan(sureness(element("absent"), 0.7, attempt(0.9)));
    expect(sureness(element("absent"), 0.7, attempt(0.7, ["must"]))).toBeGreaterThan(sureness(element("absent"), 0.7, attempt(0.7)));
  });

  test("what both readers almost take for said, or for said wrongly, is less sure", () => {
    const sure = (content: JudgedElement["content"], right: number, wrong: number) => surenessOf(element(content), { nearest: undefined, judged: { right, wrong } }, item, [], 0.7);
    expect(sure("absent", 0.35, 0.01)).toBeLessThan(sure("absent", 0.02, 0.01));
    expect(sure("absent", 0.02, 0.4)).toBeLessThan(sure("absent", 0.02, 0.01));
    expect(sure("complete", 0.5, 0.45)).toBeLessThan(sure("complete", 0.5, 0.01));
    expect(sure("complete", 0.5, 0.01)).toBeLessThan(sure("complete", 0.95, 0.01));
  });

  test("where the second reader knows nothing it is as sure as of most", () => {
    const sure = (judged: Near["judged"]) => surenessOf(element("complete"), { nearest: undefined, judged }, item, [], 0.7);
    expect(sure(undefined)).toBeGreaterThan(sure({ right: 0.5, wrong: 0.45 }));
    expect(sure(undefined)).toBeLessThan(sure({ right: 0.99, wrong: 0.001 }));
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
    expect(completeSigns(element("complete"), { nearest: undefined, judged: undefined }, 0.5)).toHaveLength(COMPLETE_SIGNS.length);
    expect(weights.absent.signs).toHaveLength(ABSENT_SIGNS.length);
    expect(absentSigns({ nearest: undefined, judged: undefined }, item, [])).toHaveLength(ABSENT_SIGNS.length);
  });
});
