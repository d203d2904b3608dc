import { describe, expect, test } from "vitest";
import { hitsInOrder } from "../../src/matching/hits-in-order.ts";
import { Postings } from "../../src/matching/postings.ts";
import type { Response, Term } from "../../src/matching/response.ts";

const term = (text: string, keys: Term["keys"], plain = false): Term => ({ text, keys, weight: 1, direction: false, plain, negated: false, eitherWay: false });
const response = (terms: Term[]): Response => ({ text: "", terms, weight: 1, ownWeight: 1, plainWeight: 0, length: terms.length, asks: "no", without: 0, byNumber: 0, literal: false });
const hitAt = (first: number, quality = 1) => ({ first, end: first + 1, quality });
const read = (terms: Term[], postings: Postings) => {
  const { size, term: of, hit, quality } = hitsInOrder(response(terms), postings);
  return Array.from({ length: size }, (_, k) => [terms[of[k]!]!.text, hit[k]!.first, quality[k]]);
};

describe("the hits of a response", () => {
  test("come in the order of speech, whatever the order of its terms", () => {
    const postings = new Postings([["cap", [hitAt(4)]], ["off", [hitAt(2), hitAt(5)]]]);
    expect(read([term("cap", [{ key: "cap", quality: 1 }]), term("off", [{ key: "off", quality: 1 }])], postings)).toEqual([["off", 2, 1], ["cap", 4, 1], ["off", 5, 1]]);
  });

  test("stand with the surest first at one place, and a term once for the same words", () => {
    const postings = new Postings([["cap", [hitAt(1)]], ["lid", [hitAt(1)]], ["top", [hitAt(1, 0.8)]]]);
    const cap = term("cap", [{ key: "top", quality: 1 }, { key: "lid", quality: 0.9 }, { key: "cap", quality: 1 }]);
    expect(read([term("lid", [{ key: "lid", quality: 0.7 }]), cap], postings)).toEqual([["cap", 1, 1], ["lid", 1, 0.7]]);
  });

  test("leave out plain words and terms that nobody said", () => {
    const postings = new Postings([["the", [hitAt(0)]], ["cap", [hitAt(1)]]]);
    expect(read([term("the", [{ key: "the", quality: 1 }], true), term("cap", [{ key: "cap", quality: 1 }]), term("spacer", [{ key: "spacer", quality: 1 }])], postings)).toEqual([["cap", 1, 1]]);
  });
});
