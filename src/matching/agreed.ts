import { readUnit } from "../language/unit-words.ts";
import type { Unit } from "../language/units.ts";
import { beginsIn, meets } from "../station/span.ts";
import type { Sentence, Station, WordSpan } from "../station/types.ts";
import type { CompiledElement, CompiledRubric } from "./compile.ts";
import { candidateEarning } from "./earning.ts";
import { asks, reactionTo, saysYesTo, waitsForYes, yesWithoutCorrection, type Scene } from "./elicitation.ts";
import { HELD_LIKELY } from "./held-likelihood.ts";
import type { Passage } from "./passages.ts";
import { postingsOf } from "./postings.ts";
import { streamOf, wordsOf, type Stream } from "./stream.ts";
import { topicOf } from "./taken-back.ts";
import type { UnsafeMatch } from "./types.ts";

/** A passage with the stream that it stands in. */
export interface AgreedPassage {
  passage: Passage;
  stream: Stream;
}

/** Who tells more than so many words is told yes to all of it, whatever was in it (scoring/teach-back.ts lists that). */
const LONGEST_SAID = 30;
/** "Okay, thanks" says nothing that a yes could make wrong. */
const FEWEST_SAID = 3;

/**
 * What the patient has wrong and the candidate says yes to ("and if it says four I can drive?" "Yes, off you go"): read as
 * if the candidate had told it.
 */
export function agreedWrong(scene: Scene, rubric: CompiledRubric): { wrong: AgreedPassage[]; unsafe: UnsafeMatch[] } {
  const wrong: AgreedPassage[] = [];
  const unsafe: UnsafeMatch[] = [];
  scene.turns.forEach((turn, place) => {
    if (turn.role !== "patient" || scene.turns[place + 1]?.role !== "candidate") return;
    if (turn.end - turn.first < FEWEST_SAID || !isAgreed(scene, turn)) return;
    const stream = toldStream(scene.station, turn, turn.end);
    if (stream.tokens.length === 0) return;
    const earned = candidateEarning(rubric, postingsOf(stream, rubric), stream);
    const right = earned.kept.filter(({ verdict }) => verdict === "right").map(({ first, end }) => wordsOf(stream, first, end));
    const stated = earned.unsafe.filter(({ correctedBy, span }) => correctedBy === undefined && !right.some((other) => meets(other, span)));
    wrong.push(...ofOneThing(earned.kept.filter((passage) => isSurelyWrong(passage) && saysYesTo(scene, turn, topicOf(passage.window.response)) !== null), stated, stream).map((passage) => ({ passage, stream })));
    for (const match of stated) {
      const response = rubric.unsafe.find(({ statement }) => statement === match.statement)?.say.find(({ text }) => text === match.response);
      const yes = saysYesTo(scene, turn, response === undefined ? NOTHING : topicOf(response));
      if (yes !== null) unsafe.push({ ...match, span: yes.span });
    }
  });
  return { wrong, unsafe };
}

/**
 * Whether the candidate says yes to a turn of the patient's: "yeah" to what is told may only say that one is listening,
 * "perfect" is said to what the speaker does or has understood, and nobody says yes to "this or that?".
 */
export function isAgreed(scene: Scene, turn: WordSpan): boolean {
  if (turn.end - turn.first > LONGEST_SAID) return false;
  const asked = waitsForYes(scene.patient, turn);
  const yes = asked ? saysYesTo(scene, turn, NOTHING) : yesWithoutCorrection(scene, turn, NOTHING);
  if (yes === null || (!asked && yes.kind === "yes" && yes.sure !== true)) return false;
  const said = scene.patient.tokens.filter(({ word }) => word >= turn.first && word < turn.end).map(({ text }) => text);
  return !said.includes("or") && (asked || said.some((text) => OF_ONESELF.test(text)));
}

const OF_ONESELF = /^(i|we|so|then)$/;

/** The opposite of what is right must be said so nearly whole: "could I have two on Monday and two later" is no "take two next Monday". */
const OPPOSITE = 0.9;

export function isSurelyWrong({ verdict, takenBack, likelihood, coverage }: Passage): boolean {
  return verdict === "wrong" && takenBack !== true && (likelihood === undefined ? coverage >= OPPOSITE : likelihood >= HELD_LIKELY);
}

/** A yes is said to one thing, and its words fit others by chance: the item of the likeliest, and what shares its words with an unsafe statement where there is one. */
function ofOneThing(passages: readonly Passage[], stated: readonly UnsafeMatch[], stream: Stream): Passage[] {
  const likely = stated.length === 0 ? passages : passages.filter(({ first, end }) => stated.some(({ span }) => meets(span, wordsOf(stream, first, end))));
  const most = Math.max(...likely.map(({ likelihood = 1 }) => likelihood));
  const items = new Set(likely.filter(({ likelihood = 1 }) => likelihood === most).map(({ element }) => element.item));
  return likely.filter(({ element }) => items.has(element.item));
}

