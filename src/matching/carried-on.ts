import type { WordSpan } from "../station/types.ts";
import { isAgreed, unsafeTold, wrongTold } from "./agreed.ts";
import { lastSentence, OWN_SHARE, shareOf, toldToThem, type PlacedPassage } from "./answered.ts";
import type { CompiledRubric } from "./compile.ts";
import { candidateEarning } from "./earning.ts";
import { tokensIn, waitsForYes, type Scene } from "./elicitation.ts";
import { ofLikeliestItem } from "./likeliest-item.ts";
import type { Passage } from "./passages.ts";
import { postingsOf } from "./postings.ts";
import { inOneSentence, type Stream } from "./stream.ts";
import type { UnsafeMatch } from "./types.ts";

/*
 * "Then hold your breath." "A second or two?" "Yeah, that's plenty.": what the patient asks leaves out what the candidate
 * has just said, and the candidate's yes is to both together.
 */

/** More words than these leave nothing out. */
const LONGEST_ASKED = 10;

/** What the candidate told together with what the patient asks of it and is told to be so, where that is wrong. */
export function carriedOn(scene: Scene, rubric: CompiledRubric): { wrong: PlacedPassage[]; unsafe: UnsafeMatch[] } {
  const wrong: PlacedPassage[] = [];
  const unsafe: UnsafeMatch[] = [];
  scene.turns.forEach((turn, place) => {
    const told = toldBefore(scene, place);
    if (told === null || !leavesOut(scene.patient, turn) || !isAgreed(scene, turn)) return;
    const stream = toldToThem(scene.station, { first: told.first, end: turn.end }, new Set([told.end - 1]));
    // Its evidence is what the patient asked.
    const asked = stream.tokens.findIndex(({ word }) => word >= turn.first);
    const inQuestion = (token: number) => token >= asked;
    const ofBoth = ({ window }: Passage) => {
      const share = shareOf(window, inQuestion);
      return share >= OWN_SHARE && share <= 1 - OWN_SHARE;
    };
    const earned = candidateEarning(rubric, postingsOf(stream, rubric), stream);
    wrong.push(...ofLikeliestItem(wrongTold(scene, turn, earned.kept.filter(ofBoth))).map((passage) => ({ passage: { ...passage, first: Math.max(passage.first, asked) }, stream })));
    unsafe.push(...unsafeTold(scene, turn, earned.unsafe.filter(({ correctedBy, span }) => correctedBy === undefined && span.first < turn.first && span.end > turn.first), rubric));
  });
  return { wrong, unsafe };
}

const SUBJECT = /^(i|we|he|she|they)$/;
const ANSWERS = /^(yes|yeah|yep|no|nope|okay|ok|right|sure|fine|oh|ah)$/;

/** Whether a turn leaves out what was said before it: a short question, or a few words without a subject ("down the sink"), that answer nothing. */
function leavesOut(patient: Stream, turn: WordSpan): boolean {
  const { first, end } = tokensIn(patient, turn);
  if (first === end || end - first > LONGEST_ASKED || !inOneSentence(patient, first, end - 1) || ANSWERS.test(patient.tokens[first]!.text)) return false;
  return waitsForYes(patient, turn) || !patient.tokens.slice(first, end).some(({ text }) => SUBJECT.test(text));
}

/** The last sentence that the candidate told before a patient's turn; null where that is no patient's, or a question. */
function toldBefore(scene: Scene, place: number): WordSpan | null {
  const [before, turn] = [scene.turns[place - 1], scene.turns[place]];
  if (turn?.role !== "patient" || before?.role !== "candidate" || scene.turns[place + 1]?.role !== "candidate") return null;
  const told = lastSentence(scene.station, before);
  return isTold(scene.candidate, told) ? told : null;
}

function isTold(stream: Stream, told: WordSpan): boolean {
  const { first, end } = tokensIn(stream, told);
  return first < end && stream.acts.slice(first, end).every((act) => act === "tell");
}
