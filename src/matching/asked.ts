import { wordWeight } from "../language/lexicon.ts";
import { SPEECH, speechPhrases } from "../language/speech-phrases.ts";
import { speechActs, type SpeechAct } from "../language/speech-act.ts";
import type { WordSpan } from "../station/types.ts";
import type { CompiledRubric } from "./compile.ts";
import type { Postings } from "./postings.ts";
import { inOneSentence, wordsOf, type Stream } from "./stream.ts";
import type { QuestionMatch } from "./types.ts";
import { windowsFor, type Window } from "./windows.ts";

const SUPPOSING = speechPhrases("supposing");
const AUXILIARIES = new Set(SPEECH.auxiliaries);
const SUBJECTS = new Set(SPEECH.subjects);
/** What stands before a question that supposes. */
const BEFORE = /^(and|so|but|or|um|uh|er|okay|right|then|now|well|yes|yeah|no|like|oh)$/;
/** In speech without full stops the answer to a question opens with one of these. */
const OTHER_VOICE = /^(no|nope|yes|yeah|yep|um|er|uh|so|okay)$/;

/** So much of a scripted question in a question of the patient's is that question: they are told from other talk, not from each other. */
const ASKED = 0.5;
/** What is no question by its form must fit better ("my eyes feel fine"). */
const SAID = 0.6;
/** Below this the words have nothing to do with it. */
const LIKELY = 0.3;
/** A word of this weight tells what is talked about. */
const TOPIC_WEIGHT = 1;
/** Words no nearer than these may be about anything. */
const LOOSE = 0.7;
/** Without such a word almost all of a scripted question must be there ("one in" is not "which one do I put in first"). */
const WITHOUT_TOPIC = 0.85;
/** A question by its form may be short ("why's that?"); of a statement with a question mark so few words are an echo. */
const FEWEST_WORDS = { question: 2, marked: 4 } as const;
/** Speech without full stops is one long sentence: a question in it ends after so many tokens. */
const LONGEST_QUESTION = 22;
/** Two questions so near to each other are one ("how do I know? I mean, when it's empty?"). */
const NEAR = 3;

/** A stretch in which the patient asks: tokens, end exclusive. */
interface Asking {
  first: number;
  end: number;
  /** A question by its form, not by its mark alone. */
  formed: boolean;
}

/** What the patient asks, and how well the script's questions fit it. */
export interface PatientQuestions {
  /** Scripted questions told by their words alone. */
  questions: QuestionMatch[];
  /** Every stretch that asks, in order. */
  asked: WordSpan[];
  /** For each of them, and for what states a scripted question outright, the scripted questions that fit at all. */
  fits: QuestionMatch[];
}

export function patientQuestions(rubric: CompiledRubric, postings: Postings, stream: Stream): PatientQuestions {
  const askings = askingsIn(stream);
  const fits = rubric.questions.flatMap(({ question, says }) =>
    says.flatMap((response) => windowsFor(response, postings, stream, LIKELY).flatMap((window) => fitOf(question, window, askings, stream) ?? [])),
  );
  const whole = neighboursTogether(askings, fits, stream);
  const spanOf = ({ place, first, end }: Fit) => wordsOf(stream, whole[place]?.first ?? first, whole[place]?.end ?? end);
  const all = fits.map((fit): QuestionMatch => ({ question: fit.question, span: spanOf(fit), score: fit.coverage })).sort((a, b) => b.score - a.score || a.span.first - b.span.first);
  const questions: QuestionMatch[] = [];
  for (const match of all) {
    if (match.score >= ASKED && !questions.some(({ question, span }) => question === match.question || span.first === match.span.first)) questions.push(match);
  }
  return { questions: questions.sort((a, b) => a.span.first - b.span.first), asked: [...new Set(whole)].map(({ first, end }) => wordsOf(stream, first, end)), fits: all };
}

/** For each asking what it is part of: neighbours in one turn ask one thing, unless they are two questions of the script. */
function neighboursTogether(askings: readonly Asking[], fits: readonly Fit[], stream: Stream): Asking[] {
  const best = (place: number) => fits.filter((fit) => fit.place === place && fit.coverage >= ASKED).sort((a, b) => b.coverage - a.coverage)[0]?.question;
  const whole: Asking[] = [];
  let known: string | undefined;
  askings.forEach((asking, place) => {
    const last = whole[place - 1];
    const question = best(place);
    if (last !== undefined && stream.turnOf[last.first] === stream.turnOf[asking.first] && asking.first - last.end < NEAR && (known === undefined || question === undefined || known === question)) {
      last.end = asking.end;
      last.formed ||= asking.formed;
      whole.push(last);
      known ??= question;
    } else {
      whole.push({ ...asking });
      known = question;
    }
  });
  return whole;
}

interface Fit {
  question: string;
  /** Of the asking that it lies in; -1 in none. */
  place: number;
  first: number;
  end: number;
  coverage: number;
}

