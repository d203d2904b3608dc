import { wordWeight } from "../language/lexicon.ts";
import { speechActs } from "../language/speech-act.ts";
import { speechPhrases } from "../language/speech-phrases.ts";
import { tokenise } from "../language/token.ts";
import { readPhrase } from "../matching/phrase.ts";
import { beginsIn, liesIn } from "../station/span.ts";
import { turnAt, turnsOf } from "../station/turns.ts";
import type { Turn, WordSpan } from "../station/types.ts";
import { closesSentence, spokenTextsIn, textsIn } from "../station/written-words.ts";
import { answerTo } from "./answers.ts";
import type { Context } from "./context.ts";
import { replyTo } from "./replies.ts";
import type { QuestionResult } from "./types.ts";

const CONFIRMATIONS = speechPhrases("confirmations");
const SUPPOSING = speechPhrases("supposing");

/** Words that fit so well are the scripted question, whatever the reply; those that fit less need the script's answer behind them. */
const FITS = 0.5;
const FITS_A_LITTLE = 0.3;
/** What the script's answer right behind it adds to the fit, and what it adds later in the reply. */
const ANSWERED = { atOnce: 0.4, later: 0.2 } as const;
/** A word in common decides between questions that the same reply answers. */
const SHARED_WORD = 0.1;
const LONG_WORD = 4;
/** An answer stands in so many words of the start of the reply; what comes much later is another matter. */
const AT_ONCE = 25;
const IN_REACH = 45;
/** A question of the candidate's stands so near to the end of the turn that it is waiting for an answer. */
const WAITING = 12;
/** What the patient says to "any questions?" is a question. */
const INVITES = /^(questions?|ask|wonder(ing)?|worr(y|ied|ies|ying)|unsure|concerns?)\b/i;
/** "Yes, that's it exactly": said of what the patient guessed. */
const CONFIRMING_WORDS = 5;

/** A question that fits more places than these is of too common words to be told by them. */
const MOST_PLACES = 3;

/** A stretch in which the patient asks, and what the candidate says to it. */
interface Asked {
  span: WordSpan;
  reply: WordSpan | null;
  /** False for a statement that fits a scripted question. */
  asks: boolean;
}

/** The scripted questions and how each was answered; then the patient's other questions. Each spoken question stands there once. */
export function patientQuestions(context: Context): QuestionResult[] {
  const asked = questionsAsked(context);
  const places = scriptedPlaces(context, asked);
  const scripted = context.rubric.scenario.questions.map((question): QuestionResult => {
    const label = plainQuestion(question.says);
    const place = places.get(question.id);
    if (place === undefined) return { id: question.id, label, asked: null, answer: "not-asked", evidence: null, scripted: true };
    return { id: question.id, label, asked: context.evidence(place.span), ...answerTo(context, place.span, place.reply, { id: question.id, answeredBy: question.answered_by ?? [] }), scripted: true };
  });
  const taken = new Set(places.values());
  const others = asked
    .filter((one) => !taken.has(one) && one.asks)
    .map((one): QuestionResult => {
      const evidence = context.evidence(one.span);
      return { id: `question-${one.span.first}`, label: evidence.quote, asked: evidence, ...answerTo(context, one.span, one.reply, null), scripted: false };
    });
  return [...scripted, ...others];
}

/** All that the patient asks of the candidate: not what answers the candidate's own question, nor what is told back. */
function questionsAsked(context: Context): Asked[] {
  const turns = turnsOf(context.station);
  const spans = new Map<number, WordSpan>();
  for (const span of [...context.matches.asked, ...context.matches.fits.map((fit) => fit.span)]) if (!spans.has(span.first)) spans.set(span.first, span);
  const spoken = new Set(context.matches.asked.map(({ first }) => first));
  return [...spans.values()]
    .sort((a, b) => a.first - b.first)
    .flatMap((span): Asked[] => {
      if (context.matches.tellings.some(({ answer }) => liesIn(span, answer))) return [];
      const reply = replyTo(context.station, span);
      const at = turnAt(turns, span);
      const before = turns[at - 1];
      if (before?.role === "candidate" && isAnswer(context, before, span, reply, spoken.has(span.first))) return [];
      return [{ span, reply, asks: spoken.has(span.first) }];
    });
}

/** Whether the patient's words answer what the candidate has just asked: a statement does, and a guess that is confirmed. */
function isAnswer(context: Context, before: Turn, span: WordSpan, reply: WordSpan | null, asks: boolean): boolean {
  const texts = (part: WordSpan) => spokenTextsIn(context.station.transcript, part);
  const acts = speechActs(tokenise(texts({ first: Math.max(before.first, before.end - 3 * WAITING), end: before.end })), new Set());
  const asked = texts({ first: Math.max(before.first, before.end - WAITING), end: before.end });
  if (!acts.slice(-WAITING).some((act) => act !== "tell") || asked.some((text) => INVITES.test(text))) return false;
  const said = texts(span);
  const spoken = tokenise(said.map((text) => text.replace("?", ".")));
  // "What if I forget?" has not the form of a question and is one.
  if (asks && spoken.some((_, place) => SUPPOSING.at(spoken, place) !== null)) return false;
  const formed = speechActs(spoken, new Set()).some((act) => act !== "tell");
  if (!asks || !formed) return true;
  // A mere "yes" answers a question as well.
  return reply !== null && CONFIRMATIONS.find(tokenise(texts({ first: reply.first, end: Math.min(reply.end, reply.first + CONFIRMING_WORDS) }))).some((hit) => hit.end - hit.first > 1);
}

