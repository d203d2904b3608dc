import type { WordSpan } from "../station/types.ts";
import type { CompiledElement, CompiledRubric } from "./compile.ts";
import { tokensIn, type Scene } from "./elicitation.ts";
import { elicitationIn } from "./passage-match.ts";
import { remembered } from "./remembered.ts";
import { sameElement } from "./same-element.ts";
import { clauseSpan } from "./stream.ts";
import type { Match, UnsafeMatch } from "./types.ts";

/*
 * The way back of unsafe-by-wrong.ts: "get a few goes out of one" is found as the unsafe statement that lancets can be
 * used again, and so "a new lancet each time" is stated wrongly, in words that the element's own wrong statements lack.
 */

/** By unsafe statement its label and the elements that it states wrongly. */
const contradictedBy = remembered((rubric: CompiledRubric): ReadonlyMap<string, { label: string; elements: readonly CompiledElement[] }> => {
  const elementsOf = (keys: readonly string[]) => rubric.elements.filter(({ item, element }) => keys.includes(`${item}/${element}`));
  return new Map(rubric.unsafe.filter(({ contradicts }) => contradicts.length > 0).map(({ statement, label, contradicts }) => [statement, { label, elements: elementsOf(contradicts) }]));
});

/**
 * Elements that unsafe statements state wrongly and no other match does.
 * @param found matches of elements, without these.
 */
export function wrongByUnsafe(rubric: CompiledRubric, unsafe: readonly UnsafeMatch[], found: readonly Match[], scene: Scene): Match[] {
  const wrong: Match[] = [];
  for (const { statement, span, verdict, score, confidence, response, correctedBy } of unsafe) {
    const contradicted = contradictedBy(rubric).get(statement);
    if (verdict !== "unsafe" || contradicted === undefined) continue;
    for (const element of contradicted.elements) {
      const known = (other: Match) => other.verdict === "wrong" && sameElement(other, element) && (other.takenBack === true) === (correctedBy !== undefined);
      if (found.some(known) || wrong.some(known)) continue;
      wrong.push({
        item: element.item,
        element: element.element,
        verdict: "wrong",
        span,
        clause: clauseOf(span, scene),
        score,
        confidence,
        signs: [score, 0, Math.log(2)],
        ...elicitationIn(scene, rubric, element, span),
        response,
        reason: `it is the unsafe statement '${contradicted.label}'`,
        ...(correctedBy !== undefined && { takenBack: true }),
      });
    }
  }
  return wrong;
}

/** The clauses of the candidate's, or of the patient's where the candidate said yes to them. */
function clauseOf(span: WordSpan, { candidate, patient }: Scene): WordSpan {
  for (const stream of [candidate, patient]) {
    const { first, end } = tokensIn(stream, span);
    if (end > first && stream.tokens[first]!.word < span.end) return clauseSpan(stream, first, end);
  }
  return span;
}
