import { readNumber } from "../language/number-words.ts";
import { stem } from "../language/stem.ts";
import { tokenise } from "../language/token.ts";
import { askedShare } from "./act-gate.ts";
import type { CompiledRubric, CompiledStatement } from "./compile.ts";
import { deniesBeside } from "./denied-beside.ts";
import { saysYesTo, yesWithoutCorrection, type Scene, type Yes } from "./elicitation.ts";
import { isOwnStatement, isSupposed } from "./held-passages.ts";
import { mustHolds, mustHoldsInside, notWithHolds } from "./must-words.ts";
import { tellsDoseOfAnAge } from "./others.ts";
import type { Passage } from "./passages.ts";
import { readPolarity } from "./polarity-gate.ts";
import type { Postings } from "./postings.ts";
import { readQuantity } from "./quantity-gate.ts";
import { remembered } from "./remembered.ts";
import type { Response } from "./response.ts";
import { inOneSentence, wordsOf, type Stream } from "./stream.ts";
import { takenBackBehind, topicOf } from "./taken-back.ts";
import type { UnsafeMatch } from "./types.ts";
import { saysAll, saysChosen, windowsFor, withoutOverlap, type Window } from "./windows.ts";
import type { WordGroup } from "./word-group.ts";

/** To hold a statement against somebody takes a close fit. */
export const UNSAFE_ACCEPTED = 0.78;
/** Words that are not written as the rubric has them may have been mis-heard: then a person listens. */
const SURE_HEARING = 0.85;

/**
 * Statements of the unsafe list, said as such: not denied, not asked, not supposed, and none of what is said rightly.
 * @param passages of the rubric's elements in the same stream, those that count.
 */
export function unsafeMatches(statements: readonly CompiledStatement[], postings: Postings, stream: Stream, passages: readonly Passage[]): UnsafeMatch[] {
  const right = passages.filter(({ verdict, likelihood = 1 }) => verdict === "right" && likelihood >= LIKELY_RIGHT);
  return statements.flatMap((statement) => {
    const near = fitting(statement, statement.say.flatMap((response) => windowsFor(response, postings, stream, UNSAFE_ACCEPTED)), postings, stream);
    const windows = near.filter((window) => isStated(statement, window, postings, stream) && !saidRightly(window, right));
    const denials = near.filter((window) => readPolarity(stream, window, new Set()) === "opposes");
    return withoutOverlap(windows).map((window) => unsafeMatch(statement, window, stream, takenBack(window, denials, stream)));
  });
}

/** A statement as the window says it. */
export function unsafeMatch({ statement }: CompiledStatement, window: Window, stream: Stream, { correctedBy, span = wordsOf(stream, window.first, window.end) }: Partial<Pick<UnsafeMatch, "correctedBy" | "span">> = {}): UnsafeMatch {
  return {
    statement,
    ...(correctedBy !== undefined && { correctedBy }),
    span,
    score: window.coverage,
    confidence: window.coverage,
    verdict: hangsOnHearing(window, stream) ? "unclear" : "unsafe",
    response: window.response.text,
  };
}

/** Of windows for a statement those that fit it closely and have its must-words. */
function fitting({ must }: CompiledStatement, windows: readonly Window[], postings: Postings, stream: Stream): Window[] {
  return windows.filter((window) => window.coverage >= UNSAFE_ACCEPTED && (inOwnWords(window) ? mustHolds : mustHoldsInside)(must, postings, stream, window));
}

/** Denials, whose polarity the gates read: what else may not stand with a statement keeps it out, whoever says it. */
const DENIALS: ReadonlySet<string> = new Set(["not", "never", "no", "without", "cannot", "do"].map(stem));

/** What may not stand with a statement, but the denials that the response says itself: "if it's not working use more" has its own "not". */
export const othersNotWith = (statement: CompiledStatement, response: Response): readonly WordGroup[] => notWithOf(statement)(response);

// By statement too: a wrong statement of an element may amount to several.
const notWithOf = remembered(({ notWith }: CompiledStatement) =>
  remembered(({ text }: Response): readonly WordGroup[] => {
    const own = new Set(tokenise(text.split(/[\s|()]+/).filter(Boolean)).map(({ stem }) => stem));
    const says = (key: string) => DENIALS.has(key) && own.has(key);
    // Single words of a notion share one run, all as keys of one place.
    const others = (run: string[][]) => (run.length === 1 ? [run[0]!.filter((key) => !says(key))] : run);
    return notWith.map((group) => ({ ...group, runs: group.runs.map(others).filter((run) => run.some((keys) => keys.length > 0)) }));
  }),
);

