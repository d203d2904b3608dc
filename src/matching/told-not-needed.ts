import { wordWeight } from "../language/lexicon.ts";
import { speechPhrases } from "../language/speech-phrases.ts";
import type { Token } from "../language/token.ts";
import type { Turn } from "../station/types.ts";
import { isSurelyWrong } from "./agreed.ts";
import { lastSentence, polarityTold, toldToThem, type PlacedPassage } from "./answered.ts";
import type { CompiledRubric } from "./compile.ts";
import { candidateEarning } from "./earning.ts";
import { tokensIn, type Scene } from "./elicitation.ts";
import { ofLikeliestWrong } from "./likeliest-item.ts";
import type { Passage } from "./passages.ts";
import { postingsOf } from "./postings.ts";
import { behindLeadIn } from "./says-no.ts";
import type { Stream } from "./stream.ts";
import { A_NO, noTakingUp } from "./taking-up.ts";
import { tokensOf } from "./windows.ts";

/*
 * "Do I have to shake it?" "No, don't bother.": who asks whether a thing must be done and is told no has been told that it
 * need not be done.
 */

const ASKS_NEED = speechPhrases("asks_need");
const ASKS_WHETHER = speechPhrases("asks_whether");
const DENIES_NEED = speechPhrases("denies_need");
const NEEDED_AFTER_ALL = speechPhrases("needed_after_all");
/** A no opens the reply, behind so many words at most. */
const NO_WITHIN = 4;
/** What says that it must be done after all stands within so many words behind the no. */
const TURNED_WITHIN = 10;

/** What the patient asks whether it must be done, and is told that it need not, where it must. */
export function toldNotNeeded(scene: Scene, rubric: CompiledRubric): PlacedPassage[] {
  return scene.turns.flatMap((turn, place): PlacedPassage[] => {
    const reply = scene.turns[place + 1];
    if (turn.role !== "patient" || reply?.role !== "candidate") return [];
    const asked = lastSentence(scene.station, turn);
    const { first, end } = tokensIn(scene.patient, asked);
    const { tokens } = scene.patient;
    const need = ASKS_NEED.find(tokens, first, end)[0]?.first;
    const whether = need ?? ASKS_WHETHER.find(tokens, first, end)[0]?.first;
    if (whether === undefined || !saysNoNeed(scene, reply, { takingUp: need === undefined })) return [];
    for (let at = whether; at < end; at += 1) if (OTHERWISE.test(tokens[at]!.text) || (tokens[at]!.text === "do" && POINTS_BACK.test(tokens[at + 1]?.text ?? ""))) return [];
    const told = toldToThem(scene.station, asked);
    const stream: Stream = { ...told, polarity: told.polarity.map((own) => polarityTold(own, true)) };
    const { kept } = candidateEarning(rubric, postingsOf(stream, rubric), stream);
    const wrong = kept.filter((passage) => passage.element.kind === "tell" && !passage.element.redFlag && passage.quantity === undefined && isSurelyWrong(passage) && saysAllOf(passage, stream));
    return ofLikeliestWrong(wrong).map((passage) => ({ passage, stream }));
  });
}

/** "Do I have to stop or carry on?", "don't I have to", "do I have to do it before or if": the no may be to another thing. */
const OTHERWISE = /^(or|not|if|when|unless|only|just|instead|without|before|after)$/;

/** "Do I have to do that every morning?" asks of whatever was spoken of before. */
const POINTS_BACK = /^(that|this|it|them|so)$/;

/**
 * Whether a reply opens with a no to the need ("no", "not really", "you don't have to"), and does not take it back.
 * @param takingUp whether only a no that takes up what was asked is one ("do I wash them?" "you don't, no"): a plain no to it may go on to say how.
 */
function saysNoNeed({ candidate: { tokens }, candidate }: Scene, reply: Turn, { takingUp }: { takingUp: boolean }): boolean {
  const { first, end } = tokensIn(candidate, reply);
  for (let place: number | null = first; place !== null && place < Math.min(end, first + NO_WITHIN); place = behindLeadIn(tokens, place)) {
    const takenUp = noTakingUp(tokens, place, end);
    if (takenUp !== null) return !isNeededAfterAll(tokens, takenUp, end);
    if (takingUp) continue;
    const denial = DENIES_NEED.at(tokens, place);
    if (denial !== null || A_NO.test(tokens[place]!.text)) return !isNeededAfterAll(tokens, denial?.end ?? place + 1, end);
  }
  return false;
}

/** "No, you do", "no, but it's best if you do"; not "no, you don't have to, it's always been fine". */
function isNeededAfterAll(tokens: readonly Token[], from: number, end: number): boolean {
  for (let place = from; place < Math.min(end, from + TURNED_WITHIN); place += 1) {
    if (DENIES_NEED.at(tokens, place) !== null) return false;
    const turned = NEEDED_AFTER_ALL.at(tokens, place);
    if (turned !== null && tokens[turned.end]?.text !== "not") return true;
  }
  return false;
}

/** Words of the asking itself. */
const ASKING = /^(need|have|got|supposed|meant|must|should|point|really|even|still)$/;
/** A word this heavy tells what is asked; so do these, however light. */
const TELLING = 1;
const HOW_OFTEN = /^(every|each|always|again|all|whole|both|whenever|first|twice|other)$/;

/** Whether the question asks of nothing but what the response says: "do I have to prime it every time?" asks for more than "prime it". */
function saysAllOf({ window }: Passage, stream: Stream): boolean {
  const said = tokensOf(window);
  return stream.tokens.every(({ stem, text }, place) => said.has(place) || stream.silent.has(place) || ASKING.test(text) || (wordWeight(stem) < TELLING && !HOW_OFTEN.test(text)));
}
