import { SPEECH, speechPhrases } from "../language/speech-phrases.ts";
import { phraseList } from "../language/phrase-set.ts";
import { tokenise, type Token } from "../language/token.ts";
import { beginsIn } from "../station/span.ts";
import { turnAt, turnsOf } from "../station/turns.ts";
import type { Station, Turn, WordSpan } from "../station/types.ts";
import type { CompiledElement } from "./compile.ts";
import { affirmsTheDenied, deniesTheDenied } from "./denied-after-all.ts";
import type { Stream } from "./stream.ts";
import { takenBackBehind, type Topic } from "./taken-back.ts";
import type { Elicitation, Match, QuestionMatch } from "./types.ts";

const CONFIRMATIONS = speechPhrases("confirmations");
const CORRECTIONS = speechPhrases("corrections");
const AFFIRMATIONS = speechPhrases("affirmations");
const OPENERS = speechPhrases("openers");
const STALLS = speechPhrases("stalls");
/** May stand before a yes or a no. */
export const HESITATION_WORDS: readonly string[] = ["um", "uh", "er", "erm", "oh", "ooh", "ah", "hmm", "mm", "look"];
const HESITATIONS = phraseList([...HESITATION_WORDS, "right"], { by: "text" });
/** "Right, so", "good luck" confirm nothing. */
export const SURE = phraseList(SPEECH.sure, { by: "text" });
/** "Very good", "well done": said of how it was told, not of each thing in it. */
const PRAISES = /^(very|well)$/;
const REPEAT_REQUESTS = speechPhrases("repeat_requests");

/** An answer stands within so many words of the start of the reply; what comes later was offered. */
const ANSWER_REACH = 60;
/** A confirmation or a correction opens the reply. */
const REACTION_REACH = 14;
/** The question that elicits stands at the end of the turn before. */
const QUESTION_REACH = 40;
/** "Yes" and "okay" are no statement: fewer words earn nothing. */
const FEWEST_WORDS = 3;

/** What the elicitation of a passage is read from. */
export interface Scene {
  station: Station;
  /** Turns inside the station, of known roles. */
  turns: Turn[];
  candidate: Stream;
  patient: Stream;
  examiner: Stream;
  questions: QuestionMatch[];
}

export function sceneOf(station: Station, streams: { candidate: Stream; patient: Stream; examiner: Stream }, questions: QuestionMatch[]): Scene {
  return { station, turns: turnsOf(station), ...streams, questions };
}

/** Tokens of a stream inside a span of words: places, end exclusive. */
export function tokensIn(stream: Stream, span: WordSpan): { first: number; end: number } {
  let first = 0;
  while (first < stream.tokens.length && stream.tokens[first]!.word < span.first) first += 1;
  let end = first;
  while (end < stream.tokens.length && stream.tokens[end]!.word < span.end) end += 1;
  return { first, end };
}

/** Whether a turn ends in a question. */
export function asks(stream: Stream, span: WordSpan): boolean {
  const { first, end } = tokensIn(stream, span);
  for (let place = Math.max(first, end - QUESTION_REACH); place < end; place += 1) if (stream.acts[place] !== "tell") return true;
  return false;
}

/** Whether a turn waits for a yes or a no: it asks so, or ends in what is put with a question mark ("it's only me?"), and not in "what if". */
export function waitsForYes(stream: Stream, span: WordSpan): boolean {
  const { first, end } = tokensIn(stream, span);
  for (let place = end - 1; place >= Math.max(first, end - QUESTION_REACH); place -= 1) if (stream.acts[place] !== "tell") return stream.acts[place] === "ask-closed";
  return end > first && stream.tokens[end - 1]!.after === "?";
}

