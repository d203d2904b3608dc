import type { WordSpan } from "../station/types.ts";
import type { CompiledElement, CompiledRubric } from "./compile.ts";
import { confidenceOf, heardOf, signsOf } from "./confidence.ts";
import { denialBefore } from "./denial-span.ts";
import { elicitationOf, type Scene } from "./elicitation.ts";
import type { Passage } from "./passages.ts";
import { clauseSpan, wordsOf, type Stream } from "./stream.ts";
import type { Match } from "./types.ts";

/** A passage that stands, as a match with what elicited it. */
export function matchOf(passage: Passage, stream: Stream, scene: Scene, rubric: CompiledRubric): Match {
  const span = spanWithNumber(passage, stream);
  return { ...plainMatch(passage, span, stream), ...elicitationIn(scene, rubric, passage.element, span) };
}

/** What elicited an element where it is said, scripted questions of the rubric among it. */
export function elicitationIn(scene: Scene, rubric: CompiledRubric, element: CompiledElement, span: WordSpan): Pick<Match, "elicitation" | "elicitedBy"> {
  const questionsFor = new Set(rubric.questions.filter((question) => question.answeredBy.includes(element.item)).map(({ question }) => question));
  return elicitationOf(scene, element, questionsFor, span);
}

/** With the number that makes it right, where that stands beside it: "your dose was ten units, from tonight it's twelve". */
function spanWithNumber({ first, end, verdict, quantity }: Passage, stream: Stream): WordSpan {
  if (verdict !== "right" || quantity === undefined) return wordsOf(stream, first, end);
  return wordsOf(stream, Math.min(first, quantity.first), Math.max(end, quantity.end));
}

/** The same without what elicited it. */
export function plainMatch(passage: Passage, span: WordSpan, stream: Stream): Match {
  const denial = denialBefore(stream, passage.first);
  const heard = heardOf(passage, stream);
  return {
    item: passage.element.item,
    element: passage.element.element,
    verdict: passage.verdict,
    span,
    clause: clauseSpan(stream, passage.first, passage.end),
    ...(denial !== null && { deniedFrom: wordsOf(stream, denial, denial + 1).first }),
    score: passage.coverage,
    confidence: confidenceOf(passage) * heard,
    ...(heard < 1 && { heard }),
    signs: signsOf(passage),
    elicitation: "offered",
    response: passage.window.response.text,
    ...(passage.quantity !== undefined && { quantity: passage.quantity }),
    ...(passage.reason !== undefined && { reason: passage.reason }),
    ...(passage.takenBack === true && { takenBack: true }),
  };
}
