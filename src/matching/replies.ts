import { speechPhrases } from "../language/speech-phrases.ts";
import { turnAt } from "../station/turns.ts";
import type { Station, Turn, WordSpan } from "../station/types.ts";
import { joinedStream, OWN_SHARE, polarityTold, shareOf, type PlacedPassage } from "./answered.ts";
import type { CompiledElement, CompiledRubric } from "./compile.ts";
import { asks, type Scene } from "./elicitation.ts";
import { numberReplies } from "./number-replies.ts";
import { isOpen, passagesFor, type Passage } from "./passages.ts";
import { postingsOf } from "./postings.ts";
import type { Stream } from "./stream.ts";
import type { Matches } from "./types.ts";
import { withinReach } from "./within-reach.ts";

/** A reply answers in its first words; what comes later stands on its own. */
const REPLY_WORDS = 30;
const AFFIRMATIONS = speechPhrases("affirmations");
const DENIES = /^(no|nope|nah|never|not|do not|definitely not)\b/;

/**
 * "When will it start working?" "Give it a week or two.": elements that a reply says by leaving out what the patient
 * has just asked. @param missing elements that nobody said outright.
 */
export function replyPassages({ station, turns, patient }: Scene, rubric: CompiledRubric, missing: readonly CompiledElement[]): PlacedPassage[] {
  return turns.flatMap((turn, place): PlacedPassage[] => {
    const reply = turns[place + 1];
    if (turn.role !== "patient" || reply?.role !== "candidate" || !asks(patient, turn)) return [];
    const joined = togetherStream(station, turn, reply);
    if (joined === null) return [];
    const { stream, from, affirmed } = joined;
    const postings = postingsOf(stream, rubric);
    const { elements } = withinReach(rubric, postings);
    const together = elements.filter((element) => missing.includes(element)).flatMap((element) =>
      passagesFor(element, postings, stream, "candidate")
        .filter(isOpen)
        .flatMap((passage) => ownPart(passage, from, affirmed) ?? []),
    );
    const numbers = numberReplies(rubric, postings, stream, from);
    const known = numbers.filter(({ element, verdict }) => !together.some((other) => other.element === element) && (verdict === "wrong" || missing.includes(element)));
    // What the number is of was asked: it is of nothing else.
    const others = together.filter(({ element, first, end }) => !numbers.some((number) => number.element !== element && number.first <= first && end <= number.end));
    return [...others, ...known].map((passage) => ({ passage, stream }));
  });
}

/** So much of an element's response must be denied for the question to be answered wrongly. */
const DENIED_ACCEPTED = 0.8;
/** A no to these denies no more than that it is only so, or that it is left out. */
const NARROWS = /^(only|just|or|not|no|never|without|instead|still)$/;

/** So soon a no is put right. */
const PUT_RIGHT_WITHIN = 6;

/**
 * "Do I have to use it every day?" "No, only when you're blocked up.": scripted questions that ask for what an element
 * says and are told no, and those that ask for what is wrong and are told yes.
 */
export function wrongReplies({ station, turns, questions }: Scene, rubric: CompiledRubric): Matches["answers"] {
  const answeredBy = new Map(rubric.questions.map(({ question, answeredBy: items }) => [question, items]));
  return questions.flatMap(({ question, span }): Matches["answers"] => {
    const place = turnAt(turns, span);
    const [turn, reply] = [turns[place], turns[place + 1]];
    const items = answeredBy.get(question) ?? [];
    if (turn?.role !== "patient" || reply?.role !== "candidate" || items.length === 0) return [];
    const together = togetherStream(station, { ...turn, first: span.first }, reply);
    if (together === null || !together.affirmed) return [];
    const { stream, from } = together;
    const postings = postingsOf(stream, rubric);
    const denied = stream.polarity.slice(0, from).some(({ negated }) => negated);
    if (denied && stream.tokens.slice(0, from).some(({ text }) => NARROWS.test(text))) return [];
    // "No, I mean yes".
    if (denied && AFFIRMATIONS.find(stream.tokens, from, Math.min(stream.tokens.length, from + PUT_RIGHT_WITHIN)).length > 0) return [];
    const elements = rubric.elements.filter(({ item, kind }) => kind === "tell" && items.includes(item));
    const wrong = elements.flatMap((element) => passagesFor(element, postings, stream, "candidate")).find((passage) => {
      if (!isOpen(passage) || passage.verdict !== "wrong" || (denied && passage.coverage < DENIED_ACCEPTED)) return false;
      // What the reply states wrongly by itself is found without the question.
      return passage.first < from && passage.window.aligned.some(({ term, hit }) => hit.first < from && !passage.window.response.terms[term]!.plain);
    });
    return wrong === undefined ? [] : [{ question, verdict: "wrong", span: { first: reply.first, end: Math.min(reply.end, reply.first + 1) }, score: wrong.coverage }];
  });
}

/**
 * The question and the start of the reply as one stretch of telling; the question denied where the reply says no.
 * @returns with the token at which the reply starts, and whether it starts with a yes or a no; null where nothing of one of them is in the station.
 */
function togetherStream(station: Station, question: WordSpan, reply: Turn): { stream: Stream; from: number; affirmed: boolean } | null {
  const end = Math.min(reply.end, reply.first + REPLY_WORDS);
  const stream = joinedStream(station, question, end);
  const from = stream.tokens.findIndex(({ word }) => word >= reply.first);
  if (from <= 0) return null;
  const yes = AFFIRMATIONS.at(stream.tokens, from) !== null;
  const no = !yes && DENIES.test(stream.tokens.slice(from, from + 2).map(({ text }) => text).join(" "));
  for (let place = 0; place < from; place += 1) {
    stream.acts[place] = "tell";
    stream.polarity[place] = polarityTold(stream.polarity[place]!, no);
  }
  return { stream, from, affirmed: yes || no };
}

/** The part of a passage that the candidate said, where that is enough of it. */
function ownPart(passage: Passage, from: number, affirmed: boolean): Passage | null {
  const { aligned, response } = passage.window;
  const own = shareOf(passage.window, (token) => token >= from);
  if (own < OWN_SHARE || own === 1) return null;
  // "Are you the pharmacist?" "Let's sit down over here.": small words that the reply happens to have say nothing of it.
  if (!affirmed && aligned.every(({ term, hit }) => hit.first < from || response.terms[term]!.plain)) return null;
  const first = Math.min(...aligned.filter(({ hit }) => hit.first >= from).map(({ hit }) => hit.first));
  return { ...passage, first };
}