const NOTHING: ReadonlySet<string> = new Set();

/** All from the start of a span to a word, as one stretch that the candidate tells. @param through words behind which no sentence ends. */
function toldStream(station: Station, { first: from }: WordSpan, end: number, through?: ReadonlySet<number>): Stream {
  const sentences = station.sentences.flatMap((sentence): Sentence[] => {
    const first = Math.max(sentence.first, from);
    const stop = Math.min(sentence.end, end);
    return first < stop ? [{ ...sentence, first, end: stop, role: "candidate" }] : [];
  });
  const stream = streamOf({ ...station, sentences }, ["candidate"], { joined: true, ...(through !== undefined && { through }) });
  stream.acts.fill("tell");
  return stream;
}

/** A question and its answer as one sentence; a bare number counts what was asked for. */
export function answeredStream(station: Station, question: WordSpan, answer: WordSpan): Stream {
  const stream = toldStream(station, question, answer.end, new Set([question.end - 1]));
  const unit = unitAskedFor(stream, question.end);
  if (unit === null) return stream;
  return { ...stream, quantities: stream.quantities.map((mention) => (mention.unit === null && stream.tokens[mention.first]!.word >= answer.first ? { ...mention, unit, firm: true } : mention)) };
}

/** "How many units": what a bare number in the answer counts. */
function unitAskedFor({ tokens }: Stream, end: number): Unit | null {
  for (let place = 0; place + 2 < tokens.length && tokens[place]!.word < end; place += 1) {
    if (tokens[place]!.text !== "how" || tokens[place + 1]!.text !== "many") continue;
    const unit = readUnit(tokens, place + 2, false);
    if (unit !== null && unit.factor === 1) return unit.unit;
  }
  return null;
}

/** So long is an answer that leaves out what was asked. */
const LONGEST_ANSWER = 12;
/** So much of the question is taken with it. */
const LONGEST_QUESTION = 30;
/** So much of what is found must be the answer's. */
const OWN_SHARE = 0.25;

/**
 * "How long will you hold it?" "Ten." "Spot on.": what the patient's answer says together with the candidate's question,
 * where the candidate confirms it.
 * @param missing elements that nobody said outright.
 * @param asked what the candidate asks for by the rubric ("have you used one before?"): its answers are the patient's own.
 */
export function agreedAnswers(scene: Scene, rubric: CompiledRubric, missing: ReadonlySet<CompiledElement>, asked: readonly WordSpan[]): AgreedPassage[] {
  return scene.turns.flatMap((turn, place): AgreedPassage[] => {
    const question = scene.turns[place - 1];
    if (turn.role !== "patient" || question?.role !== "candidate" || scene.turns[place + 1]?.role !== "candidate" || turn.end - turn.first > LONGEST_ANSWER) return [];
    if (reactionTo(scene, turn)?.kind !== "confirms" || !asks(scene.candidate, question)) return [];
    if (saysYesTo(scene, turn, NOTHING) === null) return [];
    const sentence = lastSentence(scene.station, question);
    if (asked.some((span) => meets(span, sentence))) return [];
    const stream = answeredStream(scene.station, sentence, turn);
    const { kept } = candidateEarning(rubric, postingsOf(stream, rubric), stream);
    return kept.filter((passage) => missing.has(passage.element) && isSurelySaid(passage) && isAnswers(passage, stream, turn)).map((passage) => ({ passage, stream }));
  });
}

/** What fits less likely fits by chance: nothing is around it but the question. */
const SURELY_SAID = 0.4;

function isSurelySaid(passage: Passage): boolean {
  if (passage.verdict === "right") return (passage.likelihood ?? 0) >= SURELY_SAID;
  return passage.quantity === undefined ? isSurelyWrong(passage) : passage.verdict === "wrong";
}

/** The sentence that a question ends in. */
export function lastSentence(station: Station, question: WordSpan): WordSpan {
  const last = station.sentences.filter((sentence) => beginsIn(sentence, question)).at(-1);
  return { first: Math.max(last?.first ?? question.first, question.end - LONGEST_QUESTION), end: question.end };
}

/** Whether the answer says enough of it: its number, or a share of its words. */
export function isAnswers({ window, quantity }: Passage, stream: Stream, answer: WordSpan): boolean {
  const inAnswer = (token: number) => stream.tokens[token]!.word >= answer.first;
  if (quantity !== undefined) return inAnswer(quantity.first);
  const weightOf = (own: boolean) => window.aligned.reduce((sum, { term, hit }) => sum + (!own || inAnswer(hit.first) ? window.response.terms[term]!.weight : 0), 0);
  return weightOf(true) >= OWN_SHARE * weightOf(false) && weightOf(true) > 0;
}
