import type { CompiledRubric } from "../compile.ts";
import type { Scene } from "../elicitation.ts";
import { elicitationIn } from "../passage-match.ts";
import { clauseSpan, wordsOf } from "../stream.ts";
import type { Match } from "../types.ts";
import type { FoundByReader } from "./by-reader.ts";

const REASON = { right: "no response fits; it is worded like what was marked as right", wrong: "it is worded like what was marked as wrong" } as const;

/** What the second reader found alone, as a match. It fits no response: the first of the element's own stands for it. */
export function readerMatch({ element, verdict, saying, likelihood, quantity }: FoundByReader, scene: Scene, rubric: CompiledRubric): Match {
  const { candidate } = scene;
  const span = wordsOf(candidate, saying.first, saying.end);
  const response = (verdict === "wrong" && quantity === undefined ? element.incorrect[0] : undefined) ?? element.say[0]!;
  return {
    item: element.item,
    element: element.element,
    verdict,
    span,
    clause: clauseSpan(candidate, saying.first, saying.end),
    score: likelihood,
    confidence: likelihood,
    signs: [likelihood, 0, Math.log(2)],
    ...elicitationIn(scene, rubric, element, span),
    response: response.text,
    ...(quantity === undefined ? { reason: REASON[verdict] } : { quantity, reason: `said '${quantity.text}'` }),
  };
}
