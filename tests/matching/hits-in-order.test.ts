import { describe, expect, test } from "vitest";
import { hitsInOrder } from "../../src/matching/hits-in-order.ts";
import { Postings, type Hit } from "../../src/matching/postings.ts";
import type { Response, Term } from "../../src/matching/response.ts";
import { TermIndex } from "../../src/matching/term-index.ts";

const term = (text: string, keys: Term["keys"], plain = false): Term => ({ text, keys, weight: 1, direction: false, plain, negated: false, supposed: false, needed: false, eitherWay: false, conceded: false });
const responseOf = (terms: Term[]): Response => ({ text: "", terms, weight: 1, ownWeight: 1, plainWeight: 0, length: terms.length, asks: "no", without: 0, byNumber: 0, place: -1, literal: false });
const hitAt = (first: number, quality = 1, words = 1): Hit => ({ first, end: first + words, quality });
const TOKENS = 10;

/** Text of the term, token and quality of each hit of a response of these terms. */
function read(terms: Term[], said: Record<string, Hit[]>): unknown[][] {
  const response = responseOf(terms);
  const postings = new Postings(new TermIndex({ elements: [], unsafe: [], questions: [], cues: [{ item: "", says: [response] }] }), TOKENS);
  for (const [key, hits] of Object.entries(said)) postings.set(key, hits);
  const { size, term: of, first, quality, row } = hitsInOrder(response, postings.terms);
  return Array.from({ length: size }, (_, k) => {
    expect(postings.terms.hitAt(row[k]!).first).toBe(first[k]);
    return [terms[of[k]!]!.text, first[k], quality[k]];
  });
}

describe("the hits of a response", () => {
  test("come in the order of speech, whatever the order of its terms", () => {
    const terms = [term("cap", [{ key: "cap", quality: 1 }]), term("off", [{ key: "off", quality: 1 }])];
    expect(read(terms, { cap: [hitAt(4)], off: [hitAt(2), hitAt(5)] })).toEqual([["off", 2, 1], ["cap", 4, 1], ["off", 5, 1]]);
  });

  test("stand with the surest first at one place, and a term once for the same words", () => {
    const cap = term("cap", [{ key: "top", quality: 1 }, { key: "lid", quality: 0.9 }, { key: "cap", quality: 1 }]);
    expect(read([term("lid", [{ key: "lid", quality: 0.7 }]), cap], { cap: [hitAt(1)], lid: [hitAt(1)], top: [hitAt(1, 0.8)] })).toEqual([["cap", 1, 1], ["lid", 1, 0.7]]);
  });

  test("keep a word and the set phrase that opens with it apart, whichever comes first", () => {
    const off = term("take off", [{ key: "take", quality: 0.8 }, { key: "take off", quality: 1 }]);
    expect(read([off], { take: [hitAt(3)], "take off": [hitAt(3, 1, 2)] })).toEqual([["take off", 3, 1], ["take off", 3, 0.8]]);
    expect(read([off], { "take off": [hitAt(3, 1, 2)], take: [hitAt(3)] })).toEqual([["take off", 3, 1], ["take off", 3, 0.8]]);
  });

  test("leave out plain words and terms that nobody said", () => {
    const terms = [term("the", [{ key: "the", quality: 1 }], true), term("cap", [{ key: "cap", quality: 1 }]), term("spacer", [{ key: "spacer", quality: 1 }])];
    expect(read(terms, { the: [hitAt(0)], cap: [hitAt(1)] })).toEqual([["cap", 1, 1]]);
  });
});