/** Offered, after the patient's question, or after a prompt. */
export function elicitationOf(scene: Scene, element: CompiledElement, questionsFor: ReadonlySet<string>, span: WordSpan): { elicitation: Elicitation; elicitedBy?: WordSpan } {
  const place = turnAt(scene.turns, span);
  const turn = scene.turns[place];
  if (turn === undefined || element.kind !== "tell" || span.first - turn.first > ANSWER_REACH) return { elicitation: "offered" };
  const before = previousVoice(scene, place);
  if (before === undefined) return { elicitation: "offered" };
  const stream = before.role === "examiner" ? scene.examiner : scene.patient;
  if (before.role === "examiner") return asks(stream, before) ? { elicitation: "prompted", elicitedBy: spanOf(before) } : { elicitation: "offered" };
  const scripted = scene.questions.find((question) => questionsFor.has(question.question) && beginsIn(question.span, before));
  if (scripted !== undefined) return { elicitation: "after-question", elicitedBy: scripted.span };
  const { first, end } = tokensIn(stream, before);
  if (REPEAT_REQUESTS.find(stream.tokens, first, end).length > 0) return { elicitation: "after-question", elicitedBy: spanOf(before) };
  if (!asks(stream, before)) return { elicitation: "offered" };
  for (let k = first; k < end; k += 1) {
    if (element.anchors.has(stream.tokens[k]!.stem)) return { elicitation: "after-question", elicitedBy: spanOf(before) };
  }
  return { elicitation: "offered" };
}

/** What is said so soon in a reply answers the question, whatever words the patient asked in. */
const AT_ONCE = 15;

/**
 * "What else might it do to me?" "It can sting a bit.": what a reply to a question says first, and what it goes on to say
 * of the same item, came after the question, whether or not the two have a word in common.
 * @param asked the stretches in which the patient asks.
 */
export function afterQuestions(scene: Scene, found: readonly Match[], asked: readonly WordSpan[], tells: (match: Match) => boolean): Match[] {
  const answering = new Map<Match, WordSpan>();
  for (const span of asked) {
    const place = turnAt(scene.turns, span);
    const reply = scene.turns[place + 1];
    if (place < 0 || reply?.role !== "candidate" || reply.first - span.end > QUESTION_REACH) continue;
    const inside = found.filter((match) => match.span.first >= reply.first && match.span.first < Math.min(reply.end, reply.first + ANSWER_REACH) && tells(match)).sort((a, b) => a.span.first - b.span.first);
    const first = inside[0];
    if (first === undefined || first.span.first - reply.first >= AT_ONCE || movesOn(scene, reply.first, first.span.first)) continue;
    for (const match of inside) if (match.item === first.item) answering.set(match, span);
  }
  return found.map((match) => {
    const span = answering.get(match);
    return span === undefined || match.elicitation !== "offered" ? match : { ...match, elicitation: "after-question", elicitedBy: span };
  });
}

/** "That's why. And then you ...": what a new sentence adds is another matter. */
const ADDS = /^(and|now|next|then)\b/i;

function movesOn(scene: Scene, from: number, to: number): boolean {
  const { words } = scene.station.transcript;
  for (let place = from + 1; place <= to; place += 1) if (/[.!]$/.test(words[place - 1]!.text) && ADDS.test(words[place]!.text)) return true;
  return false;
}

const spanOf = ({ first, end }: Turn): WordSpan => ({ first, end });

/** The patient's or examiner's turn that the candidate is replying to, past a mere "okay" of their own. */
function previousVoice(scene: Scene, place: number): Turn | undefined {
  const before = scene.turns[place - 1];
  return before !== undefined && (before.role === "patient" || before.role === "examiner") ? before : undefined;
}

