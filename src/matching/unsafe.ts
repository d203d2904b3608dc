import type { CompiledRubric } from "./compile.ts";
import { askedShare, deniesBeside, mustHolds, notWithHolds, readPolarity, readQuantity } from "./gates.ts";
import { saysYesTo, type Scene } from "./elicitation.ts";
import { isOwnStatement } from "./held-passages.ts";
import type { Passage } from "./passages.ts";
import type { Postings } from "./postings.ts";
import { wordsOf, type Stream } from "./stream.ts";
import type { UnsafeMatch } from "./types.ts";
import { saysAll, windowsFor, withoutOverlap, type Window } from "./windows.ts";

/** To hold a statement against somebody takes a close fit. */
export const UNSAFE_ACCEPTED = 0.78;
/** Words that are not written as the rubric has them may have been mis-heard: then a person listens. */
const SURE_HEARING = 0.85;

/** Statements of the unsafe list, said as such: not denied, not asked, not supposed. */
export function unsafeMatches(rubric: CompiledRubric, postings: Postings, stream: Stream): UnsafeMatch[] {
  return rubric.unsafe.flatMap((statement) => {
    const near = statement.say.flatMap((response) => windowsFor(response, postings, stream, UNSAFE_ACCEPTED)).filter((window) => mustHolds(statement.must, postings, stream, window));
    const windows = near.filter((window) => {
      if (!saysAll(window) || !notWithHolds(statement.notWith, postings, stream, window)) return false;
      if (askedShare(stream, window).asked > 0.5 || readPolarity(stream, window, new Set()) !== "agrees" || deniesBeside(stream, window)) return false;
      if (supposed(window, stream) || !isOwnStatement(window, stream)) return false;
      return statement.quantity === null || readQuantity(stream, window, statement.quantity).reading === "right";
    });
    const denials = near.filter((window) => readPolarity(stream, window, new Set()) === "opposes");
    return withoutOverlap(windows).map((window): UnsafeMatch => ({
      statement: statement.statement,
      ...takenBack(window, denials, stream),
      span: wordsOf(stream, window.first, window.end),
      score: window.coverage,
      confidence: window.coverage,
      verdict: hangsOnHearing(window, stream) ? "unclear" : "unsafe",
      response: window.response.text,
    }));
  });
}

/** "Dry it with a tea towel" says no "dry it": words of an unsafe statement earn nothing. */
export function withoutUnsafe(passages: Passage[], unsafe: readonly UnsafeMatch[], stream: Stream): Passage[] {
  const held = unsafe.filter(({ verdict, correctedBy }) => verdict === "unsafe" && correctedBy === undefined);
  if (held.length === 0) return passages;
  return passages.filter(({ verdict, window }) => {
    if (verdict !== "right") return true;
    const words = window.aligned.map(({ hit }) => wordsOf(stream, hit.first, hit.end));
    return !held.some(({ span }) => 2 * words.filter(({ first, end }) => first >= span.first && end <= span.end).length > words.length);
  });
}

/** A question fits less closely than a statement: "can my sister use it" for "others can use it". */
const AFFIRMED_ACCEPTED = 0.7;

/** Statements that the patient put as a question and the candidate said yes to. */
export function affirmedUnsafe(rubric: CompiledRubric, postings: Postings, scene: Scene): UnsafeMatch[] {
  const stream = scene.patient;
  return rubric.unsafe.flatMap((statement): UnsafeMatch[] => {
    for (const response of statement.say) {
      for (const window of windowsFor(response, postings, stream, AFFIRMED_ACCEPTED)) {
        if (askedShare(stream, window).asked < 0.5 || !mustHolds(statement.must, postings, stream, window) || readPolarity(stream, window, new Set()) !== "agrees") continue;
        const span = saysYesTo(scene, wordsOf(stream, window.first, window.end));
        if (span === null) continue;
        return [{ statement: statement.statement, span, score: window.coverage, confidence: window.coverage, verdict: hangsOnHearing(window, stream) ? "unclear" : "unsafe", response: response.text }];
      }
    }
    return [];
  });
}

/** "If you stop it suddenly ..." warns; unless the response itself supposes ("if you miss one take two"). */
function supposed(window: Window, stream: Stream): boolean {
  if (/\b(if|when)\b/.test(window.response.text)) return false;
  return window.aligned.every(({ hit }) => stream.polarity[hit.first]!.hypothetical);
}

/** "No, sorry, I mean": so soon behind it, these take it back. */
const TAKES_BACK = /\b(sorry|i mean|correction|scratch that|no wait|i meant|let me correct|that is wrong|i misspoke|not true)\b/;
const TAKES_BACK_REACH = 12;

function takenBack(window: Window, denials: readonly Window[], stream: Stream): Pick<UnsafeMatch, "correctedBy"> {
  const denial = denials.find((candidate) => candidate.first >= window.end);
  if (denial !== undefined) return { correctedBy: wordsOf(stream, denial.first, denial.end) };
  const end = Math.min(stream.tokens.length, window.end + TAKES_BACK_REACH);
  const behind = stream.tokens.slice(window.end, end).map((token) => token.text).join(" ");
  return TAKES_BACK.test(behind) ? { correctedBy: wordsOf(stream, window.end, end) } : {};
}

function hangsOnHearing(window: Window, stream: Stream): boolean {
  return window.aligned.some(({ hit }) => hit.quality < SURE_HEARING) || rangeHas(window, stream.doubtful);
}

function rangeHas(window: Window, places: ReadonlySet<number>): boolean {
  for (let place = window.first; place < window.end; place += 1) if (places.has(place)) return true;
  return false;
}
