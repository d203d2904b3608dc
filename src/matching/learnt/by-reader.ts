import type { QuantityMention } from "../../language/quantity-mention.ts";
import type { WordSpan } from "../../station/types.ts";
import type { CompiledElement, CompiledRubric } from "../compile.ts";
import { toldOfOthers } from "../others.ts";
import type { Passage } from "../passages.ts";
import type { Postings } from "../postings.ts";
import { mayBeMisheard, wrongNumberIn } from "../quantity-gate.ts";
import type { Stream } from "../stream.ts";
import type { Judgement } from "../types.ts";
import { judgementOf } from "./judgement.ts";
import { readByBoth } from "./read-by-both.ts";
import { isAsked, type Company, type ReadSaying } from "./reading.ts";
import { isWarning } from "./warned-of.ts";

/*
 * What no response fits, and sayings that people marked are worded like: "an empty pop bottle will do you" for the
 * sharps bin. The second reader alone must be surer than both together.
 */

/** From here on it is taken for said wrongly, and for said, whichever is likelier. Where hardly anything else is said nothing around it speaks for it, and it must be surer. */
export const WRONG_ALONE: Readonly<Record<Company, number>> = { company: 0.45, lonely: 0.6 };
export const SAID_ALONE: Readonly<Record<Company, number>> = { company: 0.4, lonely: 0.7 };

export interface FoundByReader {
  element: CompiledElement;
  verdict: "right" | "wrong";
  saying: ReadSaying;
  likelihood: number;
  /** The number that makes it wrong. */
  quantity?: QuantityMention;
}

/** What both readers make of the sayings of a stream. */
export interface ReadBySayings {
  /** Elements that nothing was found of before. */
  found: FoundByReader[];
  /** Of each element that the second reader knows, how likely the likeliest saying says it rightly, and wrongly. */
  judged: (Judgement & { element: CompiledElement })[];
}

/** From here on a saying is what other elements ask for: "you take four tablets together, that makes ten milligrams" is no word against one strength. */
const TOLD_RIGHTLY = 0.6;

/**
 * @param missing elements that nothing was found of.
 * @param right where other elements are said rightly.
 * @param passages all that were tried, as the responses alone leave them.
 */
export function readSayings(rubric: CompiledRubric, missing: readonly CompiledElement[], right: readonly WordSpan[], passages: readonly Passage[], postings: Postings, stream: Stream): ReadBySayings {
  const read = readByBoth({ rubric, stream, passages });
  const result: ReadBySayings = { found: [], judged: [] };
  if (read === null) return result;
  const { reading } = read;
  // In a station people say what comes of doing it wrongly; of a saying by itself the judgement knows as much.
  const warns = ({ incorrect }: CompiledElement, saying: ReadSaying) => saying.company === "company" && isWarning(incorrect, saying, postings, stream);
  const accounted = (saying: ReadSaying) => shareWithin(saying, right, stream) >= TOLD_RIGHTLY;
  for (const element of rubric.elements) {
    const place = reading.placeOf(`${element.item}/${element.element}`);
    if (place === undefined) continue;
    const isMissing = missing.includes(element);
    let best: FoundByReader | null = null;
    const most: Judgement = { right: 0, wrong: 0 };
    for (const saying of reading.sayings) {
      if (saying.readings[place]!.about < LEAST_ABOUT || saying.asks !== isAsked(element)) continue;
      const judgement = judgementOf(saying, element, place, read);
      most.right = Math.max(most.right, judgement.right);
      most.wrong = Math.max(most.wrong, judgement.wrong);
      const verdict = judgement.wrong > judgement.right && !isAsked(element) ? "wrong" : "right";
      const likelihood = judgement[verdict];
      if (!isMissing || likelihood < (verdict === "wrong" ? WRONG_ALONE : SAID_ALONE)[saying.company] || (best !== null && likelihood <= best.likelihood)) continue;
      const quantity = wrongNumberIn(stream, saying, element);
      // The lines take one number for another; and what sounds like the right one is for a person to hear.
      if (quantity !== null && (verdict === "right" || mayBeMisheard(quantity, element.quantity!))) continue;
      if (verdict === "wrong" && (toldOfOthers(saying, stream) || (quantity === null && (accounted(saying) || warns(element, saying))))) continue;
      best = { element, verdict, saying, likelihood, ...(quantity !== null && { quantity }) };
    }
    if (best !== null) result.found.push(best);
    result.judged.push({ element, ...most });
  }
  return result;
}

/** The share of a saying's words that stand within some spans. */
function shareWithin({ first, end }: ReadSaying, spans: readonly WordSpan[], { tokens }: Stream): number {
  const words = tokens.slice(first, end).map(({ word }) => word);
  return words.filter((word) => spans.some((span) => word >= span.first && word < span.end)).length / words.length;
}

/** Log-odds below which nobody would look. */
export const LEAST_ABOUT = -3;
