import { beginsIn } from "../station/span.ts";
import type { Station, Turn, WordSpan } from "../station/types.ts";
import { isSurelyWrong } from "./agreed.ts";
import { answeredStream, isAnswers, lastSentence, OWN_SHARE, shareOf, type PlacedPassage } from "./answered.ts";
import type { CompiledRubric } from "./compile.ts";
import { candidateEarning } from "./earning.ts";
import type { Scene } from "./elicitation.ts";
import { postingsOf } from "./postings.ts";
import { playedDownInVain } from "./red-flag.ts";
import type { Stream } from "./stream.ts";
import type { UnsafeMatch } from "./types.ts";

/** So much of a reply may leave out what the question said. */
const LONGEST_REPLY = 16;

/**
 * "How often do I take it?" "Every day.", "where do the spare ones go?" "In the freezer.": what the reply to an open
 * question states wrongly with the words that it leaves out. What it says wrongly by itself is found without them.
 */
export function openReplies(scene: Scene, rubric: CompiledRubric): { wrong: PlacedPassage[]; unsafe: UnsafeMatch[] } {
  const wrong: PlacedPassage[] = [];
  const unsafe: UnsafeMatch[] = [];
  scene.turns.forEach((turn, place) => {
    const reply = scene.turns[place + 1];
    if (turn.role !== "patient" || reply?.role !== "candidate" || !asksOpenly(scene.patient, turn)) return;
    const answer = firstSentence(scene.station, reply);
    const stream = answeredStream(scene.station, lastSentence(scene.station, turn), answer);
    const earned = candidateEarning(rubric, postingsOf(stream, rubric), stream);
    const answered = stream.tokens.findIndex(({ word }) => word >= answer.first);
    const putOff = playedDownInVain(stream, answered, stream.tokens.length);
    const begun = (word: number) => word < answer.first;
    for (const passage of earned.kept) {
      if (passage.toldAsNothing && putOff !== null) continue;
      if (!isSurelyWrong(passage) || (passage.likelihood ?? 1) < SURELY || (!passage.toldAsNothing && !isAnswers(passage, stream, answer)) || shareOf(passage.window, (token) => begun(stream.tokens[token]!.word)) < OWN_SHARE) continue;
      // Its evidence is what the candidate said.
      const first = stream.tokens.findIndex(({ word }, place) => word >= answer.first && place >= passage.first);
      wrong.push({ passage: first >= passage.end ? { ...passage, first, end: stream.tokens.length } : { ...passage, first }, stream });
    }
    // Of "don't worry about that yet, I'll come to that" nothing is told; "don't worry, stop it and call us" tells to stop it.
    const told = putOff === null ? answer.first : stream.tokens[putOff.end - 1]!.word + 1;
    unsafe.push(...earned.unsafe.filter(({ span, correctedBy }) => correctedBy === undefined && begun(span.first) && span.end > told).map((match) => ({ ...match, span: { first: answer.first, end: match.span.end } })));
  });
  return { wrong, unsafe };
}

/** Whether the last that a turn asks cannot be answered with a yes or a no. */
function asksOpenly({ tokens, acts }: Stream, turn: WordSpan): boolean {
  for (let place = tokens.length - 1; place >= 0; place -= 1) {
    if (tokens[place]!.word >= turn.first && tokens[place]!.word < turn.end && acts[place] !== "tell") return acts[place] === "ask-open";
  }
  return false;
}

/** There is little around it that could speak against it: it must be likelier than in a whole station. */
const SURELY = 0.8;
function firstSentence(station: Station, reply: Turn): WordSpan {
  const end = station.sentences.find((sentence) => beginsIn(sentence, reply))?.end ?? reply.end;
  return { first: reply.first, end: Math.min(end, reply.end, reply.first + LONGEST_REPLY) };
}
