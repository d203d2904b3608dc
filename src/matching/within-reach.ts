import type { CompiledElement, CompiledRubric, CompiledStatement } from "./compile.ts";
import { mostCoverage, ROUNDING } from "./coverage.ts";
import { LEAST_COVERAGE } from "./passages.ts";
import type { Postings } from "./postings.ts";
import { remembered } from "./remembered.ts";
import type { Response } from "./response.ts";

/** Of a rubric those that a stream has words enough for, in the rubric's order. */
export type WithinReach = Pick<CompiledRubric, "elements" | "unsafe">;

interface Owned {
  response: Response;
  owner: { element: CompiledElement } | { statement: CompiledStatement };
}

/** By place of the response whose it is. */
const ownedOf = remembered((rubric: CompiledRubric): readonly (Owned | undefined)[] => {
  const owned: (Owned | undefined)[] = [];
  for (const element of rubric.elements) {
    for (const response of [...element.say, ...element.incorrect, ...element.elsewhere.flatMap(({ responses }) => responses)]) owned[response.place] = { response, owner: { element } };
  }
  for (const statement of rubric.unsafe) for (const response of statement.say) owned[response.place] = { response, owner: { statement } };
  return owned;
});

/** In more talk than this there are words enough for almost all of a rubric, and to ask takes longer than to look. Tokens. */
const LITTLE_TALK = 100;

/**
 * Of a rubric's some hundred elements little talk (an utterance, a question with its reply) has words enough for two or
 * three: no passage of the others can cover so much as LEAST_COVERAGE, and to look for them would take most of the time.
 */
export function withinReach(rubric: CompiledRubric, postings: Postings): WithinReach {
  if (postings.tokens > LITTLE_TALK) return rubric;
  const owners = ownedOf(rubric);
  const elements = new Set<CompiledElement>();
  const unsafe = new Set<CompiledStatement>();
  postings.terms.touched((place, weight, own) => {
    const owned = owners[place];
    if (owned === undefined) return;
    const { response, owner } = owned;
    // Plain words may always be there.
    if (mostCoverage(weight + response.plainWeight, own, response.ownWeight) < LEAST_COVERAGE * response.weight - ROUNDING) return;
    if ("element" in owner) elements.add(owner.element);
    else unsafe.add(owner.statement);
  });
  return { elements: rubric.elements.filter((element) => elements.has(element)), unsafe: rubric.unsafe.filter((statement) => unsafe.has(statement)) };
}
