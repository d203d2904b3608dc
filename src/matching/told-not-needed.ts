import { wordWeight } from "../language/lexicon.ts";
import { speechPhrases } from "../language/speech-phrases.ts";
import type { Token } from "../language/token.ts";
import type { Turn } from "../station/types.ts";
import { isSurelyWrong } from "./agreed.ts";
import { lastSentence, toldToThem, type PlacedPassage } from "./answered.ts";
import type { CompiledRubric } from "./compile.ts";
import { candidateEarning } from "./earning.ts";
import { tokensIn, type Scene } from "./elicitation.ts";
import { ofLikeliestItem } from "./likeliest-item.ts";
import type { Passage } from "./passages.ts";
import { postingsOf } from "./postings.ts";
import type { Stream } from "./stream.ts";
import { tokensOf } from "./windows.ts";

/*
 * "Do I have to shake it?" "No, don't bother.": who asks whether a thing must be done and is told no has been told that it
 * need not be done.
 */

const ASKS_NEED = speechPhrases("asks_need");
const DENIES_NEED = speechPhrases("denies_need");
const ALLOWS = speechPhrases("affirmations");
const LEADS_IN = /^(oh|ah|um|uh|er|erm|hmm|well|look|so|right|honestly|actually|god|goodness|love|dear|to|be|honest|yeah|you|know)$/;
const A_NO = /^(no|nope|nah|never)$/;
/** A no opens the reply, behind so many words at most. */
const NO_WITHIN = 4;
/** Behind the no, take it back or say that it must be done: "no, you do", "no, but it's best", "no, it's important". */
const AFTER_ALL = /^(but|must|should|best|better|always|important|still|though|although|however|need|yes|wise|safer|helps?)$/;
const TURNED_WITHIN = 10;

/** What the patient asks whether it must be done, and is told that it need not, where it must. */
export function toldNotNeeded(scene: Scene, rubric: CompiledRubric): PlacedPassage[] {
  return scene.turns.flatMap((turn, place): PlacedPassage[] => {
    const reply = scene.turns[place + 1];
    if (turn.role !== "patient" || reply?.role !== "candidate" || !saysNoNeed(scene, reply)) return [];
    const asked = lastSentence(scene.station, turn);
    const { first, end } = tokensIn(scene.patient, asked);
    if (ASKS_NEED.find(scene.patient.tokens, first, end).length === 0 || scene.patient.tokens.slice(first, end).some(({ text }) => OTHERWISE.test(text))) return [];
    const stream = denied(toldToThem(scene.station, asked));
    const { kept } = candidateEarning(rubric, postingsOf(stream, rubric), stream);
    const wrong = kept.filter((passage) => passage.element.kind === "tell" && !passage.element.redFlag && passage.element.quantity === null && isSurelyWrong(passage) && saysAllOf(passage, stream));
    // What the rubric lists as wrong goes before what is only the opposite of something right.
    const listed = wrong.filter(({ likelihood }) => likelihood !== undefined);
    return ofLikeliestItem(listed.length > 0 ? listed : wrong).map((passage) => ({ passage, stream }));
  });
}

/** "Do I have to stop or carry on?", "don't I have to", "do I have to do it before or if": the no may be to another thing. */
const OTHERWISE = /^(or|not|if|when|unless|only|just|instead|without|before|after)$/;

function saysNoNeed({ candidate: { tokens }, candidate }: Scene, reply: Turn): boolean {
  const { first, end } = tokensIn(candidate, reply);
  let place = first;
  while (place < Math.min(end, first + NO_WITHIN) && LEADS_IN.test(tokens[place]!.text) && DENIES_NEED.at(tokens, place) === null) place += 1;
  if (place >= end) return false;
  const denies = DENIES_NEED.at(tokens, place);
  if (denies === null && !A_NO.test(tokens[place]!.text)) return false;
  return !turns(tokens, denies?.end ?? place + 1, Math.min(end, (denies?.end ?? place + 1) + TURNED_WITHIN));
}

const SAYS_IT_MUST = (tokens: readonly Token[], place: number) => /^(you|he|she|it|they)$/.test(tokens[place]!.text) && /^(do|does|must|have|has|should)$/.test(tokens[place + 1]?.text ?? "") && tokens[place + 2]?.text !== "not";

function turns(tokens: readonly Token[], from: number, to: number): boolean {
  for (let place = from; place < to; place += 1) {
    if (DENIES_NEED.at(tokens, place) !== null) return false;
    if (AFTER_ALL.test(tokens[place]!.text) || SAYS_IT_MUST(tokens, place) || (place === from && ALLOWS.at(tokens, place) !== null && tokens[place]!.text === "of")) return true;
  }
  return false;
}

/** The same, denied. */
function denied(stream: Stream): Stream {
  return { ...stream, polarity: stream.polarity.map((own) => ({ ...own, hypothetical: false, negated: !own.negated })) };
}

/** A word this heavy tells what is asked; so do these, however light. */
const TELLING = 1;
const HOW_OFTEN = /^(every|each|always|again|all|whole|both|whenever|first|twice|other)$/;

/** Whether the question asks of nothing but what the response says: "do I have to prime it every time?" asks for more than "prime it". */
function saysAllOf({ window, quantity }: Passage, stream: Stream): boolean {
  const said = tokensOf(window);
  return stream.tokens.every(({ stem, text }, place) => said.has(place) || (quantity !== undefined && place >= quantity.first && place < quantity.end) || stream.silent.has(place) || ASKING.has(text) || (wordWeight(stem) < TELLING && !HOW_OFTEN.test(text)));
}

/** Words of the asking itself. */
const ASKING = new Set(["need", "have", "supposed", "meant", "must", "should", "point", "really", "bother", "got", "got", "always", "even", "still"]);
