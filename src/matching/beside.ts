import { meaningsOf } from "../language/lexicon.ts";
import type { Token } from "../language/token.ts";
import weights from "./beside.json" with { type: "json" };
import { isAlone } from "./company.ts";
import type { CompiledElement } from "./compile.ts";
import { logOddsOf } from "./curve.ts";
import { vocabularyOf } from "./packed.ts";
import type { Passage } from "./passages.ts";
import { remembered } from "./remembered.ts";
import type { Stream } from "./stream.ts";
import { tokensOf } from "./windows.ts";

/*
 * What stands beside the words that carry a passage, in its sentence, may turn what they say: "there's no set time for
 * it", "that one can wait", "it's only for the first". No list has all the ways of it, so a logistic curve over those
 * very words, one by one and in pairs, and a few figures tells how likely a passage that fits does not say its element.
 * Fitted on invented sayings, right and wrong, of many hands (tests/bench/fit-beside.ts).
 */

/** So many words before and behind a passage, within its sentence, stand beside it. */
const REACH = 10;

/** In the order of their weights in beside.json. */
export const BESIDE_FIGURES = [
  "coverage",
  "log-odds of its likelihood",
  "tokens that carry it (log)",
  "tokens beside (log)",
  "share of what carries it that is denied otherwise than in the response",
  "any of it is",
  "share of what carries it that is supposed",
  "anything is denied",
  "tokens beside that its wrong statements have and its responses have not (log)",
  "that its responses have alone (log)",
  "that both have (log)",
  "that only other elements' responses have (log)",
  "that nothing has (log)",
  "weight of the response that is not found (log)",
  "hardly anything is said around it",
  "log-odds of its likelihood where hardly anything is",
] as const;

/** From here on a passage is turned: where, in talk about rubrics left out of the fit, as many passages are dropped rightly as wrongly; in single sayings most are (tests/bench/results/beside.md). */
export const TURNED = 0.85;

/** What stands beside a passage, as the curve sees it. */
export interface Beside {
  /** One for each of BESIDE_FIGURES. */
  figures: number[];
  /** Stems, denied ones once more as "not ...", and pairs of words that follow each other; "*" is a word that carries the passage. */
  words: Set<string>;
}

/** 0 to 1: how likely the words beside turn a passage that fits, so that it does not say its element. */
export function turnedBy({ figures, words }: Beside): number {
  let sum = weights.intercept;
  for (let place = 0; place < figures.length; place += 1) sum += weights.figures[place]! * figures[place]!;
  for (const word of words) sum += WORDS.get(word) ?? 0;
  return 1 / (1 + Math.exp(-sum));
}

const WORDS: ReadonlyMap<string, number> = new Map(Object.entries(weights.words));

/** Log-odds beyond these are no surer: one in a thousand. */
const SUREST = Math.log(999);

/** @param elements all of the rubric. */
export function besideOf(passage: Passage, stream: Stream, elements: readonly CompiledElement[]): Beside {
  const { tokens, polarity, silent } = stream;
  const { response, aligned } = passage.window;
  const carrying = tokensOf(passage.window);
  const said: Token[] = [];
  const texts: string[] = [];
  const words = new Set<string>();
  let denied = false;
  const { from, to } = around(passage, stream);
  for (let place = from; place < to; place += 1) {
    const { negated } = polarity[place]!;
    denied ||= negated;
    if (carrying.has(place)) texts.push(CARRYING);
    if (carrying.has(place) || silent.has(place)) continue;
    const { text, stem } = tokens[place]!;
    said.push(tokens[place]!);
    texts.push(text);
    words.add(stem);
    if (negated) words.add(`not ${stem}`);
  }
  for (let place = 1; place < texts.length; place += 1) if (texts[place] !== CARRYING || texts[place - 1] !== CARRYING) words.add(`${texts[place - 1]} ${texts[place]}`);
  const { wrong, right, both, others, none } = whoseWords(said, passage.element, elements);
  const missing = response.terms.reduce((sum, { weight }, term) => (aligned.some((found) => found.term === term) ? sum : sum + weight), 0);
  const deniedIn = deniedInResponse(passage);
  const shareOf = (holds: (place: number) => boolean) => [...carrying].filter(holds).length / carrying.size;
  const otherwise = shareOf((place) => deniedIn.has(place) !== polarity[place]!.negated);
  const odds = logOddsOf(passage.likelihood ?? 0, SUREST);
  const alone = isAlone(passage, stream) ? 1 : 0;
  const log = Math.log1p;
  return {
    figures: [passage.coverage, odds, log(carrying.size), log(said.length), otherwise, otherwise > 0 ? 1 : 0, shareOf((place) => polarity[place]!.hypothetical), denied ? 1 : 0, log(wrong), log(right), log(both), log(others), log(none), log(missing), alone, alone * odds],
    words,
  };
}

/** How many of the words only the element's wrong statements have, only its responses, both, only other elements' responses, and none. */
function whoseWords(said: readonly Token[], element: CompiledElement, elements: readonly CompiledElement[]): Record<"wrong" | "right" | "both" | "others" | "none", number> {
  const counted = { wrong: 0, right: 0, both: 0, others: 0, none: 0 };
  for (const { stem } of said) {
    const keys = [stem, ...meaningsOf(stem)];
    const isIn = (vocabulary: ReadonlySet<string>) => keys.some((key) => vocabulary.has(key));
    const right = isIn(element.vocabulary);
    if (isIn(wrongVocabulary(element))) counted[right ? "both" : "wrong"] += 1;
    else if (right) counted.right += 1;
    else counted[isIn(wholeVocabulary(elements)) ? "others" : "none"] += 1;
  }
  return counted;
}

/** A word that carries the passage, in a pair. */
const CARRYING = "*";

/** The passage with what stands beside it in its sentence and turn. */
function around({ first, end }: Passage, { tokens, turnOf, sentencesBefore }: Stream): { from: number; to: number } {
  const together = (one: number, other: number) => turnOf[one] === turnOf[other] && sentencesBefore[one] === sentencesBefore[other];
  let from = first;
  while (from > 0 && first - from < REACH && together(from - 1, first)) from -= 1;
  let to = end;
  while (to < tokens.length && to - end < REACH && together(to, end - 1)) to += 1;
  return { from, to };
}

/** Tokens that carry what the response itself denies. */
function deniedInResponse({ window: { aligned, response } }: Passage): Set<number> {
  const denied = new Set<number>();
  for (const { term, hit } of aligned) if (response.terms[term]!.negated) for (let place = hit.first; place < hit.end; place += 1) denied.add(place);
  return denied;
}

const wrongVocabulary = remembered(({ incorrect }: CompiledElement) => vocabularyOf(incorrect));
const wholeVocabulary = remembered((elements: readonly CompiledElement[]) => new Set(elements.flatMap(({ vocabulary }) => [...vocabulary])));
