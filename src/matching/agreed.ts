import { wordWeight } from "../language/lexicon.ts";
import { meets } from "../station/span.ts";
import { turnAt } from "../station/turns.ts";
import type { Turn, WordSpan } from "../station/types.ts";
import { answeredStream, isAnswers, lastSentence, toldToThem, type PlacedPassage } from "./answered.ts";
import type { CompiledElement, CompiledRubric } from "./compile.ts";
import { candidateEarning } from "./earning.ts";
import { asks, reactionTo, saysYesTo, tokensIn, waitsForYes, yesWithoutCorrection, type Scene } from "./elicitation.ts";
import { HELD_LIKELY } from "./held-likelihood.ts";
import { ofLikeliestItem } from "./likeliest-item.ts";
import type { Passage } from "./passages.ts";
import { postingsOf } from "./postings.ts";
import { wordsOf, type Stream } from "./stream.ts";
import { topicOf } from "./taken-back.ts";
import type { UnsafeMatch } from "./types.ts";

/** Who tells more than so many words is told yes to all of it, whatever was in it (scoring/teach-back.ts lists that). */
const LONGEST_SAID = 30;
/** "Okay, thanks" says nothing that a yes could make wrong. */
const FEWEST_SAID = 3;

/** A turn of the patient's that the candidate says yes to, and what it earns and states as if the candidate had told it. */
export interface AgreedTurn {
  turn: Turn;
  stream: Stream;
  earned: ReturnType<typeof candidateEarning>;
}

export function agreedTurns(scene: Scene, rubric: CompiledRubric): AgreedTurn[] {
  return scene.turns.flatMap((turn, place): AgreedTurn[] => {
    if (turn.role !== "patient" || scene.turns[place + 1]?.role !== "candidate" || !isAgreed(scene, turn)) return [];
    const stream = toldToThem(scene.station, turn);
    return stream.tokens.length === 0 ? [] : [{ turn, stream, earned: candidateEarning(rubric, postingsOf(stream, rubric), stream) }];
  });
}

/** What the patient has wrong and the candidate says yes to ("and if it says four I can drive?" "Yes, off you go"). */
export function agreedWrong(scene: Scene, rubric: CompiledRubric, agreed: readonly AgreedTurn[]): { wrong: PlacedPassage[]; unsafe: UnsafeMatch[] } {
  const wrong: PlacedPassage[] = [];
  const unsafe: UnsafeMatch[] = [];
  agreed.forEach(({ turn, stream, earned }) => {
    if (turn.end - turn.first < FEWEST_SAID) return;
    const right = earned.kept.filter(({ verdict }) => verdict === "right").map(({ first, end }) => wordsOf(stream, first, end));
    const stated = earned.unsafe.filter(({ correctedBy, span }) => correctedBy === undefined && !right.some((other) => meets(other, span)));
    wrong.push(...ofOneThing(wrongTold(scene, turn, earned.kept), stated, stream).map((passage) => ({ passage, stream })));
    unsafe.push(...unsafeTold(scene, turn, stated, rubric));
  });
  return { wrong, unsafe };
}

/** Of passages that a turn of the patient's takes part in those that are wrong, and that the candidate's yes is to. */
export function wrongTold(scene: Scene, turn: WordSpan, passages: readonly Passage[]): Passage[] {
  return passages.filter((passage) => passage.element.kind === "tell" && isSurelyWrong(passage) && saysYesTo(scene, turn, topicOf(passage.window.response)) !== null);
}

/** Of unsafe statements those that the candidate's yes is to, with that yes as their evidence. */
export function unsafeTold(scene: Scene, turn: WordSpan, stated: readonly UnsafeMatch[], rubric: CompiledRubric): UnsafeMatch[] {
  return stated.flatMap((match) => {
    const response = rubric.unsafe.find(({ statement }) => statement === match.statement)?.say.find(({ text }) => text === match.response);
    const yes = saysYesTo(scene, turn, response === undefined ? NOTHING : topicOf(response));
    return yes === null ? [] : [{ ...match, span: yes.span }];
  });
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
  const { first, end } = tokensIn(scene.patient, turn);
  const said = scene.patient.tokens.slice(first, end).map(({ text }) => text);
  // "A second or two?" is one thing.
  const offersTwo = said.some((text, place) => text === "or" && !scene.patient.quantities.some((mention) => mention.first < first + place && first + place < mention.end));
  return (!offersTwo || takesBoth(scene, turn)) && (asked || said.some((text) => OF_ONESELF.test(text)));
}