/**
 * Where each scripted question was asked, each stretch being one question at most: by its words; by fewer words where the
 * script's answer follows; by the answer alone where it follows at once and nothing of it was said before.
 */
function scriptedPlaces(context: Context, asked: readonly Asked[]): Map<string, Asked> {
  const { fits } = context.matches;
  const pairs = asked.flatMap((one): Pair[] =>
    context.rubric.scenario.questions.flatMap((question): Pair[] => {
      const fit = fits.find((match) => match.question === question.id && match.span.first === one.span.first)?.score ?? 0;
      const { support, fresh, answered } = supportOf(context, one, question.id, question.answered_by ?? []);
      const shares = sharesWord(context, one.span, question.says);
      // With no word of the script in it only the answer tells, and that ends where the candidate goes on to something else.
      const known = fit > 0 || shares ? support > 0 : answered;
      const accepted = one.asks ? fit >= FITS || (known && (support === ANSWERED.atOnce || fresh || fit >= FITS_A_LITTLE)) : fit > 0;
      return accepted ? [{ one, question: question.id, rank: fit + (one.asks ? support + (shares ? SHARED_WORD : 0) : 0) }] : [];
    }),
  );
  return bestPlaces(context.rubric.scenario.questions.map(({ id }) => pairs.filter((pair) => pair.question === id).sort((x, y) => y.rank - x.rank).slice(0, MOST_PLACES)));
}

/** Whether the patient's words share a weighty word with the scripted question, alone or as a part ("bleed", "nosebleeds"). */
function sharesWord(context: Context, span: WordSpan, says: readonly string[]): boolean {
  const spoken = tokenise(textsIn(context.station.transcript, span)).filter(({ stem, text }) => text.length >= LONG_WORD && wordWeight(stem) >= 1);
  const scripted = tokenise(says.flatMap((phrase) => phrase.split(/[\s|()]+/)).filter(Boolean));
  return spoken.some(({ stem }) => scripted.some((other) => other.stem.includes(stem)));
}

interface Pair {
  one: Asked;
  question: string;
  rank: number;
}

/** Of all ways to give each question one place and each place one question, the one that fits best in sum. */
function bestPlaces(choices: readonly (readonly Pair[])[]): Map<string, Asked> {
  let best: { rank: number; pairs: Pair[] } = { rank: 0, pairs: [] };
  const pick = (at: number, rank: number, pairs: Pair[]) => {
    if (rank > best.rank) best = { rank, pairs };
    if (at === choices.length) return;
    for (const pair of choices[at]!) if (!pairs.some(({ one }) => one === pair.one)) pick(at + 1, rank + pair.rank, [...pairs, pair]);
    pick(at + 1, rank, pairs);
  };
  pick(0, 0, []);
  return new Map(best.pairs.map(({ question, one }) => [question, one]));
}

/** Opens a sentence in which the candidate goes on to the next thing; the second kind also opens an answer ("Good question. So, ..."). */
const GOES_ON = /^(anyway|and (so|now|next|then|in general|generally|another|one more|last|finally))\b/i;
const GOES_ON_OR_IN = /^(so|now|next|then|right|okay|ok)\b/i;
/** Fewer words before it only win time. */
const SAID_SOMETHING = 6;

/** The word at which a reply goes on to something else; its end where it does not. */
function movesOnAt({ transcript: { words } }: Context["station"], reply: WordSpan): number {
  for (let place = reply.first + 1; place < reply.end; place += 1) {
    if (!closesSentence(words[place - 1]!.text)) continue;
    const opening = words.slice(place, place + 3).map(({ text }) => text).join(" ");
    if (GOES_ON.test(opening) || (place - reply.first >= SAID_SOMETHING && GOES_ON_OR_IN.test(opening))) return place;
  }
  return reply.end;
}

/** Whether the reply says the script's answer, how soon, whether before anything else, and whether all of it was said before. */
function supportOf(context: Context, { span, reply }: Asked, id: string, answeredBy: readonly string[]): { support: number; fresh: boolean; answered: boolean } {
  if (reply === null) return { support: 0, fresh: false, answered: false };
  const inside = (match: { span: WordSpan }) => beginsIn(match.span, reply);
  const told = context.matches.elements.filter((match) => match.verdict === "right" || match.verdict === "wrong");
  const known = new Set(told.filter((match) => match.span.first < span.first).map(({ item, element }) => `${item}/${element}`));
  const elements = told.filter((match) => answeredBy.includes(match.item) && inside(match));
  const said = [...elements, ...context.matches.answers.filter((match) => match.question === id && inside(match))];
  const first = Math.min(...said.map((match) => match.span.first));
  const support = first - reply.first < AT_ONCE ? ANSWERED.atOnce : first - reply.first < IN_REACH ? ANSWERED.later : 0;
  return { support, answered: support > 0 && first < movesOnAt(context.station, reply), fresh: said.length > elements.length || elements.some(({ item, element }) => !known.has(`${item}/${element}`)) };
}

/** A scripted question as a person would ask it: the first wording without alternatives, else the first of each. */
export function plainQuestion(says: readonly string[]): string {
  const plain = [says[0]!, ...says].find((phrase) => !/[|(){}]/.test(phrase)) ?? firstWords(says[0]!);
  const spoken = plain.replace(/\bi\b/g, "I");
  return `${spoken.charAt(0).toUpperCase()}${spoken.slice(1)}${/[.?!]$/.test(spoken) ? "" : "?"}`;
}

function firstWords(phrase: string): string {
  const [variant] = readPhrase(phrase);
  return (variant ?? []).map((slot) => (typeof slot === "string" ? "..." : slot.words[0]!)).join(" ");
}
