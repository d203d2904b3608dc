import { wordWeight } from "../language/lexicon.ts";
import { findQuantities } from "../language/quantity.ts";
import { speechActs } from "../language/speech-act.ts";
import { speechPhrases } from "../language/speech-phrases.ts";
import { tokenise, type Token } from "../language/token.ts";
import { SURE } from "../matching/elicitation.ts";
import { beginsIn, meets } from "../station/span.ts";
import type { WordSpan } from "../station/types.ts";
import type { Context } from "./context.ts";
import { openingOf, sentenceAround } from "./replies.ts";
import type { Evidence, QuestionResult } from "./types.ts";

const DEFERRALS = speechPhrases("deferrals");
const AFFIRMATIONS = speechPhrases("affirmations");
const CONFIRMATIONS = speechPhrases("confirmations");
const TOPIC_CHANGES = speechPhrases("topic_changes");
const OPENERS = speechPhrases("openers");

/** What answers, puts off or passes over a question does so in the reply's first words. */
const REPLY_START = 45;
/** A yes, a no or a change of topic opens it. */
const FIRST_WORDS = 14;
/** A yes or a no is among its very first. */
const YES_OR_NO = 4;
/** Fewer words say nothing. */
const SOME_WORDS = 3;
/** A word of at least this weight tells what is talked about. */
const CONTENT_WEIGHT = 1;
const DENIES = /^(no|nope|nah|never|not|do|definitely)$/;
/** Behind words that put the question off only what is this surely said answers it. */
const SURE_ANSWER = 0.97;
/** Points back to what was asked. */
const POINTS_BACK = /^(it|that|this|they|those|these|you|he|she|because|either|both|only|just|then|when|if|once|as|until|about|usually|probably|normally|up)$/;

interface Answer {
  answer: Exclude<QuestionResult["answer"], "not-asked">;
  evidence: Evidence | null;
}

/**
 * How the candidate took a question: by what the reply says of the script's answer, then by how it opens. A reply that
 * says something else altogether has passed the question over.
 * @param question null for one that the script does not have.
 */
export function answerTo(context: Context, asked: WordSpan, reply: WordSpan | null, question: { id: string; answeredBy: readonly string[] } | null): Answer {
  if (reply === null) return { answer: "ignored", evidence: null };
  const opening = openingOf(context.station, reply);
  const start = { first: reply.first, end: Math.min(reply.end, reply.first + REPLY_START) };
  const says = (answer: Answer["answer"], span: WordSpan = opening): Answer => ({ answer, evidence: context.evidence(span) });
  const inReply = (span: WordSpan) => beginsIn(span, reply);
  const inStart = (span: WordSpan) => beginsIn(span, start);

  const unsafe = context.matches.unsafe.find((match) => match.verdict === "unsafe" && match.correctedBy === undefined && inStart(match.span));
  if (unsafe !== undefined) return says("incorrect", quoted(context, reply, unsafe.span));
  const its = question === null ? () => false : (match: { item: string }) => question.answeredBy.includes(match.item);
  const own = question === null ? [] : context.matches.answers.filter((match) => match.question === question.id && inReply(match.span));
  const elements = context.matches.elements.filter((match) => inReply(match.span));
  const wrong = [...elements.filter((match) => match.verdict === "wrong" && (its(match) || (question === null && match.span.first < opening.end))), ...own.filter(({ verdict }) => verdict === "wrong")];
  const right = [...elements.filter((match) => match.verdict === "right" && its(match)), ...own.filter(({ verdict }) => verdict === "right")];
  const last = (spans: { span: WordSpan }[]) => Math.max(-1, ...spans.map(({ span }) => span.first));
  if (wrong.length > 0 && last(wrong) > last(right)) return says("incorrect", quoted(context, reply, wrong[0]!.span));
  // "I'm not sure about that one, I'd look it up": words that happen to fit do not answer what is put off in so many words.
  const opened = tokensOf(context, opening).slice(0, FIRST_WORDS);
  const putOff = DEFERRALS.find(opened).length > 0;
  const answers = putOff ? right.filter((match) => !("confidence" in match) || match.confidence >= SURE_ANSWER) : right;
  if (answers.length > 0) return says("answered");
  // "And I hold it for two seconds?" "Exactly.": what the patient has wrong is told to be right.
  if (context.matches.patient.some((match) => match.affirmed === true && meets(match.span, asked))) return says("incorrect");
  return says(byItsOpening(context, asked, start, elements.some((match) => match.verdict === "right" && inStart(match.span)), question !== null));
}

