import { speechPhrases } from "../language/speech-phrases.ts";
import { tokenise } from "../language/token.ts";
import type { WordSpan } from "../station/types.ts";
import type { Context } from "./context.ts";
import { replyTo } from "./replies.ts";
import type { Evidence, QuestionResult } from "./types.ts";

const DEFERRALS = speechPhrases("deferrals");

/** A longer reply said something; whether it answered, a person hears. */
const SOME_REPLY = 6;
/** A patient's question of fewer words ("okay?", "is it?") asks nothing of its own. */
const FEWEST_WORDS = 4;

/** The scripted questions and how each was answered; then the patient's other questions. */
export function patientQuestions(context: Context): QuestionResult[] {
  const found = scriptedSpans(context);
  const scripted = context.rubric.scenario.questions.map((question): QuestionResult => {
    const label = plainPhrase(question.says[0]!);
    const match = found.find((candidate) => candidate.question === question.id);
    if (match === undefined) return { id: question.id, label, asked: null, answer: "not-asked", evidence: null, scripted: true };
    return { id: question.id, label, asked: context.evidence(match.span), ...answerTo(context, match.span, question.id, question.answered_by ?? []), scripted: true };
  });
  const taken = found.map(({ span }) => span);
  const others = context.matches.asked
    .filter((span) => span.end - span.first >= FEWEST_WORDS && !taken.some((other) => span.first < other.end && other.first < span.end))
    .map((span): QuestionResult => {
      const asked = context.evidence(span);
      const { answer, evidence } = answerTo(context, span, null, []);
      return { id: `question-${span.first}`, label: asked.quote, asked, answer, evidence, scripted: false };
    });
  return [...scripted, ...others];
}

/**
 * Where the scripted questions were asked. One asked in words that the script does not foresee is known by its answer:
 * the reply says what the script has for that question and for no other that is still open.
 */
function scriptedSpans(context: Context): { question: string; span: WordSpan }[] {
  const found: { question: string; span: WordSpan }[] = context.matches.questions.map(({ question, span }) => ({ question, span }));
  const free = (span: WordSpan) => span.end - span.first >= FEWEST_WORDS && !found.some((other) => span.first < other.span.end && other.span.first < span.end);
  for (const span of context.matches.asked) {
    if (!free(span)) continue;
    const reply = replyTo(context.station, span);
    if (reply === null) continue;
    const said = new Set(context.matches.elements.filter((match) => match.verdict === "right" && match.span.first >= reply.first && match.span.first < reply.end).map(({ item }) => item));
    const open = context.rubric.scenario.questions.filter((question) => !found.some((other) => other.question === question.id) && (question.answered_by ?? []).some((item) => said.has(item)));
    if (open.length === 1) found.push({ question: open[0]!.id, span });
  }
  return found;
}

/** The notation of phrases, as a person reads it: the first of each alternative. */
export function plainPhrase(phrase: string): string {
  return phrase.replace(/\(([^()|]*)(?:\|[^()]*)?\)/g, "$1").replace(/([^\s|]+)(?:\|[^\s]+)/g, "$1").replaceAll("{quantity}", "...");
}

function answerTo(context: Context, question: WordSpan, id: string | null, answeredBy: readonly string[]): { answer: QuestionResult["answer"]; evidence: Evidence | null } {
  const reply = replyTo(context.station, question);
  if (reply === null) return { answer: "ignored", evidence: null };
  const inside = (span: WordSpan) => span.first >= reply.first && span.first < reply.end;
  const elements = context.matches.elements.filter((match) => (id === null || answeredBy.includes(match.item)) && inside(match.span));
  const own = context.matches.answers.filter((match) => match.question === id && inside(match.span));
  const wrong = [...elements.filter(({ verdict }) => verdict === "wrong"), ...own.filter(({ verdict }) => verdict === "wrong")];
  const right = [...elements.filter(({ verdict }) => verdict === "right"), ...own.filter(({ verdict }) => verdict === "right")];
  const last = (spans: { span: WordSpan }[]) => Math.max(-1, ...spans.map(({ span }) => span.first));
  if (wrong.length > 0 && last(wrong) > last(right) && id !== null) return { answer: "incorrect", evidence: context.evidence(wrong[0]!.span) };
  if (right.length > 0) return { answer: "answered", evidence: context.evidence(right[0]!.span) };
  const words = context.station.transcript.words.slice(reply.first, reply.end).map(({ text }) => text);
  const deferral = DEFERRALS.find(tokenise(words))[0];
  if (deferral !== undefined) return { answer: "deferred", evidence: context.evidence({ first: reply.first, end: Math.min(reply.end, reply.first + 25) }) };
  if (words.length < SOME_REPLY) return { answer: "ignored", evidence: null };
  return { answer: "cannot-tell", evidence: context.evidence({ first: reply.first, end: Math.min(reply.end, reply.first + 25) }) };
}
