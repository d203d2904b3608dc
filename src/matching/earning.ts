import { assign, withoutOthersWords } from "./assignment.ts";
import type { CompiledRubric } from "./compile.ts";
import { statedForReader } from "./learnt/unsafe-by-reader.ts";
import { counts, readTwice, responsePassages } from "./likelihood.ts";
import type { Passage } from "./passages.ts";
import { postingsOf, type Postings } from "./postings.ts";
import type { Stream } from "./stream.ts";
import type { Gate, UnsafeMatch } from "./types.ts";
import { unsafeByWrong } from "./unsafe-by-wrong.ts";
import { unsafeMatches, withoutUnsafe } from "./unsafe.ts";
import { withinReach } from "./within-reach.ts";

/** Which passages of a stream stand for their elements when all of them are seen together. */
export interface Earning {
  kept: Passage[];
  /** Passages that count by themselves and stand back, each with why. */
  left: ReadonlyMap<Passage, Gate>;
}

/**
 * Of all passages those that stand: what belongs to an unsafe statement earns nothing, what was meant for something else
 * is not held against anybody, and a word pays once.
 * @param unsafe statements found in the same stream.
 */
export function earningOf(passages: readonly Passage[], unsafe: readonly UnsafeMatch[], stream: Stream): Earning {
  const counting = passages.filter(counts);
  const safe = withoutUnsafe(counting, unsafe, stream);
  const own = withoutOthersWords(safe, passages);
  const { kept, lookAlikes } = assign(own);
  const left = new Map<Passage, Gate>();
  const mark = (all: readonly Passage[], standing: readonly Passage[], gate: Gate) => {
    const among = new Set(standing);
    for (const passage of all) if (!among.has(passage)) left.set(passage, gate);
  };
  mark(counting, safe, "unsafe-words");
  mark(safe, own, "look-alike");
  for (const passage of lookAlikes) left.set(passage, "look-alike");
  return { kept, left };
}

/** All that the candidate's stream earns and states, whatever the others said; all passages, and as the responses alone leave them. */
export function candidateEarning(rubric: CompiledRubric, said: Postings, stream: Stream): Earning & { all: Passage[]; byResponses: Passage[]; unsafe: UnsafeMatch[] } {
  const { elements, unsafe: statements } = withinReach(rubric, said);
  const byResponses = responsePassages(rubric, said, stream, elements);
  const all = readTwice(rubric, byResponses, stream);
  const right = all.filter(counts);
  // What was taken back in the same breath is listed with its correction.
  const whole = stream.withdrawn.size === 0 ? null : postingsOf({ ...stream, withdrawn: new Set() }, rubric);
  const unsafe = whole === null ? unsafeMatches(statements, said, stream, right) : unsafeMatches(withinReach(rubric, whole).unsafe, whole, stream, right);
  return { all, byResponses, ...statedAndEarned(rubric, all, unsafe, said, stream) };
}

/** What stands, and what is unsafe: in its own words, or because a wrong statement that stands amounts to it. */
export function statedAndEarned(rubric: CompiledRubric, all: readonly Passage[], unsafe: readonly UnsafeMatch[], said: Postings, stream: Stream): Earning & { unsafe: UnsafeMatch[] } {
  const standing = (matches: readonly UnsafeMatch[]) => matches.filter((match) => statedForReader(match, rubric, stream));
  const own = standing(unsafe);
  const earned = earningOf(all, own, stream);
  const amounting = standing(unsafeByWrong(rubric, earned.kept, own, said, stream));
  if (amounting.length === 0) return { unsafe: own, ...earned };
  const stated = [...own, ...amounting];
  return { unsafe: stated, ...earningOf(all, stated, stream) };
}

/** A passage with the reason for which it stands back behind others, if it does. */
export function leftBack(passage: Passage, left: ReadonlyMap<Passage, Gate>): Passage {
  const gate = left.get(passage);
  return gate === undefined ? passage : { ...passage, closed: [...passage.closed, gate] };
}
