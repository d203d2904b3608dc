import { PLAYS_DOWN, PLAYS_NOTHING_DOWN } from "../language/polarity.ts";
import { clausesAround, inOneSentence, sentenceUpTo, type Stream } from "./stream.ts";

/** So soon behind the sign it is said what it comes to: "if her lips go a bit blue it's probably just the cold". */
const BEHIND = 9;
/** What is told to be done at once plays nothing down: "a rash is nothing to wait with, ring us". */
const ALARMS = /^(ring|call|phone|hospital|ambulance|emergency|urgent|urgently|straightaway|immediately|doctor|but)$/;
/** So many words behind "no need to ring" tell whom. */
const RULED_OUT = 2;
const DENIES = /^(not|never|no)$/;

/** What the next sentence says of it has no other subject: "That's normal.", "I wouldn't worry about it.", "Nothing to worry about." */
const OF_THE_SAME = /^(that|this|it|they|those|these|all|is|are|was|i|you|we|would|can|will|should|do|honestly|really|usually|just|probably|well|and|so|oh|but)$/;
/** "Don't worry about the taste" is said of something else. */
const WORRIES = /^(worry|worried|fret|about)$/;
const MEANS_IT = /^(that|this|it|them|those|these|any)$/;
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
  if (hit === undefined || DENIES.test(tokens[hit.first - 1]!.text) || PLAYS_NOTHING_DOWN.at(tokens, hit.end - 1) !== null) return false;
  for (let place = next; place < hit.first; place += 1) if (!OF_THE_SAME.test(tokens[place]!.text)) return false;
  if (hit.end < to && WORRIES.test(tokens[hit.end - 1]!.text) && !tokens.slice(hit.end, hit.end + 2).some(({ text }) => MEANS_IT.test(text))) return false;
  const from = clausesAround(stream, { first, end }).first;
  return !tokens.slice(from, to).some(({ text }, place) => ALARMS.test(text) && !(from + place >= hit.first && from + place < hit.end + RULED_OUT));
}

/** Whether what plays down is put off or alarms all the same: "don't worry about it now, but ring us that day", "not to worry, I'll come to that". */
export function isNoPlayingDown({ tokens }: Stream, first: number, end: number): boolean {
  const hit = PLAYS_DOWN.find(tokens, first, end)[0];
  return hit !== undefined && tokens.slice(hit.end, end).some(({ text }, place, behind) => ALARMS.test(text) || (/^(come|get)$/.test(text) && /^(to|back|onto)$/.test(behind[place + 1]?.text ?? "")));
}

function isPlayedDownBeside({ first, end }: { first: number; end: number }, stream: Stream): boolean {
  const { tokens } = stream;
  const to = sentenceUpTo(stream, end, BEHIND);
  const hit = PLAYS_DOWN.find(tokens, clausesAround(stream, { first, end }).first, to).find((one) => !DENIES.test(tokens[one.first - 1]?.text ?? "") && PLAYS_NOTHING_DOWN.at(tokens, one.end - 1) === null);
  if (hit === undefined) return false;
  const alarms = (from: number, until: number) => tokens.slice(from, until).some(({ text }) => ALARMS.test(text));
  // "No need to ring the doctor": whom it rules out alarms nobody.
  const ruledOut = alarms(hit.first, hit.end) ? hit.end + RULED_OUT : hit.end;
  return !alarms(Math.min(end, hit.end), Math.min(hit.first, to)) && !alarms(Math.min(ruledOut, to), to);
}