/** A scripted question's words in what the patient asks, or states ("it seems a waste"). */
function fitOf(question: string, window: Window, askings: Asking[], stream: Stream): Fit | null {
  const part = inOneTurn(window, stream);
  if (part.coverage < (namesTopic(window, part, stream) ? LIKELY : WITHOUT_TOPIC)) return null;
  let place = askings.findIndex((asking) => part.first < asking.end && asking.first < part.end);
  // "My brother's on it too. Could he have mine?": what is told right before belongs to the question.
  if (place < 0 && part.coverage >= ASKED) {
    place = askings.findIndex((asking) => stream.turnOf[asking.first] === stream.turnOf[part.first] && asking.first >= part.end && asking.first - part.end < NEAR);
    if (place >= 0) askings[place]!.first = Math.min(askings[place]!.first, Math.max(part.first, askings[place]!.first - LONGEST_QUESTION));
  }
  if (place < 0 && part.coverage < SAID) return null;
  return { question, place, ...part };
}

/** Whether any of the words found says what is asked about, by itself or with others ("run out"). */
function namesTopic({ aligned }: Window, { first, end }: { first: number; end: number }, { tokens }: Stream): boolean {
  return aligned.some(({ hit, quality }) => quality > LOOSE && hit.first >= first && hit.first < end && (hit.end - hit.first > 1 || wordWeight(tokens[hit.first]!.stem) >= TOPIC_WEIGHT));
}

/** The part of a window that lies in the turn with most of it: nobody asks over somebody else's answer. */
function inOneTurn({ aligned, response, coverage }: Window, stream: Stream): { first: number; end: number; coverage: number } {
  const weights = new Map<number, number>();
  let all = 0;
  for (const { term, hit, quality } of aligned) {
    const weight = response.terms[term]!.weight * quality;
    const turn = stream.turnOf[hit.first]!;
    weights.set(turn, (weights.get(turn) ?? 0) + weight);
    all += weight;
  }
  const [turn, weight] = [...weights].sort((a, b) => b[1] - a[1])[0]!;
  const inside = aligned.filter(({ hit }) => stream.turnOf[hit.first] === turn);
  return { first: Math.min(...inside.map(({ hit }) => hit.first)), end: Math.max(...inside.map(({ hit }) => hit.end)), coverage: all === 0 ? 0 : (coverage * weight) / all };
}

/** Where the patient asks: whole sentences where there are any. */
function askingsIn(stream: Stream): Asking[] {
  const { tokens, turnOf } = stream;
  const breaks = new Set<number>();
  for (let place = 1; place < tokens.length; place += 1) if (turnOf[place] !== turnOf[place - 1]) breaks.add(place);
  // Read again without its question marks: what still asks is a question by its form.
  const formed = speechActs(tokens.map((token) => (token.after === "?" ? { ...token, after: "." } : token)), breaks);
  const askings: Asking[] = [];
  let first = 0;
  for (let place = 1; place <= tokens.length; place += 1) {
    if (place < tokens.length && !breaks.has(place) && inOneSentence(stream, place - 1, place)) continue;
    const asking = askingIn(stream, formed, first, place);
    first = place;
    if (asking !== null) askings.push(asking);
  }
  return askings.filter(({ first: from, end, formed: form }) => end - from >= (form ? FEWEST_WORDS.question : FEWEST_WORDS.marked) && !isTag(tokens.slice(from, end).map(({ text }) => text)));
}

/** "Isn't it", "does it": asks nothing of its own. */
const isTag = (texts: readonly string[]) => texts.length <= 3 && AUXILIARIES.has(texts[0]!) && texts.slice(1).every((text) => text === "not" || SUBJECTS.has(text));

/** The asking part of one sentence: all of it, or of speech without full stops up to where another voice may begin. */
function askingIn(stream: Stream, formed: readonly SpeechAct[], first: number, end: number): Asking | null {
  const { tokens, acts } = stream;
  let from = first;
  while (from < end && acts[from] === "tell" && !supposesAt(stream, from, first)) from += 1;
  if (from === end) return null;
  const mark = tokens[end - 1]!.after;
  const written = mark !== "";
  // "Saves money, doesn't it." states.
  if (written && mark !== "?" && from > first && isTag(tokens.slice(from, end).map(({ text }) => text))) return null;
  if (written && end - first <= LONGEST_QUESTION) return { first, end, formed: isFormed(stream, formed, first, end) };
  let stop = from + 1;
  while (stop < Math.min(end, from + LONGEST_QUESTION) && !(stop - from >= FEWEST_WORDS.marked && !written && OTHER_VOICE.test(tokens[stop]!.text) && tokens[stop - 1]!.text !== "or")) stop += 1;
  return { first: from, end: stop, formed: isFormed(stream, formed, from, stop) };
}

function isFormed(stream: Stream, formed: readonly SpeechAct[], first: number, end: number): boolean {
  for (let place = first; place < end; place += 1) if (formed[place] !== "tell" || supposesAt(stream, place, first)) return true;
  return false;
}

/** "What if", "say I miss it", at the start of what is said or behind a small word. */
function supposesAt(stream: Stream, place: number, first: number): boolean {
  return SUPPOSING.at(stream.tokens, place) !== null && (place === first || BEFORE.test(stream.tokens[place - 1]!.text) || stream.tokens[place - 1]!.after !== "");
}
