import { PLAYS_DOWN, PLAYS_NOTHING_DOWN } from "../language/polarity.ts";
import { clausesAround, sentenceUpTo, type Stream } from "./stream.ts";

/** So soon behind the sign it is said what it comes to: "if her lips go a bit blue it's probably just the cold". */
const BEHIND = 9;
/** What is told to be done at once plays nothing down: "a rash is nothing to wait with, ring us". */
const ALARMS = /^(ring|call|phone|hospital|ambulance|emergency|urgent|urgently|straightaway|immediately|doctor|but)$/;
/** So many words behind "no need to ring" tell whom. */
const RULED_OUT = 2;
const DENIES = /^(not|never|no)$/;

/** Whether the sign that the passage names is told as nothing: in its clause before it, or soon behind it in its sentence. */
export function isPlayedDown({ first, end }: { first: number; end: number }, stream: Stream): boolean {
  const { tokens } = stream;
  const to = sentenceUpTo(stream, end, BEHIND);
  const hit = PLAYS_DOWN.find(tokens, clausesAround(stream, { first, end }).first, to).find((one) => !DENIES.test(tokens[one.first - 1]?.text ?? "") && PLAYS_NOTHING_DOWN.at(tokens, one.end - 1) === null);
  if (hit === undefined) return false;
  const alarms = (from: number, until: number) => tokens.slice(from, until).some(({ text }) => ALARMS.test(text));
  // "No need to ring the doctor": whom it rules out alarms nobody.
  const ruledOut = alarms(hit.first, hit.end) ? hit.end + RULED_OUT : hit.end;
  return !alarms(Math.min(end, hit.end), Math.min(hit.first, to)) && !alarms(Math.max(end, ruledOut), to);
}
