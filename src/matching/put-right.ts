import { compareQuantity } from "../language/quantity-compare.ts";
import { ONE, type ExpectedQuantity, type QuantityMention } from "../language/quantity-mention.ts";
import { speechPhrases } from "../language/speech-phrases.ts";
import { turnAt } from "../station/turns.ts";
import type { Turn, WordSpan } from "../station/types.ts";
import { answeredStream, isAnswers, lastSentence, toldToThem, type PlacedPassage } from "./answered.ts";
import type { CompiledRubric } from "./compile.ts";
import { candidateEarning } from "./earning.ts";
import { affirmsTheDenied } from "./denied-after-all.ts";
import { asks, tokensIn, type Scene } from "./elicitation.ts";
import { ofLikeliestWrong } from "./likeliest-item.ts";
import { groupPresent } from "./must-words.ts";
import type { Passage } from "./passages.ts";
import { postingsOf, type Postings } from "./postings.ts";
import { narrows, saysNoTo } from "./says-no.ts";
import type { Stream } from "./stream.ts";

/** A longer turn tells of much, and nobody says no to all of it. Words. */
const LONGEST_PROPOSAL = 30;
const ASKS_NO_LEAVE = speechPhrases("asks_no_leave");

/** What was put right: the passage in the patient's words, those words, and the candidate's. */
export interface PutRight extends PlacedPassage {
  proposed: WordSpan;
  reply: WordSpan;
}

/**
 * "I can use the same one all week?" "No, a new one each time.": what the patient has wrong and the candidate says no to
 * is told rightly. Where a number is wrong, the right one must be said ("is it two?" "no, just the one"). What the rubric
 * asks for by name must be spoken of: a no to "do I lie down till it's over?" calls no ambulance.
 * @param said the candidate's words.
 */
export function putRight(scene: Scene, rubric: CompiledRubric, said: Postings): PutRight[] {
  return scene.turns.flatMap((turn, place): PutRight[] => {
    if (turn.role !== "patient" || turn.end - turn.first > LONGEST_PROPOSAL) return [];
    const after = affirmsDenied(scene, turn);
    const reply = after ?? saysNoTo(scene, turn) ?? narrows(scene, turn);
    if (reply === null) return [];
    for (const { stream, isProposed } of proposals(scene, turn, place)) {
      if (stream.tokens.length === 0 || ASKS_NO_LEAVE.find(stream.tokens).length > 0 || offersAnother(stream)) return [];
      const asked = postingsOf(stream, rubric);
      const { kept } = candidateEarning(rubric, asked, stream);
      const answer = tokensIn(scene.candidate, reply);
      const named = ({ element: { must } }: Passage) => must.length === 0 || must.some((group) => groupPresent(group, asked, 0, stream.tokens.length) || groupPresent(group, said, answer.first, answer.end));
      const numbers = numbersIn(scene.candidate, answer);
      const isPutRight = (passage: Passage) => (passage.quantity === undefined ? isWrong(passage, stream, after !== null) : passage.verdict === "wrong" && saysNumber(numbers, passage.element.quantity!));
      const wrong = kept.filter((passage) => isProposed(passage) && named(passage) && isPutRight(passage));
      if (wrong.length > 0) return ofLikeliestWrong(wrong).map(({ reason: _, ...passage }) => ({ passage: { ...passage, verdict: "right" }, stream, proposed: { first: turn.first, end: turn.end }, reply }));
    }
    return [];
  });
}

interface Proposal {
  stream: Stream;
  /** Whether enough of a passage is the patient's. */
  isProposed: (passage: Passage) => boolean;
}

/** What the patient proposes; and where it answers the candidate, together with that question ("and on a good day?" "I'd leave it off"). */
function proposals({ station, turns, candidate }: Scene, turn: Turn, place: number): Proposal[] {
  const own: Proposal = { stream: toldToThem(station, turn), isProposed: () => true };
  const before = turns[place - 1];
  if (before?.role !== "candidate" || !asks(candidate, before)) return [own];
  const stream = answeredStream(station, lastSentence(station, before), turn);
  return [own, { stream, isProposed: (passage) => isAnswers(passage, stream, turn) }];
}

/** The opening words of a reply that affirms what the patient denied ("I needn't ring, need I?" "You do."); null where it does not. */
function affirmsDenied({ patient, candidate, turns }: Scene, turn: Turn): WordSpan | null {
  const reply = turns[turnAt(turns, turn) + 1];
  if (reply?.role !== "candidate") return null;
  const { first: from, end: to } = tokensIn(patient, turn);
  const { first, end } = tokensIn(candidate, reply);
  const reach = Math.min(end, first + OPENING);
  return affirmsTheDenied(patient, from, to, candidate.tokens, first, reach) ? { first: reply.first, end: candidate.tokens[reach - 1]!.word + 1 } : null;
}

/** So many words of a reply take up what was denied. */
const OPENING = 8;

/** "Do I stop it or carry on?"; "so I stop it, or?" only asks. */
const offersAnother = ({ tokens }: Stream): boolean => tokens.slice(1, -1).some(({ text }) => text === "or");

/** What the candidate says no to was wrong: that it was said need not be as sure as where somebody is held to it. */
const LIKELY = 0.4;

/** Of a sign it is not told what it is by saying what not to do about it, and a plain no to "I needn't" may mean either. @param isAffirmed whether the reply affirms what is denied. */
function isWrong({ verdict, takenBack, likelihood = 1, element, first, end }: Passage, { polarity }: Stream, isAffirmed: boolean): boolean {
  return verdict === "wrong" && takenBack !== true && likelihood >= LIKELY && !element.redFlag && polarity.slice(first, end).some(({ negated }) => negated) === isAffirmed;
}

/** Numbers that a reply states, "just the one" among them; those it denies ("not two") left out. */
function numbersIn({ tokens, quantities, polarity }: Stream, { first, end }: { first: number; end: number }): QuantityMention[] {
  const said = quantities.filter((mention) => mention.first >= first && mention.first < end && !polarity[mention.first]!.negated);
  if (said.length > 0) return said;
  const one = tokens.findIndex(({ text }, place) => place > first && place < end && text === "one" && /^(just|only|the|single)$/.test(tokens[place - 1]!.text) && !polarity[place]!.negated);
  return one < 0 ? [] : [{ ...ONE, first: one, end: one + 1 }];
}

/** Whether numbers are those expected, all that can be; a bare one counts what the question was about. */
function saysNumber(numbers: readonly QuantityMention[], expected: ExpectedQuantity): boolean {
  const readings = numbers.map((mention) => compareQuantity(mention.unit === null ? { ...mention, unit: expected.unit, firm: true } : mention, expected));
  return readings.includes("right") && !readings.includes("wrong");
}