/** How the candidate takes what the patient said: the first words of the reply. */
export function reactionTo(scene: Scene, span: WordSpan): { kind: "confirms" | "corrects" | "none"; span: WordSpan } | null {
  const place = turnAt(scene.turns, span);
  if (place < 0) return null;
  const reply = scene.turns.slice(place + 1).find((turn) => turn.role === "candidate");
  if (reply === undefined) return null;
  const { first, end } = tokensIn(scene.candidate, reply);
  const reach = Math.min(end, first + REACTION_REACH);
  const opening = { first: reply.first, end: Math.min(reply.end, (scene.candidate.tokens[reach - 1]?.word ?? reply.end - 1) + 1) };
  if (CORRECTIONS.find(scene.candidate.tokens, first, reach).length > 0) return { kind: "corrects", span: opening };
  return { kind: CONFIRMATIONS.find(scene.candidate.tokens, first, reach).length > 0 ? "confirms" : "none", span: opening };
}

/** How surely the reply says yes: "yeah" may only say that one is listening. */
export interface Yes {
  /** The opening of the reply. */
  span: WordSpan;
  kind: "yes" | "confirms";
  /** "Yes, that's right": a yes that is confirmed in the same breath. */
  sure?: true;
  /** "It is", "every time, yes": a yes to the last thing asked alone. */
  toTheLast?: true;
}

/**
 * Whether the candidate says yes to what the patient has just asked or said, and nothing against it. The yes opens the
 * reply ("good question, um, yes"): "make sure she gets her own" says none.
 * @param topic what it is about: "yes, people ask me that; it's only for you" takes the yes back.
 */
export function saysYesTo(scene: Scene, said: WordSpan, topic: Topic): Yes | null {
  const place = turnAt(scene.turns, said);
  const reply = place < 0 ? undefined : scene.turns.slice(place + 1).find((turn) => turn.role === "candidate");
  if (reply === undefined) return null;
  const { first, end } = tokensIn(scene.candidate, reply);
  const { tokens } = scene.candidate;
  const { first: from, end: to } = tokensIn(scene.patient, said);
  const asked = new Set(scene.patient.tokens.slice(from, to).map(({ stem }) => stem));
  const denied = deniesTheDenied(scene.patient, from, to, tokens, first, Math.min(end, first + REACTION_REACH));
  const opening = { first: reply.first, end: tokens[Math.min(end, first + REACTION_REACH) - 1]!.word + 1 };
  if (denied !== null) return { span: opening, kind: "confirms", toTheLast: true };
  const yes = openingYes(tokens, first, Math.min(end, first + REACTION_REACH), asked);
  if (yes === null || affirmsTheDenied(scene.patient, from, to, tokens, first, Math.min(end, first + REACTION_REACH))) return null;
  for (let k = yes.end; k < Math.min(end, yes.end + REFUSED_WITHIN); k += 1) if (/^(no|not|never|but|cannot|until|till|except|apart|bar)$/.test(tokens[k]!.text) && !NO_DENIAL.test(`${tokens[k]!.text} ${tokens[k + 1]?.text ?? ""}`) && !forbidsOther(tokens, k, asked)) return null;
  if (takenBackBehind(scene.candidate, yes.end, topic, { editing: false }) !== null) return null;
  return { span: opening, kind: yes.kind, ...(yes.sure && { sure: true }), ...(yes.toTheLast && { toTheLast: true }) };
}

/** The same, where the candidate does not correct what was said. */
export function yesWithoutCorrection(scene: Scene, said: WordSpan, topic: Topic): Yes | null {
  const yes = saysYesTo(scene, said, topic);
  return yes !== null && reactionTo(scene, said)?.kind !== "corrects" ? yes : null;
}

/** "Yes, don't waste it" forbids something else than what was asked; "yes, but don't" and "don't use it" forbid that. */
function forbidsOther(tokens: readonly Token[], place: number, asked: ReadonlySet<string>): boolean {
  const verb = tokens[place + 1];
  return tokens[place]!.text === "not" && tokens[place - 1]?.text === "do" && tokens[place]!.after === "" && verb !== undefined && !asked.has(verb.stem) && !/^(do|you|ever|please|that|it)$/.test(verb.text);
}

