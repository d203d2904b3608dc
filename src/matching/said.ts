import { meaningsOf, wordWeight } from "../language/lexicon.ts";
import { readNumber } from "../language/number-words.ts";
import type { Token } from "../language/token.ts";
import type { CompiledRubric } from "./compile.ts";
import { remembered } from "./remembered.ts";
import { clauseSpan, inOneSentence, type Stream } from "./stream.ts";
import type { SaidClause, SaidWord } from "./types.ts";

/** Denials turn what is said, but carry little of it. */
const DENIAL = /^(not|no|never|nor|without)$/;
const DENIAL_WEIGHT = 0.35;

/** What one role said, clause by clause, as the words that carry it: to be compared with itself. */
export function saidClauses(stream: Stream, rubric: CompiledRubric): SaidClause[] {
  const vocabulary = topicsOf(rubric);
  let sentence = 0;
  return stream.clauses.map((clause) => {
    const turn = stream.turnOf[clause.first]!;
    if (clause.first > 0 && (!inOneSentence(stream, clause.first - 1, clause.first) || stream.turnOf[clause.first - 1] !== turn)) sentence += 1;
    const { first, end } = clauseSpan(stream, clause.first, clause.end);
    return {
      first,
      end,
      turn,
      sentence,
      asks: stream.acts[clause.first] !== "tell" || stream.acts[clause.end - 1] !== "tell",
      texts: stream.tokens.slice(clause.first, clause.end).map(({ text }) => text),
      words: wordsIn(stream, clause.first, clause.end, vocabulary),
    };
  });
}

function wordsIn(stream: Stream, first: number, end: number, vocabulary: ReadonlySet<string>): SaidWord[] {
  const words: SaidWord[] = [];
  for (let place = first; place < end; ) {
    const token = stream.tokens[place]!;
    const number = stream.withdrawn.has(place) ? null : readNumber(stream.tokens, place);
    const behind = number === null ? place + 1 : Math.min(end, number.end);
    if (!stream.withdrawn.has(place)) {
      const counts = number !== null && (token.text !== "one" || countsBefore(stream, place, end));
      const weight = number !== null ? (counts ? 1 : 0) : DENIAL.test(token.text) ? DENIAL_WEIGHT : wordWeight(token.stem);
      if (weight > 0) words.push({ sense: number !== null ? `#${number.value}` : senseOf(token.stem), weight, word: token.word, number: counts, denies: DENIAL.test(token.text), asked: isAsked(token, vocabulary) });
    }
    place = behind;
  }
  return words;
}

/** The weighty words of what the rubric asks for and of its scripted questions. */
export const topicsOf = remembered(({ elements, questions }: CompiledRubric): ReadonlySet<string> => {
  const asked = questions.flatMap(({ says, answer }) => [...says, ...answer].flatMap(({ terms }) => terms.flatMap(({ keys }) => keys.flatMap(({ key, quality }) => (quality === 1 ? [key] : [])))));
  return new Set([...elements.flatMap(({ anchors }) => [...anchors]), ...asked]);
});

function isAsked({ stem: stemmed }: Token, topic: ReadonlySet<string>): boolean {
  return topic.has(stemmed) || meaningsOf(stemmed).some((key) => topic.has(key));
}

/** "One drop", "one or two", but not "the other one is". */
function countsBefore(stream: Stream, place: number, end: number): boolean {
  const next = stream.tokens[place + 1];
  return place + 1 < end && stream.tokens[place]!.after === "" && (next!.text === "or" || next!.text === "to" || wordWeight(next!.stem) === 1);
}

/** Words that are the same by the lexicon are one. */
function senseOf(stemmed: string): string {
  return meaningsOf(stemmed).find((key) => key.startsWith("s")) ?? stemmed;
}
