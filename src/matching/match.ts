import { turnAt } from "../station/turns.ts";
import type { Station, WordSpan } from "../station/types.ts";
import { agreedAnswers, agreedWrong, isAgreed } from "./agreed.ts";
import { patientQuestions } from "./asked.ts";
import { assign, withoutOthersWords } from "./assignment.ts";
import { claimsOf } from "./claims.ts";
import type { CompiledElement, CompiledRubric } from "./compile.ts";
import { confidenceOf, heardBetween, heardOf, signsOf } from "./confidence.ts";
import { denialBefore } from "./denial-span.ts";
import { candidateEarning, leftBack } from "./earning.ts";
import { afterQuestions, asks, confirmed, elicitationOf, sceneOf, yesWithoutCorrection, type Scene } from "./elicitation.ts";
import { counts, withLikelihood } from "./likelihood.ts";
import { openReplies } from "./open-replies.ts";
import { ACCEPTED, isOpen, LEAST_COVERAGE, neededFor, passagesFor, WRONG_ACCEPTED, type Passage } from "./passages.ts";
import { readPolarity } from "./polarity-gate.ts";
import { postingsOf, type Postings } from "./postings.ts";
import { replyPassages, wrongReplies } from "./replies.ts";
import type { Response } from "./response.ts";
import { saidClauses } from "./said.ts";
import { isShown } from "./showing.ts";
import { clauseSpan, streamOf, wordsOf, type Stream } from "./stream.ts";
import { topicOf } from "./taken-back.ts";
import { teachBackMatches, tellingsBack } from "./teach-back.ts";
import type { Attempt, Match, Matches } from "./types.ts";
import { affirmedUnsafe } from "./unsafe.ts";
import { windowsFor, withoutOverlap } from "./windows.ts";
import { withinReach } from "./within-reach.ts";

/** So much of a response makes a cue: it is told from other talk, not from other cues. */
const CUE_ACCEPTED = 0.6;
/** A half-heard or shown passage must carry so much of the response to be about the element at all. */
const HALF_SAID = 0.45;
/** Something unheard, or a "like this", this near to the passage belongs to it. */
const NEARBY = 8;

/** Where everything the rubric asks for was said in one station, and how sure that is. Pure. */
export function matchStation(station: Station, rubric: CompiledRubric): Matches {
  const streams = { candidate: streamOf(station, ["candidate"]), patient: streamOf(station, ["patient"]), examiner: streamOf(station, ["examiner"]) };
  const said = postingsOf(streams.candidate, rubric);
  const heard = postingsOf(streams.patient, rubric);

  const { questions, asked, fits } = patientQuestions(rubric, heard, streams.patient);
  const scene = sceneOf(station, streams, questions);
  const { all, unsafe: stated, kept, left } = candidateEarning(rubric, said, streams.candidate);
  const plain = kept.map((passage) => matchOf(passage, streams.candidate, scene, rubric));
  const outright = new Set(kept.map(({ element }) => element));
  const replies = replyPassages(station, scene.turns, (turn) => asks(scene.patient, turn), rubric, rubric.elements.filter((element) => element.kind === "tell" && !outright.has(element))).map(({ passage, stream }) => matchOf(passage, stream, scene, rubric));
  const telling = new Set(rubric.elements.filter(({ kind }) => kind === "tell").map(({ item }) => item));
  const found = afterQuestions(scene, [...plain, ...replies], asked, ({ item }) => telling.has(item));
  const openly = openReplies(scene, rubric);
  found.push(...openly.wrong.filter(({ passage: { element } }) => !found.some((match) => match.item === element.item && match.element === element.element)).map(({ passage, stream }) => matchOf(passage, stream, scene, rubric)));
  const agreed = agreedWrong(scene, rubric);
  const patient = withAgreed(patientMatches(rubric, heard, scene), agreed.wrong.map(({ passage, stream }) => ({ ...matchOf(passage, stream, scene, rubric), affirmed: true })));
  const asking = new Set(rubric.elements.filter(({ kind }) => kind === "ask").map(({ item }) => item));
  const known = new Set(found.map(({ item, element }) => `${item}/${element}`));
  found.push(...agreedAnswers(scene, rubric, new Set(rubric.elements.filter(({ kind, item, element }) => kind === "tell" && !known.has(`${item}/${element}`))), found.filter(({ item }) => asking.has(item)).map(({ span }) => span)).map(({ passage, stream }): Match => ({ ...matchOf(passage, stream, scene, rubric), elicitation: "confirmed" })));
  const tellings = tellingsBack(scene, found, patient, rubric);
  found.push(...teachBackMatches(tellings, found, rubric));
  const doubtful = doubtfulMatches(all, found, streams.candidate);

  const unsafe = [...stated];
  for (const match of [...affirmedUnsafe(rubric, heard, scene), ...agreed.unsafe, ...openly.unsafe]) if (!unsafe.some((other) => other.statement === match.statement)) unsafe.push(match);
  const answers = [...answerMatches(rubric, said, streams.candidate), ...wrongReplies(station, scene.turns, questions, rubric)];
  const nearest = nearestAttempts(rubric, all.map((passage) => leftBack(passage, left)), found, streams.candidate);
  return {
    elements: [...found, ...doubtful, ...confirmed(scene, patient), ...affirmedWrong(scene, patient, found)].sort((a, b) => a.span.first - b.span.first),
    unsafe,
    questions,
    asked,
    fits,
    cues: rubric.cues.flatMap(({ item, says }) => windowsOf(says, heard, streams.patient, CUE_ACCEPTED).map((window) => ({ item, span: wordsOf(streams.patient, window.first, window.end) }))),
    patient,
    tellings,
    nearest,
    claims: claimsOf(rubric, streams.candidate, [...found, ...doubtful, ...unsafe, ...answers], nearest),
    said: saidClauses(streams.candidate, rubric),
    heard: saidClauses(streams.patient, rubric),
    answers,
  };
}

