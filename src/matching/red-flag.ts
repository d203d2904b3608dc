import { PLAYS_DOWN } from "../language/polarity.ts";
import { clausesAround, sentenceUpTo, type Stream } from "./stream.ts";

/** So soon behind the sign it is said what it comes to: "if her lips go a bit blue it's probably just the cold". */
const BEHIND = 9;
/** What is told to be done at once plays nothing down: "a rash is nothing to wait with, ring us". */
const ALARMS = /^(ring|call|phone|hospital|ambulance|emergency|urgent|urgently|straightaway|immediately|doctor|but)$/;
const DENIES = /^(not|never|no)$/;

/** Whether the sign that the passage names is told as nothing: in its clause before it, or soon behind it in its sentence. */
export function isPlayedDown({ first, end }: { first: number; end: number }, stream: Stream): boolean {
  const { tokens } = stream;
  const to = sentenceUpTo(stream, end, BEHIND);
  const hit = PLAYS_DOWN.find(tokens, clausesAround(stream, { first, end }).first, to).find((one) => !DENIES.test(tokens[one.first - 1]?.text ?? ""));
  return hit !== undefined && !tokens.slice(Math.min(end, hit.end), to).some(({ text }) => ALARMS.test(text));
}
