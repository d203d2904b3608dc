import { sameElement } from "../matching/same-element.ts";
import type { Match, SaidClause } from "../matching/types.ts";
import { meets } from "../station/span.ts";
import type { WordSpan } from "../station/types.ts";
import type { Context } from "./context.ts";
import type { JudgedItem } from "./items.ts";
import { neededAgain } from "./needed-again.ts";
import { saidAgain, type SaidAgain } from "./said-again.ts";
import { stretchWithCost } from "./stretch.ts";
import type { RepeatResult, TeachBackResult } from "./types.ts";

/** So many different weighty words are not said again by chance, whatever the rubric makes of them. */
const PLAINLY_AGAIN = 4;
/** One fewer will do in so many words: "one puff, or two puffs, one or two". */
const OVER_AND_OVER = { heavy: 3, words: 6 } as const;
/** Enough where both passages say one and the same element, and fit it this well; in fewer words only word for word. */
const AGAIN_OF_ELEMENT = { heavy: 2, words: 3, score: 0.6 } as const;
/** A closing summary: in this last share of the station, from so many places of the talk, in so few words. */
const SUMMARY = { lastShare: 0.3, fewestItems: 3, mostWords: 130 } as const;
/** A sentence of more words is quoted by its clause. */
const LONGEST_QUOTE = 30;
/** Words of a quote that stand for what no element names. */
const QUOTED = 8;

/**
 * What the candidate told again without need: clauses whose own content was said before, whatever the rubric has to
 * say of it. Not counted: what the patient asked for, the patient's own words said back, a teach-back and what is put
 * right in it, and a short closing summary.
 */
export function repeatsOf(context: Context, items: readonly JudgedItem[], teachBack: TeachBackResult): RepeatResult[] {
  const { said } = context.matches;
  const needed = neededAgain(context, teachBack);
  const told = new Map(items.filter(({ item }) => item.kind === "tell").map(({ item, elements }) => [item.id, elements] as const));
  const right = context.matches.elements.filter((match) => match.verdict === "right" && match.score >= AGAIN_OF_ELEMENT.score && told.has(match.item));
  const runs = saidAgain(said, (clause) => !needed(clause)).map((run) => ({ ...run, span: { first: said[run.first]!.first, end: said[run.end - 1]!.end }, element: elementAgain(right, said, run) }));
  const again = runs.filter(({ heavy, words, element, span }) => heavy >= PLAINLY_AGAIN || (heavy >= OVER_AND_OVER.heavy && words >= OVER_AND_OVER.words) || (heavy >= AGAIN_OF_ELEMENT.heavy && element !== null && (words >= AGAIN_OF_ELEMENT.words || inSameWords(said, span))));
  const counted = again.filter((run) => !isSummary(context, right, run.span) && !saysOther(right, said, run));
  return counted.map(({ span, before, element }) => {
    const { evidence, words, seconds } = stretchWithCost(context, span);
    const label = element === null ? undefined : told.get(element.item)?.find(({ id }) => id === element.element)?.label;
    return { label: label ?? quoteOf(evidence.quote), firstSaid: context.evidence(sentenceOf(said, before)), again: evidence, words, seconds };
  });
}

/** The element that the run says, and that a passage before it said. */
function elementAgain(right: readonly Match[], said: readonly SaidClause[], run: SaidAgain): Match | null {
  const span = { first: said[run.first]!.first, end: said[run.end - 1]!.end };
  const stretch = { first: said[Math.max(0, run.before - 1)]!.first, end: Math.min(span.first, said[Math.min(said.length - 1, run.before + 1)]!.end) };
  return right.find((match) => meets(match.span, span) && right.some((other) => sameElement(other, match) && meets(other.span, stretch))) ?? null;
}

/**
 * What says an element of the rubric for the first time is not what another sentence said before it of other elements,
 * whatever words they share: "wait thirty seconds before the second puff" and "a puff every thirty seconds in an attack".
 */
function saysOther(right: readonly Match[], said: readonly SaidClause[], run: SaidAgain & { span: WordSpan }): boolean {
  const nameOf = ({ item, element }: Match) => `${item}/${element}`;
  const earlier = new Set(right.filter((match) => match.span.first < run.span.first && !meets(match.span, run.span)).map(nameOf));
  const now = new Set(right.filter((match) => meets(match.span, run.span)).map(nameOf));
  const then = right.filter((match) => meets(match.span, wholeSentence(said, run.before)) && !meets(match.span, run.span)).map(nameOf);
  return then.length > 0 && !then.some((name) => now.has(name)) && [...now].some((name) => !earlier.has(name));
}

function wholeSentence(said: readonly SaidClause[], place: number): WordSpan {
  const whole = said.filter(({ sentence }) => sentence === said[place]!.sentence);
  return { first: whole[0]!.first, end: whole[whole.length - 1]!.end };
}

/** Word for word an earlier clause. */
function inSameWords(said: readonly SaidClause[], span: WordSpan): boolean {
  const inside = said.filter((clause) => meets(clause, span));
  const text = (clause: SaidClause) => clause.texts.filter((word) => !/^(so|and|then|um|uh|er|okay|yeah|just)$/.test(word)).join(" ");
  return inside.every((clause) => said.some((other) => other.end <= span.first && text(other) === text(clause)));
}

/** The sentence of a clause, where it is not too long to read. */
function sentenceOf(said: readonly SaidClause[], place: number): WordSpan {
  const span = wholeSentence(said, place);
  return span.end - span.first <= LONGEST_QUOTE ? span : said[place]!;
}

function isSummary(context: Context, right: readonly Match[], span: WordSpan): boolean {
  const { start, end } = context.station;
  if (span.first < end.word - (end.word - start.word) * SUMMARY.lastShare || span.end - span.first > SUMMARY.mostWords) return false;
  return new Set(right.filter((match) => meets(match.span, span)).map(({ item }) => item)).size >= SUMMARY.fewestItems;
}

function quoteOf(quote: string): string {
  const words = quote.split(" ");
  return `'${words.slice(0, QUOTED).join(" ")}${words.length > QUOTED ? " ..." : ""}'`;
}
