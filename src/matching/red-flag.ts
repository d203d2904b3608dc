import { ALARMS, PLAYS_DOWN, PLAYS_NOTHING_DOWN } from "../language/appraisals.ts";
import { speechPhrases } from "../language/speech-phrases.ts";
import { clausesAround, inOneSentence, sentenceUpTo, type Stream } from "./stream.ts";

/** So soon behind the sign it is said what it comes to: "if her lips go a bit blue it's probably just the cold". */
const BEHIND = 9;
/** So many words behind "no need to ring" tell whom. */
const RULED_OUT = 2;
const DENIES = /^(not|never|no)$/;
/** What may stand between a denial and what it denies of the sign: "don't just put it down to your age", "don't think it's only the weather". */
const DENIED_OVER = /^(just|simply|only|ever|always|go|think|assume|suppose|imagine|believe|say|tell|yourself|something|anything|you|it|that|this|they|is|are)$/;
const DENIED_WITHIN = 6;
/** "A sore throat, even if you think it's just from the cold": what holds all the same plays nothing down. */
const CONCEDES_WITHIN = 6;
const CONCEDED_CASE = /^(if|though|when)$/;

const OTHERS_SAY = speechPhrases("others_say", "others_think");
/** So soon behind who says it stands what is said: "people say, ah, it's only my age". */
const SAID_WITHIN = 4;

/** What the next sentence says of it has no other subject: "That's normal.", "I wouldn't worry about it.", "Nothing to worry about." */
const OF_THE_SAME = /^(that|this|it|they|those|these|all|is|are|was|i|you|we|would|can|will|should|do|honestly|really|usually|just|probably|well|and|so|oh|but)$/;
/** "Don't worry about the taste" is said of something else, and so is "it's normal to feel sick the day after". */
const WORRIES = /^(worry|worried|fret|about)$/;
const MEANS_IT = /^(that|this|it|them|those|these|any)$/;
/** So soon behind it what it is said of is named. */
const NAMED_WITHIN = { worry: 2, to: 3 } as const;
/** So far into the next sentence it is said. */
const NEXT_SENTENCE = 10;

/** Whether the sign that the passage names is told as nothing: in its clause before it, soon behind it in its sentence, or in the next. */
export function isPlayedDown({ first, end }: { first: number; end: number }, stream: Stream): boolean {
  return isPlayedDownBeside({ first, end }, stream) || isPlayedDownNext({ first, end }, stream);
}

/** "You may see haloes round lights. I wouldn't worry about that." */
function isPlayedDownNext({ first, end }: { first: number; end: number }, stream: Stream): boolean {
  const { tokens, turnOf } = stream;
  let next = end;
  while (next < Math.min(tokens.length, end + BEHIND) && inOneSentence(stream, end - 1, next)) next += 1;
  if (next >= tokens.length || turnOf[next] !== turnOf[end - 1] || inOneSentence(stream, end - 1, next)) return false;
  const to = sentenceUpTo(stream, next + 1, NEXT_SENTENCE);
  const hit = PLAYS_DOWN.find(tokens, next, to)[0];
  if (hit === undefined || isDenied(tokens, hit.first) || PLAYS_NOTHING_DOWN.at(tokens, hit.end - 1) !== null) return false;
  for (let place = next; place < hit.first; place += 1) if (!OF_THE_SAME.test(tokens[place]!.text)) return false;
  if (hit.end < to && isOfSomethingElse(tokens, hit.end)) return false;
  return !alarmsIn(stream, clausesAround(stream, { first, end }).first, hit.first) && !alarmsIn(stream, ruledOutUpTo(stream, hit), to);
}

function isOfSomethingElse(tokens: Stream["tokens"], end: number): boolean {
  // "It is nothing to worry about" goes on with the same.
  const goesOn = tokens[end]!.text === "to" && tokens[end - 1]!.text !== "nothing";
  const within = goesOn ? NAMED_WITHIN.to : WORRIES.test(tokens[end - 1]!.text) ? NAMED_WITHIN.worry : 0;
  return within > 0 && !tokens.slice(end, end + within).some(({ text }) => MEANS_IT.test(text));
}

const alarmsIn = ({ tokens }: Stream, from: number, to: number): boolean => ALARMS.find(tokens, from, to).length > 0;

/** "No need to ring the doctor": whom it rules out alarms nobody. */
function ruledOutUpTo(stream: Stream, { first, end }: { first: number; end: number }): number {
  return alarmsIn(stream, first, end) ? end + RULED_OUT : end;
}

/** What would play down and is put off, or alarms all the same: "don't worry about it now, but ring us that day", "not to worry, I'll come to that"; null where there is none. */
export function playedDownInVain(stream: Stream, first: number, end: number): { first: number; end: number } | null {
  const { tokens } = stream;
  const hit = PLAYS_DOWN.find(tokens, first, end)[0];
  if (hit === undefined) return null;
  const comesToIt = tokens.slice(hit.end, end).some(({ text }, place, behind) => /^(come|get)$/.test(text) && /^(to|back|onto)$/.test(behind[place + 1]?.text ?? ""));
  return comesToIt || alarmsIn(stream, hit.end, end) ? hit : null;
}

function isPlayedDownBeside({ first, end }: { first: number; end: number }, stream: Stream): boolean {
  const { tokens } = stream;
  const to = sentenceUpTo(stream, end, BEHIND);
  const hit = PLAYS_DOWN.find(tokens, clausesAround(stream, { first, end }).first, to).find((one) => !isDenied(tokens, one.first) && PLAYS_NOTHING_DOWN.at(tokens, one.end - 1) === null && !tellsWhich(tokens, one.first) && !saidByOthers(tokens, one.first) && !isConceded(tokens, end, one.first));
  // "Don't worry about a nosebleed unless it goes on for ten minutes": the sign is what the worry is kept for.
  if (hit === undefined || tokens.slice(hit.end, end).some(({ text }) => text === "unless")) return false;
  return !alarmsIn(stream, Math.min(end, hit.end), Math.min(hit.first, to)) && !alarmsIn(stream, ruledOutUpTo(stream, hit), to);
}

/** Whether what would play down is warned against: "isn't normal", "don't think it means nothing". */
function isDenied(tokens: Stream["tokens"], place: number): boolean {
  for (let k = place - 1; k >= Math.max(0, place - DENIED_WITHIN); k -= 1) {
    if (DENIES.test(tokens[k]!.text)) return true;
    if (!DENIED_OVER.test(tokens[k]!.text)) return false;
  }
  return false;
}

/** "Pain and the redness that comes with it" names a sign; "a bit of redness, that comes with it" plays it down. */
function tellsWhich(tokens: Stream["tokens"], place: number): boolean {
  return /^comes?$/.test(tokens[place]!.text) && tokens[place - 1]?.text === "that" && tokens[place - 2]?.after === "";
}

/** "When it won't come, people say it's only my age": who warns of that plays nothing down. */
function saidByOthers(tokens: Stream["tokens"], place: number): boolean {
  return OTHERS_SAY.find(tokens, Math.max(0, place - SAID_WITHIN), place).length > 0;
}

/** Whether a case that makes no difference opens between the sign and what would play it down. */
function isConceded(tokens: Stream["tokens"], sign: number, place: number): boolean {
  for (let k = Math.max(sign, place - CONCEDES_WITHIN); k < place; k += 1) if (tokens[k]!.text === "even" && CONCEDED_CASE.test(tokens[k + 1]!.text)) return true;
  return false;
}
