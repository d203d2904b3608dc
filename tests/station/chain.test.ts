// The chain against the definition: sums and maxima over all label sequences, one by one.
import fc from "fast-check";
import { expect, test } from "vitest";
import { marginals, viterbi, type ChainScores } from "../../src/station/chain.ts";

const LENGTH = 6;
const score = fc.double({ min: -4, max: 4, noNaN: true });
const scores = fc.record({
  emission: fc.array(score, { minLength: LENGTH, maxLength: LENGTH }),
  toPatient: fc.array(score, { minLength: LENGTH, maxLength: LENGTH }),
  toCandidate: fc.array(score, { minLength: LENGTH, maxLength: LENGTH }),
});

function total(chain: ChainScores, bits: number): number {
  let sum = 0;
  for (let i = 0; i < LENGTH; i++) {
    const here = (bits >> i) & 1;
    const before = i === 0 ? here : (bits >> (i - 1)) & 1;
    if (here === 0) sum += chain.emission[i]!;
    if (before === 0 && here === 1) sum += chain.toPatient[i]!;
    if (before === 1 && here === 0) sum += chain.toCandidate[i]!;
  }
  return sum;
}

test("marginals and the best sequence agree with counting all sequences", () => {
  fc.assert(
    fc.property(scores, (lists) => {
      const chain: ChainScores = { emission: Float64Array.from(lists.emission), toPatient: Float64Array.from(lists.toPatient), toCandidate: Float64Array.from(lists.toCandidate) };
      const all = Array.from({ length: 1 << LENGTH }, (_, bits) => ({ bits, weight: Math.exp(total(chain, bits)) }));
      const sum = all.reduce((before, each) => before + each.weight, 0);
      const found = marginals(chain);
      expect(found.logTotal).toBeCloseTo(Math.log(sum), 8);
      for (let i = 0; i < LENGTH; i++) {
        const candidate = all.filter(({ bits }) => ((bits >> i) & 1) === 0).reduce((before, each) => before + each.weight, 0) / sum;
        expect(found.candidate[i]).toBeCloseTo(candidate, 8);
        if (i === 0) continue;
        const out = all.filter(({ bits }) => ((bits >> (i - 1)) & 1) === 0 && ((bits >> i) & 1) === 1).reduce((before, each) => before + each.weight, 0) / sum;
        expect(found.toPatient[i]).toBeCloseTo(out, 8);
      }
      const bits = [...viterbi(chain)].reduce((before, label, at) => before | (label << at), 0);
      expect(total(chain, bits)).toBeCloseTo(Math.log(Math.max(...all.map((each) => each.weight))), 8);
    }),
  );
});