/** The opening of the reply, or the sentence that the span stands in where that comes later. */
function quoted(context: Context, reply: WordSpan, span: WordSpan): WordSpan {
  const opening = openingOf(context.station, reply);
  return span.first < opening.end ? { first: opening.first, end: Math.max(opening.end, sentenceAround(context.station, span).end) } : sentenceAround(context.station, span);
}

/** What a reply does that says nothing of the script's answer. @param teaches whether it says something else that the rubric asks for. */
function byItsOpening(context: Context, asked: WordSpan, start: WordSpan, teaches: boolean, scripted: boolean): Answer["answer"] {
  const tokens = tokensOf(context, start);
  const first = tokens.slice(0, FIRST_WORDS);
  if (tokens.length === 0) return "ignored";
  const question = tokensOf(context, asked);
  const sentence = tokens.slice(0, 1 + tokens.findIndex(({ after }) => /[.!?]/.test(after)));
  // "Ten seconds. Is that the phone? I'll ask my colleague to get it.": what is put off behind an answer is something else.
  if (sentence.length > 0 && DEFERRALS.find(sentence).length === 0 && DEFERRALS.find(tokens).length > 0 && (saysYesOrNo(sentence) || givesNumber(question, sentence.slice(0, FIRST_WORDS)))) return "answered";
  if (DEFERRALS.find(first).length > 0) return "deferred";
  if (TOPIC_CHANGES.find(first).length > 0) return "ignored";
  const opens = afterOpeners(tokens);
  if (saysYesOrNo(tokens)) return "answered";
  if (DEFERRALS.find(tokens).length > 0) return "deferred";
  if (sharesContent(question, tokens) || givesNumber(question, first)) return "answered";
  const acts = speechActs(tokens, new Set());
  const told = acts.filter((act) => act === "tell").length;
  if (told < SOME_WORDS || (acts[acts.length - 1] !== "tell" && tokens.length < REPLY_START / 2)) return "ignored";
  // "Does it taste funny?" "Shake it well.": a yes or no is asked for, and something else is taught.
  if (!scripted && teaches && !asksYesOrNo(question)) return "answered";
  if (tokens[opens] !== undefined && POINTS_BACK.test(tokens[opens]!.text) && !(tokens[opens]!.text === "you" && teaches && GOES_ON.test(tokens[opens - 1]?.text ?? ""))) return "answered";
  return teaches ? "ignored" : "cannot-tell";
}

/** "So you take the cap off": the next step, no answer. */
const GOES_ON = /^(so|first|firstly|now|next|then|and|okay|right)$/;

/** Whether a reply opens with a yes or a no. */
function saysYesOrNo(tokens: readonly Token[]): boolean {
  const opening = tokens.slice(0, YES_OR_NO);
  return AFFIRMATIONS.find(opening).length > 0 || CONFIRMATIONS.find(opening).some(({ first, end }) => end - first > 1 || SURE.at(opening, first) !== null) || tokens.slice(0, afterOpeners(tokens) + 1).some(({ text }) => DENIES.test(text));
}

/** "How long?" "Ten seconds." */
const givesNumber = (question: readonly Token[], reply: readonly Token[]) => /^(how|when)$/.test(question[afterOpeners(question)]?.text ?? "") && findQuantities(reply).length > 0;

/** "Does it ...?", but not "is there anything I do first?", which asks for whatever there is. */
function asksYesOrNo(question: readonly Token[]): boolean {
  const opening = question[afterOpeners(question)]?.text ?? "";
  return /^(do|does|did|is|are|can|could|will|would|should|may|have|has)$/.test(opening) && !question.some(({ text }) => /^(any|anything|something|or|else)$/.test(text));
}

const tokensOf = (context: Context, { first, end }: WordSpan) => tokenise(context.station.transcript.words.slice(first, end).filter(({ kind }) => kind === "word").map(({ text }) => text));

/** Where a reply begins behind "um", "so", "well". */
function afterOpeners(tokens: readonly Token[]): number {
  let at = 0;
  for (let hit = OPENERS.at(tokens, at); hit !== null && hit.end < tokens.length; hit = OPENERS.at(tokens, at)) at = hit.end;
  return at;
}

export function sharesContent(question: readonly Token[], reply: readonly Token[]): boolean {
  const stems = new Set(question.filter((token) => wordWeight(token.stem) >= CONTENT_WEIGHT).map(({ stem }) => stem));
  return reply.some(({ stem }) => stems.has(stem));
}
