import { speechPhrases } from "../language/speech-phrases.ts";
import { tokenise } from "../language/token.ts";
import { sameElement } from "../matching/same-element.ts";
import type { Match, Telling } from "../matching/types.ts";
import { beginsIn, meets } from "../station/span.ts";
import type { WordSpan } from "../station/types.ts";
import { turnsOf } from "../station/turns.ts";
import type { Context } from "./context.ts";
import type { JudgedItem } from "./items.ts";
import { patientAfter, replyTo, sentenceAround } from "./replies.ts";
import type { Evidence, TeachBackResult } from "./types.ts";

type TeachBackError = TeachBackResult["errors"][number];

const CORRECTIONS = speechPhrases("corrections");
/** Fewer words are an "okay", no teach-back. */
const SOME_WORDS = 5;
/** The telling starts within so many words of the request. */
const TELLING_REACH = 80;
/** A correction opens the reply: its cue and the thing put right stand in its first words. */
const CORRECTION_WORDS = { cue: 16, thing: 30 } as const;
/** So many things said again behind the request, in a file without labels, are the patient's. */
const FEWEST_AGAIN = { beforeTelling: 1, sameTurn: 2, nextTurn: 3 } as const;
const OPENING_WORDS = 12;

/** Whether a teach-back was asked for and given, what the patient got wrong, and what became of that. */
export function teachBack(context: Context, items: readonly JudgedItem[]): TeachBackResult {
  const kinds = new Set(items.filter(({ item }) => item.kind === "teach-back").map(({ item }) => item.id));
  const requests = context.matches.elements.filter((match) => kinds.has(match.item) && match.verdict === "right");
  // The request that was answered with a telling, where one was; "tell me what you know" may fit the rubric's words too.
  const asked = requests.find(({ span }) => tellingBehind(context, span) !== null) ?? requests[0];
  const answer = asked === undefined ? null : answerTo(context, asked.span);
  return { asked: asked === undefined ? null : context.evidence(quoteOf(context, asked.span, answer)), answered: answer, errors: errorsOf(context, items) };
}

/** The sentence of the request, but nothing of the answer. */
function quoteOf(context: Context, request: WordSpan, answer: Evidence | null): WordSpan {
  const { first, end } = sentenceAround(context.station, request);
  return { first, end: answer === null ? end : Math.max(request.end, Math.min(end, answer.first)) };
}

function tellingBehind(context: Context, request: WordSpan): Telling | null {
  return context.matches.tellings.find(({ answer }) => answer.first >= request.end - 1 && answer.first - request.end <= TELLING_REACH) ?? null;
}

/** What the patient said to the request: the telling; in a file without labels it may stand in the candidate's name. */
function answerTo(context: Context, request: WordSpan): Evidence | null {
  const inOwnName = misvoicedAnswer(context, request);
  if (inOwnName !== null) return { ...context.evidence(inOwnName), role: "patient" };
  const span = tellingBehind(context, request)?.answer ?? patientAfter(context.station, request, SOME_WORDS);
  return span === null ? null : context.evidence({ first: span.first, end: span.end });
}

/**
 * "Run me through it okay so cap off shake it ...": without labels the rest of the turn, or the one behind a small word of
 * the patient's, is the patient's where it says things again.
 */
function misvoicedAnswer(context: Context, request: WordSpan): WordSpan | null {
  const { station } = context;
  if (station.roleSource !== "model" && station.roleSource !== "mixed") return null;
  const turns = turnsOf(station);
  const at = turns.findIndex((turn) => request.end - 1 >= turn.first && request.end - 1 < turn.end);
  const turn = turns[at];
  if (turn === undefined) return null;
  const after = (place: number) => {
    const next = turns[place + 1];
    return next?.role === "patient" && tellsBack(context, next) ? next.end : turns[place]!.end;
  };
  const fewest = tellingBehind(context, request) === null ? FEWEST_AGAIN.sameTurn : FEWEST_AGAIN.beforeTelling;
  if (turn.end - request.end >= SOME_WORDS && saysAgain(context, { first: request.end, end: turn.end }, request.first, fewest)) return { first: request.end, end: after(at) };
  const [small, next] = [turns[at + 1], turns[at + 2]];
  if (small?.role !== "patient" || small.end - small.first >= SOME_WORDS || next?.role !== "candidate") return null;
  return saysAgain(context, next, request.first, FEWEST_AGAIN.nextTurn) ? { first: small.first, end: after(at + 2) } : null;
}

