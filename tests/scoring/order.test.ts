import { describe, expect, test } from "vitest";
import { longestIncreasing } from "../../src/scoring/order.ts";
import { markTalk, OPENING } from "./station-card.ts";

const SHAKE = "C: Shake the inhaler well.";
const HOLD = "C: Hold your breath for ten seconds.";
const broken = (...lines: string[]) => markTalk([...OPENING, ...lines]).order.broken.map(({ first, then }) => `${first} before ${then}`);

describe("a pair is judged by the candidate's first plain teaching of each", () => {
  test("taught the wrong way round: a fault, with both passages quoted from the candidate", () => {
    const [fault] = markTalk([...OPENING, HOLD, "P: Right.", SHAKE]).order.broken;
    expect(fault).toMatchObject({ first: "shake", then: "hold", firstSaid: { role: "candidate", quote: "Shake the inhaler well." }, thenSaid: { role: "candidate", quote: "Hold your breath for ten seconds." } });
  });

  test("said again later the other way round: no fault", () => {
    expect(broken(SHAKE, HOLD, "P: Right.", SHAKE)).toEqual([]);
  });

  test("what the patient tells back is no teaching, nor is what is put right in it", () => {
    expect(broken(HOLD, "C: Can you show me how you will use it?", "P: I shake the inhaler well and hold my breath for ten seconds.", "C: Yes, shake the inhaler well.")).toEqual([]);
  });

  test("a thing that is only touched on has no place in the order", () => {
    expect(broken(HOLD, "C: It is shaken up by the van on the bumpy road.")).toEqual([]);
  });
});

test("the longest increasing subsequence, by Schensted's method, of a worked example", () => {
  // The first sixteen terms of the van der Corput sequence: length 6 (a standard worked example of the problem).
  expect(longestIncreasing([0, 8, 4, 12, 2, 10, 6, 14, 1, 9, 5, 13, 3, 11, 7, 15])).toBe(6);
});

test("two things taught in the same words follow each other in no order", () => {
  expect(longestIncreasing([3, 3, 3])).toBe(1);
  expect(longestIncreasing([1, 2, 2, 3])).toBe(3);
});

test("what is asked in the first words, what the patient knows already, is no teach-back that ends the teaching", () => {
  const lines = [HOLD, "P: Right.", SHAKE, "C: It fits in any handbag and it is made of blue plastic that does not crack. It weighs next to nothing.", "P: That is good to know."];
  expect(broken("C: Tell me in your own words how you will use it.", "P: I have no idea.", ...lines)).toEqual(["shake before hold"]);
});
