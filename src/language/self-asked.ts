import { opensInstructionBehind } from "./main-clause.ts";
import { SPEECH, speechPhrases } from "./speech-phrases.ts";
import { isTradeWord } from "./stem.ts";
import type { Token } from "./token.ts";

const ASKED = new Set([...SPEECH.auxiliaries, ...SPEECH.question_words, "your", "you", "i", "we", "he", "she", "they"]);
const OPENERS = new Set(SPEECH.openers);
const TAGS = speechPhrases("tags");
const COMFORTS = speechPhrases("comforts");
const COMPREHENSION = speechPhrases("comprehension_checks");
/** What a candidate asks somebody for, or whether they are content or can see it, waits for their answer. */
const OF_THE_OTHER = new Set(SPEECH.of_the_other);
/** More words than these are no condition that somebody throws in. */
const LONGEST = 9;
/** With one of these it is what may happen to them, not what they are asked: "it's gone midnight and you've only just remembered?". */
const HAPPENS = new Set(SPEECH.happens_to_one);
const LONGEST_HAPPENING = 15;

/** "Your wife's eyes are sore?" tells a case, "your name?" and "your wife's name?" ask. */
const TELLS_OF_IT = /^(is|are|goes|gets|feels|hurts|hurt|aches|runs|itches|stings)$/;

/**
 * Conditions in the form of a question to oneself, told what to do about in the same breath: "Missed one? Take it when you
 * remember." Nobody's answer is waited for.
 * @param breaks token positions before which a turn ends.
 * @returns tokens of each, end exclusive.
 */
export function selfAsked(tokens: readonly Token[], breaks: ReadonlySet<number>): { first: number; end: number }[] {
  const found: { first: number; end: number }[] = [];
  let first = 0;
  for (let place = 0; place < tokens.length; place += 1) {
    if (breaks.has(place)) first = place;
    if (!/[.?!]/.test(tokens[place]!.after)) continue;
    const end = place + 1;
    if (tokens[place]!.after === "?" && end < tokens.length && !breaks.has(end) && isCondition(tokens, first, end) && goesOnTelling(tokens, end)) found.push({ first, end });
    first = end;
  }
  return found;
}

/** "Fine again?", "back to normal?" are states that somebody comes to; "fine?" asks the other. */
const A_STATE = new Set(SPEECH.state);
const COME_TO = /^(again|back)$/;

/** "Can't breathe?", "doesn't work?" ask nobody; "can't you breathe?" and "doesn't it work?" do. */
const UNABLE = /^(can|could|will|would|do|does|did|is|has|have)$/;
const SUBJECT = /^(you|i|we|he|she|it|they|this|that|these|those|there|the|your|anybody|anyone|not)$/;

function isCondition(tokens: readonly Token[], first: number, end: number): boolean {
  let from = first;
  while (from < end && OPENERS.has(tokens[from]!.text)) from += 1;
  const words = tokens.slice(from, end);
  // "You've forgotten one?" tells a case; "have you forgotten one?" and "do you forget them?" ask.
  const happens = words.some(({ text }) => HAPPENS.has(text));
  const ofYours = words[0]?.text === "your" && words.slice(2).some(({ text }) => TELLS_OF_IT.test(text));
  const unable = UNABLE.test(words[0]?.text ?? "") && words[1]?.text === "not" && words.length > 2 && !SUBJECT.test(words[2]!.text);
  const asks = ASKED.has(tokens[from]?.text ?? "") && !(happens && tokens[from]!.text === "you") && !ofYours && !unable;
  const comesTo = words.some(({ text }) => COME_TO.test(text)) && words.some(({ text }) => A_STATE.has(text));
  if (from === end || end - from > (happens ? LONGEST_HAPPENING : LONGEST) || asks) return false;
  // "Robin Carter? Come through."
  if (words.slice(ofYours ? 1 : 0).some(({ text }) => OF_THE_OTHER.has(text) && !(happens && text === "you") && !(comesTo && A_STATE.has(text))) || !(comesTo || words.some(({ text }) => isTradeWord(text)))) return false;
  return TAGS.find(tokens, from, end).length === 0 && COMPREHENSION.find(tokens, from, end).length === 0;
}

/** Behind a condition these too open what is to be done. */
const TELLS = /^(then|just|simply|straight|please|never|do|that|it|carry|have|leave)$/;
/** "Struggling for breath? All the more reason to lie down", "not touching it? You can have six". */
const TELLS_ON = speechPhrases("tells_on");
/** How much of what, said without its verb: "still sore? Two more sprays", "bad pain? A couple of paracetamol". */
const TELLS_HOW_MUCH = /^(one|two|three|four|couple|few|another|extra|double)$/;

function goesOnTelling(tokens: readonly Token[], place: number): boolean {
  let from = place;
  while (/^(well|so|okay|right|and)$/.test(tokens[from]?.text ?? "")) from += 1;
  // "No drama, inject it then".
  const comfort = COMFORTS.at(tokens, from);
  if (comfort !== null && tokens[comfort.end - 1]!.after !== "") from = comfort.end;
  const amount = /^(a|an|the)$/.test(tokens[from]?.text ?? "") ? from + 1 : from;
  return from < tokens.length && (TELLS.test(tokens[from]!.text) || TELLS_ON.at(tokens, from) !== null || TELLS_HOW_MUCH.test(tokens[amount]?.text ?? "") || opensInstructionBehind(tokens.slice(from), 0));
}