/** Whether so many elements that were taught before a word are said again in a stretch. */
function saysAgain(context: Context, stretch: WordSpan, before: number, fewest: number): boolean {
  const again = context.matches.elements.filter((match) => beginsIn(match.span, stretch) && taughtBefore(context, match.item, match.element, before));
  return new Set(again.map(({ item, element }) => `${item}/${element}`)).size >= fewest;
}

const tellsBack = (context: Context, turn: WordSpan) => context.matches.patient.some((match) => beginsIn(match.span, turn) && taughtBefore(context, match.item, match.element, turn.first));

/** What the patient said wrongly of what was taught, or was told to be right, and what a correction of the candidate shows to have been wrong. */
function errorsOf(context: Context, items: readonly JudgedItem[]): TeachBackError[] {
  const labelled = (match: Pick<Match, "item" | "element">) => items.find(({ item }) => item.id === match.item)?.item.elements.find(({ id }) => id === match.element)?.label ?? match.element;
  const whole = (span: WordSpan) => context.evidence(sentenceAround(context.station, span));
  const wrong = context.matches.patient.filter((match) => match.verdict === "wrong" && (match.affirmed === true || taughtBefore(context, match.item, match.element, match.span.first)));
  const errors = onePerPlace(wrong.map((match): PlacedError => {
    const reply = replyTo(context.station, match.span);
    const put = reply === null ? undefined : putRight(context, reply, (other) => sameElement(other, match)) ?? (opensWithCorrection(context, reply) ? putRight(context, opening(reply, CORRECTION_WORDS.thing), (other) => other.item === match.item) : undefined);
    const noticed = reply !== null && (put !== undefined || opensWithCorrection(context, reply)) ? context.evidence(opening(reply, OPENING_WORDS)) : null;
    return { place: match.span.first, span: match.span, score: match.score, evidence: whole(match.span), label: labelled(put ?? match), noticed, corrected: put === undefined ? null : whole(put.span) };
  }));
  for (const { answer } of context.matches.tellings) {
    const reply = replyTo(context.station, { first: answer.end - 1, end: answer.end });
    if (reply === null || errors.some(({ corrected }) => corrected !== null && beginsIn(corrected, reply))) continue;
    if (!opensWithCorrection(context, reply)) continue;
    const put = putRight(context, opening(reply, CORRECTION_WORDS.thing), (match) => taughtBefore(context, match.item, match.element, answer.first));
    const told = put === undefined ? undefined : context.matches.patient.find((match) => sameElement(match, put) && beginsIn(match.span, answer));
    // Without words of the patient on it, it is a reminder of what was left out.
    if (put === undefined || told === undefined) continue;
    errors.push({ place: answer.first, span: told.span, score: told.score, evidence: whole(told.span), label: labelled(put), noticed: context.evidence(opening(reply, OPENING_WORDS)), corrected: whole(put.span) });
  }
  return errors.sort((a, b) => a.place - b.place).map(({ evidence, label, noticed, corrected }) => ({ evidence, label, noticed, corrected }));
}

interface PlacedError extends TeachBackError {
  place: number;
  span: WordSpan;
  score: number;
}

/** The same words get one thing wrong: the one that was put right, else the one they fit best. */
function onePerPlace(errors: readonly PlacedError[]): PlacedError[] {
  const kept: PlacedError[] = [];
  for (const error of [...errors].sort((a, b) => Number(b.corrected !== null) - Number(a.corrected !== null) || b.score - a.score)) {
    if (!kept.some(({ span }) => meets(span, error.span))) kept.push(error);
  }
  return kept;
}

/** What the reply says rightly of the same thing. */
function putRight(context: Context, reply: WordSpan, same: (match: Match) => boolean): Match | undefined {
  return context.matches.elements.find((match) => match.verdict === "right" && beginsIn(match.span, reply) && same(match));
}

function opensWithCorrection(context: Context, reply: WordSpan): boolean {
  const words = context.station.transcript.words.slice(reply.first, Math.min(reply.end, reply.first + CORRECTION_WORDS.cue)).map(({ text }) => text);
  return CORRECTIONS.find(tokenise(words)).length > 0;
}

/** A misunderstanding is one of something that was taught. */
function taughtBefore(context: Context, item: string, element: string, word: number): boolean {
  return context.matches.elements.some((match) => match.item === item && match.element === element && match.span.first < word);
}

function opening(reply: WordSpan, words: number): WordSpan {
  return { first: reply.first, end: Math.min(reply.end, reply.first + words) };
}