/** "Yes, but", "definitely not": so soon behind a yes it is none. */
const REFUSED_WITHIN = 4;
const NO_DENIAL = /^(no (problem|worries|trouble|harm|reason|bother)|not a)$/;
/** A name or "ha" may stand before the yes. */
const MOST_STRANGE = 2;
/** Between "you can" and the verb it leaves out or takes up: "you can certainly". */
const SAYS_HOW = /^(certainly|definitely|absolutely|of|course|just|both|all|always|indeed|do|that|it|yes|if)$/;

/** "That's the one" confirms; "that's the one that frightens me" and "that's the way he is" do not. */
const pointsOn = (tokens: readonly Token[], end: number) => /^(one|way|rule|idea)$/.test(tokens[end - 1]!.text) && tokens[end - 2]?.text === "the" && tokens[end - 1]!.after === "" && end < tokens.length;

/** "Exactly", "that's right": more than that one is listening. */
function isSure(tokens: readonly Token[], place: number): boolean {
  const hit = CONFIRMATIONS.at(tokens, place);
  if (hit === null || pointsOn(tokens, hit.end)) return false;
  return hit.end - place > 1 ? !PRAISES.test(tokens[place]!.text) : SURE.at(tokens, place) !== null;
}

/** The yes that a stretch opens with, behind what wins time. @param asked stems of what it says yes to: "you can share it", but not "you can buy her one". */
function openingYes(tokens: readonly Token[], first: number, end: number, asked: ReadonlySet<string>): { end: number; kind: Yes["kind"]; sure?: true; toTheLast?: true } | null {
  let strange = 0;
  for (let place = first; place < end; ) {
    const { text, after } = tokens[place]!;
    if (/^(no|nope|nah|not|never)$/.test(text)) return null;
    const taken = takesUp(tokens, place, end);
    if (taken !== null) return { end: taken, kind: "confirms", toTheLast: true };
    const confirms = CONFIRMATIONS.at(tokens, place);
    if (confirms !== null && isSure(tokens, place) && tokens[confirms.end]?.text !== "not") return { end: confirms.end, kind: "confirms" };
    const yes = AFFIRMATIONS.at(tokens, place);
    if (yes !== null) return tokens[yes.end]?.text === "not" || !allows(tokens, yes.end, end, asked) ? null : { end: yes.end, kind: /^(yes|yeah|yep|sure|aye)$/.test(text) ? "yes" : "confirms", ...((isSure(tokens, yes.end) || bidsSo(tokens, yes.end)) && { sure: true }) };
    const skipped = STALLS.at(tokens, place) ?? OPENERS.at(tokens, place) ?? HESITATIONS.at(tokens, place);
    if (skipped !== null) place = skipped.end;
    else if (after !== "" && strange < MOST_STRANGE) {
      strange += 1;
      place += 1;
    } else return null;
  }
  return null;
}

/** "Yes, do that." */
const bidsSo = (tokens: readonly Token[], place: number) => tokens[place]?.text === "do" && /^(that|so)$/.test(tokens[place + 1]?.text ?? "") && (place + 2 >= tokens.length || tokens[place + 1]!.after !== "");

const TAKEN_UP = /^(it|they|he|she|that|this|those|you|i|we|there)$/;
const VERB_ALONE = /^(is|are|was|do|does|did|can|could|will|would|should|may|must|have|has)$/;
const YES = /^(yes|yeah|yep|aye|indeed|sure)$/;
const STRESSES = phraseList(["of course", "surely", "certainly", "definitely", "alright", "all right", "so"], { by: "text" });
/** So long is a sentence that a yes closes. */
const LONGEST_BEFORE_YES = 8;

/**
 * Where a yes ends that takes up the question's verb ("it is", "they can, yes"), or that closes its sentence ("gel's fine,
 * yes"); null where there is none.
 */
