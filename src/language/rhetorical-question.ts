import { AUXILIARIES, QUESTION_WORDS, skipOpeners, SUBJECTS } from "./question-form.ts";
import { SPEECH, speechPhrases } from "./speech-phrases.ts";
import type { Token } from "./token.ts";

const ASKS_WHETHER_KNOWN = speechPhrases("asks_whether_known");
const POINTS = speechPhrases("points");
const THEIRS = new Set(SPEECH.theirs);

/** Whether a sentence in the form of a question asks nobody: it points at something, or is answered in the same breath. */
export function isRhetorical(tokens: readonly Token[], first: number, end: number, breaks: ReadonlySet<number>): boolean {
  if (pointsAtIt(tokens, first, end)) return true;
  return end < tokens.length && !breaks.has(end) && (answersItself(tokens, first, end) || isOnesOwn(tokens, first, end, breaks));
}

/** "Did you know you can't have ibuprofen? Well, you can't": what the speaker answers is told. */
function answersItself(tokens: readonly Token[], first: number, end: number): boolean {
  if (tokens[end - 1]!.after !== "?" || ASKS_WHETHER_KNOWN.at(tokens, skipOpeners(tokens, first, end)) === null) return false;
  const answer = skipOpeners(tokens, end, tokens.length);
  const [subject, verb, third] = [tokens[answer]?.text ?? "", tokens[answer + 1], tokens[answer + 2]];
  if (!SUBJECTS.has(subject) || verb === undefined || !AUXILIARIES.has(verb.text)) return false;
  const last = third?.text === "not" && verb.after === "" ? third : verb;
  return /[.,;:!-]/.test(last.after);
}

/** "See this yellow tub?", "feel where it meets the nose?": nobody is asked anything but to look. */
function pointsAtIt(tokens: readonly Token[], first: number, end: number): boolean {
  if (tokens[end - 1]!.after !== "?") return false;
  return POINTS.at(tokens, first) !== null || POINTS.at(tokens, skipOpeners(tokens, first, end)) !== null;
}

/** "Which hand for the left side? Your right one.", "why do I look inside? Because ...": asked of nobody, and told in the same breath. */
function isOnesOwn(tokens: readonly Token[], first: number, end: number, breaks: ReadonlySet<number>): boolean {
  if (tokens[end - 1]!.after !== "?" || !goesOnTelling(tokens, end, breaks)) return false;
  const opener = skipOpeners(tokens, first, end);
  const behind = QUESTION_WORDS.at(tokens, opener)?.end;
  if (behind === undefined) return false;
  for (let place = behind; place < end; place += 1) {
    const { text } = tokens[place]!;
    if (THEIRS.has(text) || (AUXILIARIES.has(text) && !/^(i|we)$/.test(tokens[place + 1]?.text ?? ""))) return false;
  }
  return true;
}

/** Whether the next sentence is the same speaker's and asks nothing, of more than one word. */
function goesOnTelling(tokens: readonly Token[], from: number, breaks: ReadonlySet<number>): boolean {
  for (let place = from; place < tokens.length && (place === from || !breaks.has(place)); place += 1) {
    if (/^[.?!]$/.test(tokens[place]!.after)) return tokens[place]!.after !== "?" && place > from;
  }
  return false;
}
