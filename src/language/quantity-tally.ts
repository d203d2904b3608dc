import { readNumber, runsOn, wordsAt, type NumberReading } from "./number-words.ts";
import type { Token } from "./token.ts";

/*
 * "One elephant, two elephants, all the way to ten": people count seconds with a long word behind each number
 * (common practice, no source).
 */

const TALLIED = /^(elephants?|potato|potatoes|mississippis?|bananas?|hippopotamus|hippopotamuses|hippos?|crocodiles?|alligators?|steamboats?|thousand|sheep|chimpanzees?)$/;

/** How far the counting goes: "one elephant, two elephants, and so on up to ten". */
const UNTIL: readonly (readonly string[])[] = [
  ["and", "so", "on"], ["and", "on"], ["and", "so", "forth"], ["like", "that"], ["all", "the", "way"], ["right"], ["on"], ["and"],
];
const TO: readonly (readonly string[])[] = [["up", "to"], ["to"], ["till"], ["until"], ["as", "far", "as"]];

/** The highest number of a tally that starts at token `at`, in seconds, and the position after it; null where none does. */
export function readTally(tokens: readonly Token[], at: number): { seconds: number; end: number } | null {
  let seconds = 0;
  let end = at;
  for (let next = tallied(tokens, at); next !== null && next.value === seconds + 1; next = tallied(tokens, end)) ({ value: seconds, end } = next);
  if (seconds === 0) return null;
  const to = countedUpTo(tokens, end);
  if (to !== null && to.value > seconds) return { seconds: to.value, end: to.end };
  // "One potato" alone may be lunch.
  return seconds > 1 ? { seconds, end } : null;
}

/** "Two elephants", "two one thousand". */
function tallied(tokens: readonly Token[], at: number): { value: number; end: number } | null {
  const skip = tokens[at]?.text === "and" ? 1 : 0;
  const number = readNumber(tokens, at + skip);
  if (number === null) return null;
  const value = number.value >= 1000 && number.value % 1000 === 0 ? number.value / 1000 : number.value;
  if (value !== number.value) return { value, end: number.end };
  return runsOn(tokens, number.end) && TALLIED.test(tokens[number.end]?.text ?? "") ? { value, end: number.end + 1 } : null;
}

/** "And so on up to ten" behind what was counted: the number, and the position after it. */
export function countedUpTo(tokens: readonly Token[], from: number): NumberReading | null {
  let at = from;
  for (let lead = passed(UNTIL, tokens, at); lead > 0; lead = passed(UNTIL, tokens, at)) at += lead;
  // "One, two, three to four days" counts nothing up.
  const to = at === from && tokens[at]?.text === "to" ? 0 : passed(TO, tokens, at);
  const number = to === 0 ? null : readNumber(tokens, at + to);
  if (number === null) return null;
  const named = runsOn(tokens, number.end) && TALLIED.test(tokens[number.end]?.text ?? "") ? 1 : 0;
  return { ...number, end: number.end + named };
}

const passed = (phrases: readonly (readonly string[])[], tokens: readonly Token[], at: number) => phrases.find((phrase) => wordsAt(tokens, at, phrase))?.length ?? 0;