function takesUp(tokens: readonly Token[], place: number, end: number): number | null {
  if (tokens[place]!.text === "if") return yesInACase(tokens, place, end);
  if (place + 1 < end && TAKEN_UP.test(tokens[place]!.text) && VERB_ALONE.test(tokens[place + 1]!.text) && standsAlone(tokens, place)) return place + 2;
  for (let k = place; k < Math.min(end, place + LONGEST_BEFORE_YES); k += 1) {
    // "Straight away's no problem, yeah."
    if (/^(no|not|never|nothing|nobody|none|cannot|nor)$/.test(tokens[k]!.text) && !NO_DENIAL.test(`${tokens[k]!.text} ${tokens[k + 1]?.text ?? ""}`)) return null;
    if (k > place && YES.test(tokens[k]!.text) && tokens[k - 1]!.after === "," && /^[.!]$/.test(tokens[k]!.after)) return k + 1;
    if (/[.!?]/.test(tokens[k]!.after)) return null;
  }
  return null;
}

/** Whether a subject and its verb say nothing else: "it is,", "you do indeed", "he can of course". */
function standsAlone(tokens: readonly Token[], place: number): boolean {
  const verb = tokens[place + 1]!;
  if (verb.after === "") return YES.test(tokens[place + 2]?.text ?? "") || STRESSES.at(tokens, place + 2) !== null;
  // "They do?" and "you do, do you?" only wonder at it.
  return verb.after !== "?" && !(tokens[place + 2]?.text === verb.text && tokens[place + 3]?.text === tokens[place]!.text);
}

const LEFT_OPEN = speechPhrases("cases_left_open");
/** Of a case so many words. */
const LONGEST_CASE = 9;

/** "If you're really struggling, then yes": said to one who struggles it is a yes. */
function yesInACase(tokens: readonly Token[], place: number, end: number): number | null {
  for (let k = place + 1; k < Math.min(end, place + LONGEST_CASE); k += 1) {
    const { text } = tokens[k]!;
    if (LEFT_OPEN.at(tokens, k) !== null || /[.!?]/.test(tokens[k - 1]!.after)) return null;
    if (YES.test(text) && (tokens[k - 1]!.after === "," || tokens[k - 1]!.text === "then")) return k + 1;
  }
  return null;
}

/** Whether "you can" leaves its verb out or takes up that of the question; any other yes stands for itself. */
function allows(tokens: readonly Token[], behind: number, end: number, asked: ReadonlySet<string>): boolean {
  if (tokens[behind - 1]!.text !== "can") return true;
  let k = behind;
  if (tokens[k - 1]!.after !== "") return true;
  while (k < end && SAYS_HOW.test(tokens[k]!.text)) {
    if (tokens[k]!.after !== "") return true;
    k += 1;
  }
  return k >= end || asked.has(tokens[k]!.stem);
}

/** What earns by the patient's words must fit them closely: they tell of much else when asked what they know. */
const CONFIRMED_ACCEPTED = 0.7;

/**
 * What the patient said rightly and the candidate, having asked, confirmed. A bare yes to a leading question is none:
 * the words must be the patient's own.
 */
export function confirmed(scene: Scene, patient: readonly Match[]): Match[] {
  return patient.flatMap((match): Match[] => {
    if (match.verdict !== "right" || match.score < CONFIRMED_ACCEPTED || spokenWords(scene, match.span) < FEWEST_WORDS) return [];
    const place = turnAt(scene.turns, match.span);
    const before = scene.turns[place - 1];
    if (before?.role !== "candidate" || !asks(scene.candidate, before)) return [];
    const reaction = reactionTo(scene, match.span);
    if (reaction?.kind !== "confirms") return [];
    return [{ ...match, elicitation: "confirmed", elicitedBy: spanOf(before) }];
  });
}

function spokenWords(scene: Scene, span: WordSpan): number {
  return tokenise(scene.station.transcript.words.slice(span.first, span.end).map((word) => word.text)).length;
}