function matchOf(passage: Passage, stream: Stream, scene: Scene, rubric: CompiledRubric): Match {
  const span = spanWithNumber(passage, stream);
  const { element } = passage;
  const questionsFor = new Set(rubric.questions.filter((question) => question.answeredBy.includes(element.item)).map(({ question }) => question));
  return { ...plainMatch(passage, span, stream), ...elicitationOf(scene, element, questionsFor, span) };
}

/** With the number that makes it right, where that stands beside it: "your dose was ten units, from tonight it's twelve". */
function spanWithNumber({ first, end, verdict, quantity }: Passage, stream: Stream): WordSpan {
  if (verdict !== "right" || quantity === undefined) return wordsOf(stream, first, end);
  return wordsOf(stream, Math.min(first, quantity.first), Math.max(end, quantity.end));
}

function plainMatch(passage: Passage, span: WordSpan, stream: Stream): Match {
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

/** Elements nobody said outright, but that were half heard, shown, or hang on a sound-alike. */
function doubtfulMatches(all: readonly Passage[], found: readonly Match[], stream: Stream): Match[] {
  const done = new Set(found.map(({ item, element }) => `${item}/${element}`));
  const best = new Map<CompiledElement, Match>();
  for (const passage of all) {
    const { element } = passage;
    // An open passage that fits well was taken by a better owner: nothing about it is in doubt.
    if (done.has(`${element.item}/${element.element}`) || passage.coverage < HALF_SAID || counts(passage)) continue;
    const verdict = doubtOf(passage, stream);
    if (verdict === null || (best.get(element)?.score ?? 0) >= passage.coverage) continue;
    best.set(element, { ...plainMatch({ ...passage, ...verdict }, wordsOf(stream, passage.first, passage.end), stream), ...verdict });
  }
  return [...best.values()];
}

function doubtOf(passage: Passage, stream: Stream): Pick<Match, "verdict" | "reason"> | null {
  const others = passage.closed.filter((gate) => gate !== "sound-alike");
  if (passage.verdict === "unclear" && others.length === 0) return passage.coverage >= neededFor({ ...passage, verdict: "right" }) ? { verdict: "unclear", reason: passage.reason ?? "a sound-alike changes the meaning" } : null;
  // A number or a must-word may be just what was not heard; a denial or a question was heard.
  if (others.some((gate) => gate !== "quantity" && gate !== "must")) return null;
  if (isShown(passage, stream, NEARBY)) return { verdict: "shown", reason: "shown or pointed at, not said" };
  for (let place = passage.first - 1; place <= passage.end; place += 1) {
    if (stream.garbledAfter.has(place)) return { verdict: "unclear", reason: "part of it could not be heard" };
    if (stream.doubtful.has(place) && (!stream.heard.has(place) || perhapsMissing(passage, place))) return { verdict: "unclear", reason: "the recogniser or transcriber doubts these words" };
  }
  return null;
}

/**
 * Whether a word that the recogniser doubts may be what the passage lacks. It must be near enough without it: a recogniser
 * that doubts a whole talk does not make an item of every few words that fit somewhere.
 */
function perhapsMissing(passage: Passage, place: number): boolean {
  if (passage.coverage < neededFor({ ...passage, verdict: "right" })) return false;
  return !passage.window.aligned.some(({ hit }) => hit.first <= place && place < hit.end);
}

function patientMatches(rubric: CompiledRubric, postings: Postings, scene: Scene): Match[] {
  const stream = scene.patient;
  const { elements } = withinReach(rubric, postings);
  const all = withLikelihood(elements.filter(({ kind }) => kind === "tell").flatMap((candidate) => passagesFor(candidate, postings, stream, "patient")), stream, rubric.elements);
  const { kept, lookAlikes } = assign(withoutOthersWords(all.filter(isOpen), all));
  // What one sentence gets wrong may be any of several things: the candidate's correction tells which (scoring/teach-back.ts).
  return [...kept, ...lookAlikes.filter(({ verdict }) => verdict === "wrong")]
    .sort((one, other) => one.first - other.first)
    .flatMap((passage): Match[] => {
      const asked = passage.window.aligned.every(({ hit }) => stream.acts[hit.first] !== "tell");
      const match = plainMatch(passage, wordsOf(stream, passage.first, passage.end), stream);
      if (match.verdict === "wrong" && isConfirmed(scene, passage, match.span, asked)) return [{ ...match, affirmed: true }];
      return asked ? [] : [match];
    });
}

/** With what the patient says wrongly and is told to be right, once for each thing. */
function withAgreed(patient: readonly Match[], agreed: readonly Match[]): Match[] {
  const known = (match: Match) => patient.some((other) => other.affirmed === true && other.item === match.item && other.element === match.element);
  return [...patient, ...agreed.filter((match) => !known(match))];
}

/**
 * What the patient has wrong and the candidate says yes to is told wrongly, unless the candidate tells it rightly
 * somewhere: then it is an error of the patient's that was left (scoring/teach-back.ts).
 */
function affirmedWrong(scene: Scene, patient: readonly Match[], found: readonly Match[]): Match[] {
  const told = new Set(found.filter(({ verdict }) => verdict === "right").map(({ item, element }) => `${item}/${element}`));
  return patient.filter(({ item, element, affirmed, span }) => affirmed === true && !told.has(`${item}/${element}`) && isAgreed(scene, scene.turns[turnAt(scene.turns, span)]!)).map((match) => ({ ...match, elicitation: "confirmed", reason: `the patient's words, told to be right${match.reason === undefined ? "" : `: ${match.reason}`}` }));
}

/** Whether the candidate says yes to what the patient gets wrong: "yeah" to what is told may only say that one is listening. */
function isConfirmed(scene: Scene, { window, first, end }: Passage, span: WordSpan, asked: boolean): boolean {
  const { turnOf } = scene.patient;
  if (turnOf[first] !== turnOf[end - 1]) return false;
  const yes = yesWithoutCorrection(scene, span, topicOf(window.response));
  return yes !== null && (asked || yes.sure === true || yes.kind === "confirms");
}

function windowsOf(responses: readonly Response[], postings: Postings, stream: Stream, least: number) {
  return withoutOverlap(responses.flatMap((response) => windowsFor(response, postings, stream, least)));
}

function answerMatches(rubric: CompiledRubric, postings: Postings, stream: Stream): Matches["answers"] {
  const passages = (question: string, responses: readonly Response[], verdict: "right" | "wrong", least: number) =>
    windowsOf(responses, postings, stream, least)
      .filter((window) => readPolarity(stream, window, new Set()) === "agrees")
      .map((window) => ({ question, verdict, span: wordsOf(stream, window.first, window.end), score: window.coverage }));
  return rubric.questions.flatMap(({ question, answer, incorrect }) => [...passages(question, answer, "right", ACCEPTED), ...passages(question, incorrect, "wrong", WRONG_ACCEPTED)]);
}

/** For each element without a match, what came nearest and what closed: the material of `explain`. */
function nearestAttempts(rubric: CompiledRubric, passages: readonly Passage[], found: readonly Match[], stream: Stream): Attempt[] {
  const done = new Set(found.map(({ item, element: id }) => `${item}/${id}`));
  const best = new Map<string, Passage>();
  for (const passage of passages) {
    const key = `${passage.element.item}/${passage.element.element}`;
    if (done.has(key) || passage.coverage < LEAST_COVERAGE) continue;
    const known = best.get(key);
    if (known === undefined || rank(passage) > rank(known)) best.set(key, passage);
  }
  return rubric.elements.flatMap(({ item, element: id }) => {
    const passage = best.get(`${item}/${id}`);
    return passage === undefined ? [] : [attemptOf(passage, stream)];
  });
}

const rank = (passage: Passage) => passage.coverage - 0.2 * passage.closed.length;

export function attemptOf(passage: Passage, stream: Stream): Attempt {
  const { terms, text } = passage.window.response;
  const foundTerms = new Set(passage.window.aligned.map(({ term }) => term));
  const heard = heardBetween(stream, passage.first, passage.end);
  return {
    item: passage.element.item,
    element: passage.element.element,
    span: wordsOf(stream, passage.first, passage.end),
    score: passage.coverage,
    response: text,
    aligned: passage.window.aligned.map(({ term, hit }) => ({ term: terms[term]!.text, words: wordsOf(stream, hit.first, hit.end) })),
    missing: terms.filter((_, place) => !foundTerms.has(place)).map((term) => term.text),
    closed: passage.closed,
    ...(heard < 1 && { heard }),
  };
}