const OF_ONESELF = /^(i|me|we|so|then)$/;

/** "The council or you?" "Either of those." */
function takesBoth({ candidate, turns }: Scene, said: WordSpan): boolean {
  const reply = turns[turnAt(turns, said) + 1];
  if (reply === undefined) return false;
  const { first, end } = tokensIn(candidate, reply);
  return candidate.tokens.slice(first, Math.min(end, first + BOTH_WITHIN)).some(({ text }) => /^(either|both)$/.test(text));
}

const BOTH_WITHIN = 4;

/** The opposite of what is right must be said so nearly whole: "could I have two on Monday and two later" is no "take two next Monday". */
const OPPOSITE = 0.9;

export function isSurelyWrong({ verdict, takenBack, likelihood, coverage }: Passage): boolean {
  return verdict === "wrong" && takenBack !== true && (likelihood === undefined ? coverage >= OPPOSITE : likelihood >= HELD_LIKELY);
}

/** The one thing that a yes is said to: what shares its words with an unsafe statement where there is one. */
function ofOneThing(passages: readonly Passage[], stated: readonly UnsafeMatch[], stream: Stream): Passage[] {
  return ofLikeliestItem(stated.length === 0 ? passages : passages.filter(({ first, end }) => stated.some(({ span }) => meets(span, wordsOf(stream, first, end)))));
}

const NOTHING: ReadonlySet<string> = new Set();

/** So long is an answer that leaves out what was asked. */
const LONGEST_ANSWER = 12;

/**
 * "How long will you hold it?" "Ten." "Spot on.": what the patient's answer says together with the candidate's question,
 * where the candidate confirms it.
 * @param missing elements that nobody said outright.
 * @param asked what the candidate asks for by the rubric ("have you used one before?"): its answers are the patient's own.
 */
export function agreedAnswers(scene: Scene, rubric: CompiledRubric, missing: ReadonlySet<CompiledElement>, asked: readonly WordSpan[]): PlacedPassage[] {
  return scene.turns.flatMap((turn, place): PlacedPassage[] => {
    const question = scene.turns[place - 1];
    if (turn.role !== "patient" || question?.role !== "candidate" || scene.turns[place + 1]?.role !== "candidate" || turn.end - turn.first > LONGEST_ANSWER) return [];
    const reaction = reactionTo(scene, turn)?.kind;
    const yes = saysYesTo(scene, turn, NOTHING);
    if (reaction === "corrects" || (reaction !== "confirms" && yes?.kind !== "confirms") || !asks(scene.candidate, question)) return [];
    if (yes === null && !saysAgain(scene, turn)) return [];
    const sentence = lastSentence(scene.station, question);
    if (asked.some((span) => meets(span, sentence))) return [];
    const stream = answeredStream(scene.station, sentence, turn);
    const { kept } = candidateEarning(rubric, postingsOf(stream, rubric), stream);
    return kept.filter((passage) => missing.has(passage.element) && isSurelySaid(passage) && isAnswers(passage, stream, turn)).map((passage) => ({ passage, stream }));
  });
}

/** So soon in the reply the answer is taken up: "yes, Thursday, so not on the day of the other". */
const TAKEN_UP_WITHIN = 4;

/** Whether the reply, which says yes, says again what the patient answered. */
function saysAgain({ patient, candidate, turns }: Scene, answer: WordSpan): boolean {
  const said = tokensIn(patient, answer);
  const words = new Set(patient.tokens.slice(said.first, said.end).filter(({ stem }) => wordWeight(stem) >= 1).map(({ stem }) => stem));
  const reply = turns[turnAt(turns, answer) + 1];
  if (reply === undefined || words.size === 0) return false;
  const { first, end } = tokensIn(candidate, reply);
  return candidate.tokens.slice(first, Math.min(end, first + TAKEN_UP_WITHIN)).some((token, place, opening) => words.has(token.stem) && !opening.slice(0, place).some(({ text }) => /^(no|not|never)$/.test(text)));
}

/** What fits less likely fits by chance: nothing is around it but the question. */
export const SURELY_SAID = 0.4;

function isSurelySaid(passage: Passage): boolean {
  if (passage.verdict === "right") return (passage.likelihood ?? 0) >= SURELY_SAID;
  return passage.quantity === undefined ? isSurelyWrong(passage) : passage.verdict === "wrong";
}
