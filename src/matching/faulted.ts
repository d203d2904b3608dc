import { FAULTS } from "../language/appraisals.ts";
import type { CompiledElement } from "./compile.ts";
import { sentenceUpTo, type Stream } from "./stream.ts";
import { tokensOf, type Window } from "./windows.ts";

/** So soon behind it what is said is called a fault. */
const BEHIND = 9;

/** "If the seal is broken", "in case it's gone off": so near before it what is only supposed opens. */
const SUPPOSED_WITHIN = 3;
const SUPPOSES = /^(if|when|whether|unless|case|once|until|till)$/;

/**
 * Whether what the passage names is called a fault or a harm behind it ("if it rattles it's broken"), in words that the
 * element has not itself. What is only supposed ("if it's broken") or denied ("it isn't broken") calls nothing so.
 */
export function isFaulted(window: Window, stream: Stream, { vocabulary }: Pick<CompiledElement, "vocabulary">): boolean {
  const { tokens, polarity } = stream;
  const hits = FAULTS.find(tokens, window.first, sentenceUpTo(stream, window.end, BEHIND));
  if (hits.length === 0) return false;
  const carrying = tokensOf(window);
  return hits.some(({ first, end }) => {
    const words = tokens.slice(first, end);
    if (carrying.has(end - 1) || words.every(({ stem }) => vocabulary.has(stem)) || polarity[end - 1]!.negated) return false;
    return !tokens.slice(Math.max(window.first, first - SUPPOSED_WITHIN), first).some(({ text }) => SUPPOSES.test(text));
  });
}
