import { OUTRIGHT_ENDS } from "./outright.ts";
import { SPEECH, speechPhrases } from "./speech-phrases.ts";
import type { Token } from "./token.ts";

export const AUXILIARIES = new Set(SPEECH.auxiliaries);
export const SUBJECTS = new Set(SPEECH.subjects);
export const QUESTION_WORDS = speechPhrases("question_words");
const NOT_QUESTIONS = speechPhrases("not_questions");
const OPENERS = speechPhrases("openers");
const REQUESTS = speechPhrases("requests");
const INFORMATION = speechPhrases("information");
export const INDIRECT = speechPhrases("indirect");
export const OPEN = speechPhrases("open");

/** What saying this does: tells (states, instructs, requests an action), or asks. */
export type SpeechAct = "tell" | "ask-closed" | "ask-open";

/** What opens here: a question of either kind, a request in the form of one (which tells), or nothing. */
export function questionAt(tokens: readonly Token[], place: number): SpeechAct | null {
  const here = tokens[place];
  const next = tokens[place + 1];
  if (here === undefined) return null;
  const indirect = INDIRECT.at(tokens, place);
  const request = REQUESTS.at(tokens, place);
  // "Can I ask you to keep this card" requests; "can I ask" asks.
  if (indirect !== null && here.text !== "any" && (request === null || request.end <= indirect.end)) return openBehind(tokens, place, indirect.end);
  if (request !== null) {
    let verb = request.end;
    while (/^(please|just|maybe|now|then|first|quickly|kindly|also|to)$/.test(tokens[verb]?.text ?? "")) verb += 1;
    return INFORMATION.at(tokens, verb) !== null ? openBehind(tokens, place, verb) : "tell";
  }
  if (NOT_QUESTIONS.at(tokens, place) !== null) return null;
  // "Have it every evening", "had those out" tell; nobody asks "have it".
  const told = /^(have|had)$/.test(here.text) && /^(it|that|this|these|those)$/.test(next?.text ?? "");
  if (!told && AUXILIARIES.has(here.text) && next !== undefined && (SUBJECTS.has(next.text) || (next.text === "not" && SUBJECTS.has(tokens[place + 2]?.text ?? "")))) {
    return openBehind(tokens, place, place + 2);
  }
  const behind = QUESTION_WORDS.at(tokens, place)?.end;
  if (behind === undefined) return null;
  if (/^(what|how) about$/.test(`${here.text} ${next?.text}`)) return "ask-open";
  // "When he is howling", "where your glasses would sit": the subject stands before the verb.
  if (SUBJECTS.has(tokens[behind]?.text ?? "")) return null;
  for (let k = behind; k < Math.min(tokens.length - 1, behind + 4); k += 1) {
    if (AUXILIARIES.has(tokens[k]!.text) && (k > behind || SUBJECTS.has(tokens[k + 1]!.text) || /^(is|are|was|were|do|does|did)$/.test(tokens[k]!.text))) return "ask-open";
  }
  // "Which bit of the finger are you going to prick": the thing asked about takes more words.
  for (let k = behind + 4; k < Math.min(tokens.length - 1, behind + NAMED_WITHIN); k += 1) {
    if (tokens[k - 1]!.after !== "") return null;
    if (AUXILIARIES.has(tokens[k]!.text) && /^(you|he|she|they|we)$/.test(tokens[k + 1]!.text)) return "ask-open";
  }
  return null;
}

/** What is asked about is named within so many words behind "which" or "what". */
const NAMED_WITHIN = 8;

/** Verbs whose "what" or "how" opens the floor: "can you tell me how". After "do you know how" a yes will do. */
const OPENS_THE_FLOOR = /^(tell|explain|describe|show|say|talk)$/;

/** Whether what asks at a token, in words that end before `behind`, opens the floor or wants a yes or no. */
export function openBehind(tokens: readonly Token[], place: number, behind: number): SpeechAct {
  if (OPEN.at(tokens, place) !== null) return "ask-open";
  for (let k = behind; k < Math.min(tokens.length, behind + 3); k += 1) {
    if (!/^(what|how|why)$/.test(tokens[k]!.text) || OPEN.at(tokens, k) === null) continue;
    const before = tokens[k - 1]?.text ?? "";
    return before !== "know" && (k === behind || OPENS_THE_FLOOR.test(before)) ? "ask-open" : "ask-closed";
  }
  return "ask-closed";
}

/** Behind what opens a sentence before it says or asks anything: "so, and". */
export function skipOpeners(tokens: readonly Token[], place: number, end: number): number {
  let at = place;
  for (let hit = OPENERS.at(tokens, at); hit !== null && hit.end < end; hit = OPENERS.at(tokens, at)) at = hit.end;
  return at;
}

/** "Does going uphill tire you": nobody tells so, but that it "does its job". */
export function asksOfAThing(tokens: readonly Token[], place: number, end: number): boolean {
  return /^(does|did)$/.test(tokens[place]!.text) && place + 2 < end && !/^(its|his|her|my|wonders|nothing|not|more|less|well|good|no|all|everything)$/.test(tokens[place + 1]!.text);
}

/** Whether a question about something of the patient's opens here; a case named before it is asked with it: "When you brush your teeth, are your gums bleeding?" */
export function asksOfTheirs(tokens: readonly Token[], place: number): boolean {
  return /^(is|are|was|were|do|does|did|has|have)$/.test(tokens[place]!.text) && /^(your|his|her|their|the)$/.test(tokens[place + 1]?.text ?? "");
}

/** In mid stretch "what" asks with a subject behind its verb ("what did she say"); "read what is on the box" does not ask. */
export function whatAsks(tokens: readonly Token[], place: number): boolean {
  for (let k = place + 1; k < Math.min(tokens.length, place + 4); k += 1) {
    if (/^(do|does|did|about)$/.test(tokens[k]!.text) || (AUXILIARIES.has(tokens[k]!.text) && SUBJECTS.has(tokens[k + 1]?.text ?? ""))) return true;
  }
  return false;
}

/** Words behind which "what you", "do you", "can I" depend on a clause before. */
export function dependent(before: string): boolean {
  return OUTRIGHT_ENDS.has(before) || /^(that|know|see|and|to|as|than|if|when|what|how|where|why|who|which|you|i|we|not|never|only|so|explain|tell|show|understand|about|of|whatever|before|after|because|all|everything|anything|something|time|way|day|the|will|would|can|could|should|must|may|might|neither|nor)$/.test(before);
}

/** So near behind it the verb of what "what ..." is follows. */
const CLEFT_REACH = 9;

/** "What would worry me is if", "what is inside it gets": a thing is named, and the rest says what it is. */
export function tellsWhat(tokens: readonly Token[], place: number, end: number): boolean {
  if (tokens[place]!.text !== "what" || !AUXILIARIES.has(tokens[place + 1]?.text ?? "") || SUBJECTS.has(tokens[place + 2]?.text ?? "")) return false;
  if (WHERE_IT_IS.test(tokens[place + 2]?.text ?? "")) return true;
  for (let k = place + 3; k < Math.min(end, place + CLEFT_REACH); k += 1) {
    if (tokens[k - 1]!.after !== "") return false;
    if (/^(is|are|was|were)$/.test(tokens[k]!.text) && !SUBJECTS.has(tokens[k + 1]?.text ?? "")) return true;
  }
  return false;
}

const WHERE_IT_IS = /^(in|inside|on|under|written|printed|not)$/;