/** Less likely passages are no reason to let an unsafe statement go. */
const LIKELY_RIGHT = 0.5;

/**
 * "Tip your head back and pull your lid down" has a tip and a lid and is told rightly, word for word: each word of the
 * statement is one of a passage that fits its own element better.
 */
function saidRightly({ aligned, response, coverage }: Window, right: readonly Passage[]): boolean {
  const better = right.filter((passage) => passage.window.coverage >= coverage);
  return aligned.every(({ term, hit }) => response.terms[term]!.plain || better.some(({ window }) => window.aligned.some((own) => own.hit.first <= hit.first && own.hit.end >= hit.end)));
}

/** Said in the very words of the rubric: then what must be named with it may stand beside. */
const inOwnWords = ({ aligned, response }: Window) => aligned.every(({ term, quality }) => quality === 1 || response.terms[term]!.plain);

function isStated(statement: CompiledStatement, window: Window, postings: Postings, stream: Stream): boolean {
  if (!saysAll(window) || !saysChosen(window, postings) || !deniesAlike(window, stream) || !notWithHolds(othersNotWith(statement, window.response), postings, stream, window)) return false;
  if (askedShare(stream, window).asked > 0.5 || readPolarity(stream, window, new Set()) !== "agrees" || deniesBeside(stream, window)) return false;
  if (isSupposed(window, stream) || !isOwnStatement(window, stream) || tellsDoseOfAnAge(window, stream) || endsOtherwise(window, stream)) return false;
  return statement.quantity === null || readQuantity(stream, window, statement.quantity).reading === "right";
}

/** "Two drops, one drop I mean, in each eye": a number that was taken back for another before all was said was never stated. */
function endsOtherwise({ aligned }: Window, { withdrawn, tokens }: Stream): boolean {
  if (withdrawn.size === 0) return false;
  const takenBack = aligned.find(({ hit }) => withdrawn.has(hit.first) && readNumber(tokens, hit.first) !== null);
  return takenBack !== undefined && aligned.some(({ hit }) => hit.first > takenBack.hit.first && !withdrawn.has(hit.first));
}

/** "Ring if she's better" is no "only ring if she's not better": something that the statement denies must be denied, supposed or told. */
function deniesAlike({ aligned, response }: Window, { polarity }: Stream): boolean {
  const denied = aligned.filter(({ term }) => response.terms[term]!.negated && !response.terms[term]!.eitherWay);
  return denied.length === 0 || denied.some(({ hit }) => polarity[hit.end - 1]!.negated);
}

/** What a passage is about weighs so much beside its heaviest word. */
const SUBJECT_SHARE = 0.5;
/** Speech without punctuation is one long sentence: what is said so many tokens from its subject is something else. */
const OF_A_SUBJECT = 8;

/**
 * "Dry it with a tea towel" says no "dry it": words of an unsafe statement earn nothing, and neither does what its
 * sentence says with its subject ("give the blood tests a miss, the clinic has plenty to do"), or another sentence that
 * has no subject of its own.
 */
export function withoutUnsafe(passages: Passage[], unsafe: readonly UnsafeMatch[], stream: Stream): Passage[] {
  const held = unsafe.filter(({ verdict, correctedBy }) => verdict === "unsafe" && correctedBy === undefined);
  if (held.length === 0) return passages;
  return passages.filter(({ verdict, window }) => {
    if (verdict !== "right") return true;
    const words = window.aligned.map(({ term, hit }) => ({ ...wordsOf(stream, hit.first, hit.end), weight: window.response.terms[term]!.weight, place: hit.first }));
    const subject = SUBJECT_SHARE * Math.max(...words.map(({ weight }) => weight));
    return !held.some(({ span }) => {
      const shared = words.filter(({ first, end }) => first >= span.first && end <= span.end);
      return 2 * shared.length > words.length || (shared.some(({ weight }) => weight >= subject) && words.every(({ place }) => !inOneSentence(stream, place, shared[0]!.place) || Math.abs(place - shared[0]!.place) <= OF_A_SUBJECT));
    });
  });
}

