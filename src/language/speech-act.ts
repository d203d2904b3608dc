import { BETWEEN_STATEMENTS, SUPPOSES } from "./clause.ts";
import { supposesByOrder } from "./inverted-condition.ts";
import { OUTRIGHT_ENDS } from "./outright.ts";
import { SPEECH, speechPhrases } from "./speech-phrases.ts";
import type { Token } from "./token.ts";

const AUXILIARIES = new Set(SPEECH.auxiliaries);
const SUBJECTS = new Set(SPEECH.subjects);
const QUESTION_WORDS = speechPhrases("question_words");
const NOT_QUESTIONS = speechPhrases("not_questions");
const OPENERS = speechPhrases("openers");
const TAGS = speechPhrases("tags");
const LEADING_TAGS = speechPhrases("leading_tags");
const REQUESTS = speechPhrases("requests");
const INFORMATION = speechPhrases("information");
const INDIRECT = speechPhrases("indirect");
const OPEN = speechPhrases("open");
const ASKED_OF_ONESELF = speechPhrases("asked_of_oneself");
const ASKS_WHETHER_KNOWN = speechPhrases("asks_whether_known");
const POINTS = speechPhrases("points");
const THEIRS = new Set(SPEECH.theirs);
const STRONG = speechPhrases("strong_openings");

/** What saying this does: tells (states, instructs, requests an action), or asks. */
export type SpeechAct = "tell" | "ask-closed" | "ask-open";

/** A question without a question mark ends after so many tokens at the latest. */
const LONGEST_QUESTION = 22;

/**
 * The speech act of every token, by sentence.
 * @param breaks token positions before which a sentence or turn ends, whatever the punctuation.
 */
