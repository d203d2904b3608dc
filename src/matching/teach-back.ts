import { SPEECH, speechPhrases } from "../language/speech-phrases.ts";
import { phraseList } from "../language/phrase-set.ts";
import { beginsIn } from "../station/span.ts";
import type { Turn, WordSpan } from "../station/types.ts";
import type { CompiledRubric } from "./compile.ts";
import type { Scene } from "./elicitation.ts";
import { inOneSentence, wordsOf, type Stream } from "./stream.ts";
import type { Match, Telling } from "./types.ts";

const REQUESTS = phraseList([...SPEECH.requests, ...SPEECH.teach_back_requests, ...SPEECH.acting_out], { by: "text" });
const COMPREHENSION = speechPhrases("comprehension_checks");

/** One or two things said back are an echo ("once a day, okay"); so many, of several items, are a telling. */
const FEWEST_TOLD = { elements: 3, items: 2 } as const;
/** A request stands so near to the end of the turn that the telling follows. */
const REQUEST_REACH = 45;
/** "Mm", "and then?": the candidate's small word does not end the patient's telling. */
const SMALL_WORD = 6;
/**
 * The chance that a telling behind a request was asked for. Of the tuned rehearsals' eight tellings behind a request
 * the reader called all eight a teach-back; by the rule of succession (Laplace 1774) (8 + 1) / (8 + 2).
 */
const CONFIDENCE = 0.9;

/**
 * Where the patient, asked, tells back several things that the candidate taught before: a teach-back, whatever the words
 * of the request. A summary that nobody asked for is none, nor is one behind "any questions?" or "does that make sense?".
 */
export function tellingsBack(scene: Scene, found: readonly Match[], patient: readonly Match[], rubric: CompiledRubric): Telling[] {
  const { turns } = scene;
  const taught = new Map<string, number>();
  for (const match of found) {
    if (match.verdict !== "right") continue;
    const key = `${match.item}/${match.element}`;
    taught.set(key, Math.min(taught.get(key) ?? Infinity, match.span.first));
  }
  const asking = new Set(rubric.elements.filter(({ kind }) => kind === "ask").map(({ item }) => item));
  const questions = found.filter((match) => asking.has(match.item)).map(({ span }) => span);
  return turns.flatMap((turn, place): Telling[] => {
    const before = turns[place - 1];
    if (turn.role !== "patient" || before?.role !== "candidate") return [];
    const answer = { first: turn.first, end: endOfTelling(turns, place) };
    const told = patient.filter((match) => beginsIn(match.span, answer) && (taught.get(`${match.item}/${match.element}`) ?? Infinity) < turn.first);
    const elements = new Set(told.map(({ item, element }) => `${item}/${element}`)).size;
    if (elements < FEWEST_TOLD.elements || new Set(told.map(({ item }) => item)).size < FEWEST_TOLD.items) return [];
    const request = requestIn(scene.candidate, before, questions);
    return request === null ? [] : [{ request, answer, elements }];
  });
}

/** The tellings as matches of the items that want a teach-back, where no words of the rubric were heard. */
export function teachBackMatches(tellings: readonly Telling[], found: readonly Match[], rubric: CompiledRubric): Match[] {
  return rubric.elements
    .filter(({ kind, item, element }) => kind === "teach-back" && !found.some((match) => match.item === item && match.element === element && match.verdict === "right"))
    .flatMap(({ item, element }) =>
      tellings.map(({ request, elements }): Match => ({ item, element, verdict: "right", span: request, clause: request, score: CONFIDENCE, confidence: CONFIDENCE, signs: [CONFIDENCE, 0, Math.log(1 + elements)], elicitation: "offered", response: "asked in other words: the patient tells back what was taught" })),
    );
}

function endOfTelling(turns: readonly Turn[], place: number): number {
  let end = turns[place]!.end;
  for (let k = place + 1; k + 1 < turns.length; k += 2) {
    const [small, more] = [turns[k]!, turns[k + 1]!];
    if (small.end - small.first > SMALL_WORD || more.role !== "patient") break;
    end = more.end;
  }
  return end;
}

/** The last sentences of a candidate's turn from the first that asks or requests, its own questions of the rubric left out. */
function requestIn(stream: Stream, turn: WordSpan, questions: readonly WordSpan[]): WordSpan | null {
  const first = stream.tokens.findIndex(({ word }) => word >= turn.first);
  if (first < 0) return null;
  let end = first;
  while (end < stream.tokens.length && stream.tokens[end]!.word < turn.end) end += 1;
  for (let place = Math.max(first, end - REQUEST_REACH); place < end; place += 1) {
    const asks = stream.acts[place] !== "tell" || REQUESTS.at(stream.tokens, place) !== null;
    if (!asks) continue;
    const word = stream.tokens[place]!.word;
    const stop = sentenceEnd(stream, place, end);
    if (questions.some((span) => word < span.end && span.first <= stream.tokens[stop - 1]!.word) || COMPREHENSION.find(stream.tokens, place, stop).length > 0) {
      place = stop - 1;
      continue;
    }
    return wordsOf(stream, sentenceStart(stream, place, first), end);
  }
  return null;
}

function sentenceEnd(stream: Stream, place: number, end: number): number {
  let stop = place + 1;
  while (stop < end && inOneSentence(stream, stop - 1, stop)) stop += 1;
  return stop;
}

/** Where the sentence starts; without full stops a little before the request. */
function sentenceStart(stream: Stream, place: number, first: number): number {
  let start = place;
  while (start > first && place - start < REQUEST_REACH / 3 && inOneSentence(stream, start - 1, start)) start -= 1;
  return start;
}