/** A question fits less closely than a statement: "can my sister use it" for "others can use it". */
const AFFIRMED_ACCEPTED = 0.7;

/** Statements that the patient put as a question, or as what was understood ("so I can share it"), and the candidate said yes to. */
export function affirmedUnsafe(rubric: CompiledRubric, postings: Postings, scene: Scene): UnsafeMatch[] {
  const stream = scene.patient;
  return rubric.unsafe.flatMap((statement): UnsafeMatch[] => {
    const windows = statement.say.flatMap((response) => windowsFor(response, postings, stream, AFFIRMED_ACCEPTED)).filter((window) => !overTurns(window, stream));
    for (const window of windows) {
      const yes = asksFor(statement, window, postings, stream) ? saysYesTo(scene, wordsOf(stream, window.first, window.end), topicOf(window.response)) : null;
      if (yes !== null && (yes.toTheLast !== true || inOneSentence(stream, window.first, window.end - 1))) return [unsafeMatch(statement, window, stream, yes)];
    }
    for (const window of fitting(statement, windows, postings, stream)) {
      const yes = isStated(statement, window, postings, stream) && !tellsMuch(window, stream) ? confirms(window, scene) : null;
      if (yes !== null) return [unsafeMatch(statement, window, stream, yes)];
    }
    return [];
  });
}

/** Whether the patient asks whether it is so. */
function asksFor(statement: CompiledStatement, window: Window, postings: Postings, stream: Stream): boolean {
  if (askedShare(stream, window).asked < 0.5 || !mustHolds(statement.must, postings, stream, window) || readPolarity(stream, window, new Set()) !== "agrees") return false;
  return notWithHolds(othersNotWith(statement, window.response), postings, stream, window) && saysAll(window) && saysChosen(window, postings);
}

/** The candidate's yes to what the patient has understood so; none where either takes it back. */
function confirms(window: Window, scene: Scene): Yes | null {
  const { patient } = scene;
  const topic = topicOf(window.response);
  if (takenBackBehind(patient, window.end, topic) !== null) return null;
  const yes = yesWithoutCorrection(scene, wordsOf(patient, window.first, window.end), topic);
  // "Yeah" to what the patient tells may only say that one is listening; to what was understood it says yes.
  return yes !== null && (yes.kind === "confirms" || concludes(window, patient)) ? yes : null;
}

/** Nobody says yes to words of two turns. */
const overTurns = ({ first, end }: Window, { turnOf }: Stream) => turnOf[first] !== turnOf[end - 1];

/** Who tells back more than so many words is praised for all of it, whatever was in it (scoring/teach-back.ts lists that). */
const LONGEST_STATEMENT = 30;

function tellsMuch({ first }: Window, { turnOf }: Stream): boolean {
  return turnOf.lastIndexOf(turnOf[first]!) - turnOf.indexOf(turnOf[first]!) >= LONGEST_STATEMENT;
}

/** "So I can share it", "then I just stop it": what the patient has understood, said to be confirmed. */
function concludes({ first, end }: Window, stream: Stream): boolean {
  for (let place = end - 1; place >= 0 && inOneSentence(stream, place, first) && stream.turnOf[place] === stream.turnOf[first] && first - place < CONCLUSION_REACH; place -= 1) if (/^(so|then)$/.test(stream.tokens[place]!.text)) return true;
  return false;
}

/** So far before what was understood stands the "so" that says it was. */
const CONCLUSION_REACH = 6;

/** @param denials of the statement, in the same stream. */
export function takenBack(window: Window, denials: readonly Window[], stream: Stream): Pick<UnsafeMatch, "correctedBy"> {
  const denial = denials.find((candidate) => candidate.first >= window.end) ?? takenBackBehind(stream, window.end, topicOf(window.response));
  return denial === null ? {} : { correctedBy: wordsOf(stream, denial.first, denial.end) };
}

/** Whether a word of it may have been mis-heard. */
function hangsOnHearing(window: Window, stream: Stream): boolean {
  return window.aligned.some(({ hit }) => hit.quality < SURE_HEARING) || rangeHas(window, stream.doubtful);
}

function rangeHas(window: Window, places: ReadonlySet<number>): boolean {
  for (let place = window.first; place < window.end; place += 1) if (places.has(place)) return true;
  return false;
}