export function speechActs(tokens: readonly Token[], breaks: ReadonlySet<number>): SpeechAct[] {
  const acts: SpeechAct[] = tokens.map(() => "tell");
  let first = 0;
  for (let place = 1; place <= tokens.length; place += 1) {
    const ended = place === tokens.length || breaks.has(place) || /^[.?!]$/.test(tokens[place - 1]!.after);
    if (!ended) continue;
    markSentence(tokens, first, place, acts);
    if (pointsAtIt(tokens, first, place) || (place < tokens.length && !breaks.has(place) && (answersItself(tokens, first, place) || isOnesOwn(tokens, first, place, breaks)))) acts.fill("tell", first, place);
    first = place;
  }
  return acts;
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

function markSentence(tokens: readonly Token[], first: number, end: number, acts: SpeechAct[]): void {
  const marked = tokens[end - 1]?.after === "?";
  if (marked && endsInLeadingTag(tokens, first, end)) {
    for (let k = first; k < end; k += 1) acts[k] = "ask-closed";
    return;
  }
  const body = marked ? withoutTag(tokens, first, end) : end;
  const isQuestion = marked && body === end;
  // "I'd like to go through it with you, is that okay?": what goes before is told, the tag itself asks.
  if (end - body >= ASKING_TAG) acts.fill("ask-closed", body, end);
  let found = false;
  for (let place = first; place < body; place += 1) {
    const atStart = place === first || startsAnew(tokens, place, first);
    if (!atStart || (!marked && supposesByOrder(tokens, skipOpeners(tokens, place, body)))) continue;
    const opener = skipOpeners(tokens, place, body);
    // "One, no wait, what does it say, two": nobody else is asked, and what follows is told.
    const aside = ASKED_OF_ONESELF.at(tokens, opener);
    if (aside !== null && opener > first && aside.end < body) {
      place = aside.end - 1;
      continue;
    }
    if (isQuestion && place > first && asksOfTheirs(tokens, opener) && opensACase(tokens[skipOpeners(tokens, first, body)]!.text)) {
      acts.fill("ask-closed", first, body);
      return;
    }
    // "And your birthday please": the opener may be part of it.
    const act = questionAt(tokens, opener) ?? (place === first && asksOfAThing(tokens, opener, body) ? "ask-closed" : null) ?? (opener > place && INDIRECT.at(tokens, place) !== null ? openBehind(tokens, place, place + 1) : null);
    if (act === null || (!marked && (tellsWhat(tokens, opener, body) || isTag(tokens, opener, first)))) continue;
    found = true;
    if (act === "tell") continue;
    const stop = isQuestion ? body : Math.min(body, opener + LONGEST_QUESTION, nextStart(tokens, opener + 2, body));
    for (let k = opener; k < stop; k += 1) acts[k] = act;
    place = stop - 1;
  }
  // "Any allergies?", "And your date of birth?", "You shake it first?"
  if (isQuestion && !found) {
    // "Anything from the chemist, the health shop?" lists what is asked for.
    const lists = /^(any|anything|anybody|anyone|other)$/.test(tokens[skipOpeners(tokens, first, body)]!.text);
    const last = lists ? first : lastPart(tokens, first, body);
    // "And once you're better, you'll keep on with it?" asks the whole of it; "press it, and then?" only its end.
    const from = /^(you|it|we|they|he|she)$/.test(tokens[last]!.text) && body - last > 2 ? first : last;
    const open = OPEN.at(tokens, skipOpeners(tokens, from, body)) !== null;
    for (let k = from; k < body; k += 1) acts[k] = open ? "ask-open" : "ask-closed";
  }
}

/** A tag of so many words is a question of its own; "okay?" and "all right?" only hold the listener. */
const ASKING_TAG = 3;

/** Cuts "okay?", "does that make sense?" from behind a statement; a sentence that is all tag stays whole. */
function withoutTag(tokens: readonly Token[], first: number, end: number): number {
  for (let place = Math.max(first + 1, end - 5); place < end; place += 1) {
    const hit = TAGS.at(tokens, place);
    if (hit === null || hit.end !== end) continue;
    const before = tokens[place - 1]!;
    if (before.after === "," || place - first >= 4) return place;
  }
  return end;
}

/** Behind a tag in mid-sentence at most so many words are asked with it. */
const BEHIND_A_TAG = 9;

/** Whether "..., don't you?" makes a question of the statement before it, and "..., don't you, not just at first?" of both. */
function endsInLeadingTag(tokens: readonly Token[], first: number, end: number): boolean {
  for (let place = Math.max(first + 3, end - BEHIND_A_TAG - 3); place < end; place += 1) {
    const tag = LEADING_TAGS.at(tokens, place);
    if (tag !== null && tag.end < end && end - tag.end <= BEHIND_A_TAG && tokens[place - 1]!.after === "," && tokens[tag.end - 1]!.after === "," && !/^(and|then|so|but|okay|right|because)$/.test(tokens[tag.end]!.text)) return true;
  }
  for (let place = Math.max(first + 1, end - 5); place < end; place += 1) {
    if (LEADING_TAGS.at(tokens, place)?.end === end && tokens[place - 1]!.after === ",") return true;
  }
  return false;
}

function skipOpeners(tokens: readonly Token[], place: number, end: number): number {
  let at = place;
  for (let hit = OPENERS.at(tokens, at); hit !== null && hit.end < end; hit = OPENERS.at(tokens, at)) at = hit.end;
  return at;
}

/** In speech without punctuation a question may begin in mid stretch: behind an opener, a comma or a short reply. */
function startsAnew(tokens: readonly Token[], place: number, first: number): boolean {
  const before = tokens[place - 1]!;
  if (/^[,;:-]$/.test(before.after)) return true;
  if (place - first < 2) return false;
  if (/^(so|and|but|okay|now|great|perfect|alright|lovely)$/.test(before.text)) return true;
  // Two strong signs at once: "... fever do you have any", "... pharmacist can i check your name".
  return STRONG.at(tokens, place) !== null && asks(questionAt(tokens, place)) && !dependent(before.text) && (tokens[place]!.text !== "what" || whatAsks(tokens, place));
}

function asks(act: SpeechAct | null): boolean {
  return act === "ask-closed" || act === "ask-open";
}

/** In mid stretch "what" asks with a subject behind its verb ("what did she say"); "read what is on the box" does not ask. */
function whatAsks(tokens: readonly Token[], place: number): boolean {
  for (let k = place + 1; k < Math.min(tokens.length, place + 4); k += 1) {
    if (/^(do|does|did|about)$/.test(tokens[k]!.text) || (AUXILIARIES.has(tokens[k]!.text) && SUBJECTS.has(tokens[k + 1]?.text ?? ""))) return true;
  }
  return false;
}

/** Words behind which "what you", "do you", "can I" depend on a clause before. */
function dependent(before: string): boolean {
  return OUTRIGHT_ENDS.has(before) || /^(that|know|see|and|to|as|than|if|when|what|how|where|why|who|which|you|i|we|not|never|only|so|explain|tell|show|understand|about|of|whatever|before|after|because|all|everything|anything|something|time|way|day|the|will|would|can|could|should|must|may|might|neither|nor)$/.test(before);
}

/** So near behind it the verb of what "what ..." is follows. */
const CLEFT_REACH = 9;

/** "What would worry me is if", "what is inside it gets": a thing is named, and the rest says what it is. */
function tellsWhat(tokens: readonly Token[], place: number, end: number): boolean {
  if (tokens[place]!.text !== "what" || !AUXILIARIES.has(tokens[place + 1]?.text ?? "") || SUBJECTS.has(tokens[place + 2]?.text ?? "")) return false;
  if (WHERE_IT_IS.test(tokens[place + 2]?.text ?? "")) return true;
  for (let k = place + 3; k < Math.min(end, place + CLEFT_REACH); k += 1) {
    if (tokens[k - 1]!.after !== "") return false;
    if (/^(is|are|was|were)$/.test(tokens[k]!.text) && !SUBJECTS.has(tokens[k + 1]?.text ?? "")) return true;
  }
  return false;
}

const WHERE_IT_IS = /^(in|inside|on|under|written|printed|not)$/;

/** So far behind a statement its tag may stand. */
const TAG_REACH = 12;

/** "It can't get through, can it": a verb taken up again with a pronoun asks for no more than a nod. */
function isTag(tokens: readonly Token[], place: number, first: number): boolean {
  const verb = tokens[place]!.text;
  const denied = tokens[place + 1]?.text === "not";
  const subject = tokens[place + (denied ? 2 : 1)];
  if (place === first || !AUXILIARIES.has(verb) || !/^(it|he|she|they|we|there)$/.test(subject?.text ?? "")) return false;
  // "Three months, is it, no": speakers ask themselves.
  if (tokens[place - 1]!.after === "," && subject!.after === "," && /^(no|yes|yeah|well|um|uh|er|erm|let|hang|i)$/.test(tokens[place + (denied ? 3 : 2)]?.text ?? "")) return true;
  for (let k = Math.max(first, place - TAG_REACH); k < place - 1; k += 1) {
    if (tokens[k]!.text === verb && (tokens[k + 1]!.text === "not") !== denied) return true;
  }
  return false;
}

function nextStart(tokens: readonly Token[], place: number, end: number): number {
  for (let k = place; k < end; k += 1) {
    if (/^[,;:-]$/.test(tokens[k - 1]!.after)) {
      if (/^(so|and|but|okay|i|you|because|just|well|anyway)$/.test(tokens[k]!.text)) return k;
    } else if (breaksOff(tokens, k)) return k;
  }
  return end;
}

/** Without punctuation a question is over where something else begins: "do you have any allergies okay so this is". */
function breaksOff(tokens: readonly Token[], place: number): boolean {
  const here = tokens[place]!.text;
  const next = tokens[place + 1]?.text ?? "";
  if (here === "but" || here === "anyway" || here === "because") return true;
  if (here === "sorry") return next === "i";
  // "Are you Robin | I'm Shay, I'm the pharmacist".
  if (here === "i" && next === "am" && !dependent(tokens[place - 1]?.text ?? "")) return true;
  if (here === "so") return /^(i|you|we|it|its|he|she|this|these|the|what|let|if|when|first)$/.test(next);
  // "Is it one tablet | no so it's four of them": what was asked in another voice, answered.
  if (/^(no|nope|yes|yeah)$/.test(here)) return /^(so|i|it|its|you|we|that|they|these|this|just|not|never)$/.test(next);
  if (BETWEEN_STATEMENTS.has(here) || here === "great") return /^(so|i|you|we|then|now|well|let|this|these|it)$/.test(next);
  // "What might you notice | your mouth might feel dry".
  return /^(your|the|his|her)$/.test(here) && /^(might|will|may|should|must)$/.test(tokens[place + 2]?.text ?? "") && !/^(if|when|how|what|where|why|that|think|know|whether|in|on|of|to|for|with|at)$/.test(tokens[place - 1]!.text);
}

function lastPart(tokens: readonly Token[], first: number, end: number): number {
  for (let k = end - 2; k > first; k -= 1) if (/^[,;:-]$/.test(tokens[k]!.after)) return k + 1;
  return first;
}

/** "Does going uphill tire you": nobody tells so, but that it "does its job". */
function asksOfAThing(tokens: readonly Token[], place: number, end: number): boolean {
  return /^(does|did)$/.test(tokens[place]!.text) && place + 2 < end && !/^(its|his|her|my|wonders|nothing|not|more|less|well|good|no|all|everything)$/.test(tokens[place + 1]!.text);
}

/** Whether a question about something of the patient's opens here; a case named before it is asked with it: "When you brush your teeth, are your gums bleeding?" */
function asksOfTheirs(tokens: readonly Token[], place: number): boolean {
  return /^(is|are|was|were|do|does|did|has|have)$/.test(tokens[place]!.text) && /^(your|his|her|their|the)$/.test(tokens[place + 1]?.text ?? "");
}

const opensACase = (text: string) => SUPPOSES.has(text) || /^(before|after|while|since|until|till)$/.test(text);

/** What opens here: a question of either kind, a request in the form of one (which tells), or nothing. */
function questionAt(tokens: readonly Token[], place: number): SpeechAct | null {
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

function openBehind(tokens: readonly Token[], place: number, behind: number): SpeechAct {
  if (OPEN.at(tokens, place) !== null) return "ask-open";
  for (let k = behind; k < Math.min(tokens.length, behind + 3); k += 1) {
    if (!/^(what|how|why)$/.test(tokens[k]!.text) || OPEN.at(tokens, k) === null) continue;
    const before = tokens[k - 1]?.text ?? "";
    return before !== "know" && (k === behind || OPENS_THE_FLOOR.test(before)) ? "ask-open" : "ask-closed";
  }
  return "ask-closed";
}
