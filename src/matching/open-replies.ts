import { beginsIn } from "../station/span.ts";
import type { Station, Turn, WordSpan } from "../station/types.ts";
import { isSurelyWrong } from "./agreed.ts";
import { answeredStream, isAnswers, lastSentence, OWN_SHARE, shareOf, type PlacedPassage } from "./answered.ts";
import type { CompiledRubric } from "./compile.ts";
import { candidateEarning } from "./earning.ts";
import type { Scene } from "./elicitation.ts";
import { playedDownInVain } from "./red-flag.ts";
import type { Passage } from "./passages.ts";
import { postingsOf } from "./postings.ts";
import { sentenceFrom, type Stream } from "./stream.ts";
import type { UnsafeMatch } from "./types.ts";

/** So much of a reply may leave out what the question said. */
const LONGEST_REPLY = 16;

/**
 * "How often do I take it?" "Every day.", "where do the spare ones go?" "In the freezer.", "what if I'm no better?" "Come
 * back in.": what the reply to an open question says, rightly or wrongly, with the words that it leaves out. What it says
 * by itself is found without them.
 */
export function openReplies(scene: Scene, rubric: CompiledRubric): { right: PlacedPassage[]; wrong: PlacedPassage[]; unsafe: UnsafeMatch[] } {
  const right: PlacedPassage[] = [];
  const wrong: PlacedPassage[] = [];
  const unsafe: UnsafeMatch[] = [];
  scene.turns.forEach((turn, place) => {
    const reply = scene.turns[place + 1];
    if (turn.role !== "patient" || reply?.role !== "candidate" || !(asksOpenly(scene.patient, turn) || asksOfACase(scene.patient, turn))) return;
    const answer = firstSentence(scene.station, reply);
    const stream = answeredStream(scene.station, lastSentence(scene.station, turn), answer);
    const earned = candidateEarning(rubric, postingsOf(stream, rubric), stream);
    const answered = stream.tokens.findIndex(({ word }) => word >= answer.first);
    const putOff = playedDownInVain(stream, answered, stream.tokens.length);
    const begun = (word: number) => word < answer.first;
    for (const passage of earned.kept) {
      if (passage.toldAsNothing && putOff !== null) continue;
      const inAnswer = (token: number) => token >= answered;
      if (isSurelyRight(passage, inAnswer) && isAnswers(passage, stream, answer)) right.push({ passage: { ...passage, first: Math.max(passage.first, answered) }, stream });
      if (!isSurelyWrong(passage) || (passage.likelihood ?? 1) < SURELY || (!passage.toldAsNothing && !isAnswers(passage, stream, answer)) || shareOf(passage.window, (token) => begun(stream.tokens[token]!.word)) < OWN_SHARE) continue;
      // Its evidence is what the candidate said.
      const first = stream.tokens.findIndex(({ word }, place) => word >= answer.first && place >= passage.first);
      wrong.push({ passage: first >= passage.end ? { ...passage, first, end: stream.tokens.length } : { ...passage, first }, stream });
    }
    // Of "don't worry about that yet, I'll come to that" nothing is told; "don't worry, stop it and call us" tells to stop it.
    const told = putOff === null ? answer.first : stream.tokens[putOff.end - 1]!.word + 1;
    unsafe.push(...earned.unsafe.filter(({ span, correctedBy }) => correctedBy === undefined && begun(span.first) && span.end > told).map((match) => ({ ...match, span: { first: answer.first, end: match.span.end } })));
  });
  return { right, wrong, unsafe };
}

/** So closely it must fit, and not by small words alone that the answer happens to have: "get on to the surgery when it opens" is said of much. */
const CLOSELY = { coverage: 0.8, likelihood: 0.5 } as const;

function isSurelyRight({ verdict, element, coverage, likelihood = 0, window: { aligned, response } }: Passage, inAnswer: (token: number) => boolean): boolean {
  return verdict === "right" && element.kind === "tell" && coverage >= CLOSELY.coverage && likelihood >= CLOSELY.likelihood && aligned.some(({ term, hit }) => inAnswer(hit.first) && !response.terms[term]!.plain);
}

/** Whether the last that a turn asks cannot be answered with a yes or a no. */
function asksOpenly({ tokens, acts }: Stream, turn: WordSpan): boolean {
  for (let place = tokens.length - 1; place >= 0; place -= 1) {
    if (tokens[place]!.word >= turn.first && tokens[place]!.word < turn.end && acts[place] !== "tell") return acts[place] === "ask-open";
  }
  return false;
}

const OPENS_A_CASE = /^(if|when|say|suppose|supposing)$/;
const BEFORE_A_CASE = /^(and|but|so|well|oh|okay|right|now)$/;

/** "And if I get the flu?": a case alone asks what to do in it; "if I miss one, do I double up?" asks for a yes or a no. */
function asksOfACase(stream: Stream, turn: WordSpan): boolean {
  const { tokens, acts } = stream;
  const last = tokens.findLastIndex(({ word }) => word >= turn.first && word < turn.end);
  if (last < 0 || tokens[last]!.after !== "?") return false;
  let first = sentenceFrom(stream, last, tokens.findIndex(({ word }) => word >= turn.first));
  while (first < last && BEFORE_A_CASE.test(tokens[first]!.text)) first += 1;
  if (!OPENS_A_CASE.test(tokens[first]!.text) || !acts.slice(first, last + 1).every((act) => act === acts[first])) return false;
  return !tokens.slice(first + CASE_OWN, last).some(({ text }, place) => WHO.test(text) && PROPOSES.test(tokens[first + CASE_OWN + place + 1]!.text));
}

/** "If the pain goes I can stop it?": behind the case itself stands what is proposed for it. */
const CASE_OWN = 3;
const WHO = /^(i|we|he|she|they|it|you)$/;
const PROPOSES = /^(can|could|should|may|might|must|would|will|just|still|then|do|does)$/;

/** There is little around it that could speak against it: it must be likelier than in a whole station. */
const SURELY = 0.8;
function firstSentence(station: Station, reply: Turn): WordSpan {
  const end = station.sentences.find((sentence) => beginsIn(sentence, reply))?.end ?? reply.end;
  return { first: reply.first, end: Math.min(end, reply.end, reply.first + LONGEST_REPLY) };
}
