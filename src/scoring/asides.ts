import { isSmallTalk } from "../language/small-talk.ts";
import { speechPhrases } from "../language/speech-phrases.ts";
import { tokenise } from "../language/token.ts";
import type { SaidClause } from "../matching/types.ts";
import { liesIn } from "../station/span.ts";
import type { WordSpan } from "../station/types.ts";
import type { Context } from "./context.ts";
import { stretchWithCost } from "./stretch.ts";
import type { AsideResult } from "./types.ts";

/** A shorter one is the oil of a conversation: words, over the turns it goes on. */
const ASIDE_WORDS = 8;
/** What is nearly all of the station's own words is about the station, whoever it tells of. Share of weighty words. */
const STATION_SHARE = 0.5;
/** What follows an aside at once and has none of the station's words belongs to it, up to so many words. */
const TAIL_WORDS = 12;

/** A longer one is speech without stops, where nothing tells where an aside begins. */
const LONGEST_SENTENCE = 45;

const DEFERRALS = speechPhrases("deferrals");

/** Who is spoken to or of in a question that is not the patient's. */
const OTHERS = /^(we|they|somebody|someone|anybody|anyone)$/;

/** `outside`: told by what stands before it: behind an aside it goes on with it, elsewhere it is of the station. */
type Sort = "aside" | "empty" | "outside" | "station";

/**
 * Where the candidate talks of something else: sentences that tell of the candidate or of other people, that say hardly
 * any word the rubric asks for and answer no question of the patient. What could go first when time is short; listed, so
 * that a person can look.
 */
export function asidesOf(context: Context): AsideResult[] {
  const sentences = sentencesOf(context.matches.said);
  const sorts = sentences.map((sentence) => sortOf(context, sentence));
  const asides: AsideResult[] = [];
  for (let place = 0; place < sentences.length; place += 1) {
    if (sorts[place] !== "aside") continue;
    let end = place + 1;
    while (end < sentences.length && (sorts[end] === "aside" || ((sorts[end] === "empty" || sorts[end] === "outside") && goesOn(sentences[end - 1]!, sentences[end]!)))) end += 1;
    const run = sentences.slice(place, end);
    if (run.reduce((sum, sentence) => sum + sizeOf(sentence), 0) >= ASIDE_WORDS) asides.push(...stretches(run).map((span) => stretchWithCost(context, { first: span.first, end: span.end })));
    place = end - 1;
  }
  return asides;
}

function sentencesOf(said: readonly SaidClause[]): SaidClause[][] {
  const sentences: SaidClause[][] = [];
  for (const clause of said) {
    const last = sentences[sentences.length - 1];
    if (last !== undefined && last[0]!.sentence === clause.sentence) last.push(clause);
    else sentences.push([clause]);
  }
  return sentences;
}

function sortOf(context: Context, sentence: readonly SaidClause[]): Sort {
  const words = sentence.flatMap((clause) => clause.words).filter(({ weight, number }) => weight === 1 && !number);
  const asked = words.filter((word) => word.asked).length;
  const tokens = tokenise(sentence.flatMap(({ texts }) => texts));
  const tells = sizeOf(sentence) <= LONGEST_SENTENCE && isSmallTalk(tokens, context.rubric.scenario.counselled === "patient") && !isAsked(context, sentence);
  // "I'll ask my colleague": to answer the patient, or the phone that has just rung.
  if (tells && asked < STATION_SHARE * words.length) return DEFERRALS.find(tokens).length === 0 ? "aside" : "outside";
  const all = sentence.flatMap(({ texts }) => texts);
  const addressed = all.some((text) => text === "you" || text === "your");
  if (asked <= STATION_SHARE * words.length && !addressed && sentence.some(({ asks }) => asks) && all.some((text) => OTHERS.test(text))) return "outside";
  return asked === 0 && !addressed && !sentence.some(({ asks }) => asks) ? "empty" : "station";
}

/** A question of the rubric's, or the opening that it asks for. */
function isAsked({ matches }: Context, sentence: readonly SaidClause[]): boolean {
  const span = { first: sentence[0]!.first, end: sentence[sentence.length - 1]!.end };
  return matches.elements.some(({ span: said, verdict, score }) => verdict === "right" && score >= 0.8 && liesIn(said, span));
}

const sizeOf = (sentence: readonly SaidClause[]) => sentence.reduce((sum, { first, end }) => sum + end - first, 0);

/** The next sentence of the same turn, or what is said to the answer of a question that was one. */
function goesOn(aside: readonly SaidClause[], next: readonly SaidClause[]): boolean {
  const turns = next[0]!.turn - aside[0]!.turn;
  return sizeOf(next) <= TAIL_WORDS && (turns === 0 || (turns === 1 && aside.some(({ asks }) => asks)));
}

/** The parts of a run between which somebody else spoke. */
function stretches(run: readonly SaidClause[][]): WordSpan[] {
  const spans: (WordSpan & { turn: number })[] = [];
  for (const { first, end, turn } of run.flat()) {
    const last = spans[spans.length - 1];
    if (last !== undefined && last.turn === turn) last.end = end;
    else spans.push({ first, end, turn });
  }
  return spans;
}
