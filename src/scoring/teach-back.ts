import type { Context } from "./context.ts";
import type { JudgedItem } from "./items.ts";
import { patientAfter, replyTo } from "./replies.ts";
import type { TeachBackResult } from "./types.ts";

/** Fewer words are an "okay", no teach-back. */
const SOME_WORDS = 5;

/** Whether a teach-back was asked for and given, what the patient got wrong, and what became of that. */
export function teachBack(context: Context, items: readonly JudgedItem[]): TeachBackResult {
  const kinds = new Set(items.filter(({ item }) => item.kind === "teach-back").map(({ item }) => item.id));
  const asked = context.matches.elements.find((match) => kinds.has(match.item) && match.verdict === "right");
  const answer = asked === undefined ? null : patientAfter(context.station, asked.span, SOME_WORDS);
  const errors = context.matches.patient
    .filter((match) => match.verdict === "wrong" && taughtBefore(context, match.item, match.element, match.span.first))
    .map((match) => {
      const reply = replyTo(context.station, match.span);
      const right = context.matches.elements.find((other) => other.item === match.item && other.element === match.element && other.verdict === "right" && reply !== null && other.span.first >= reply.first && other.span.first < reply.end);
      const label = items.find(({ item }) => item.id === match.item)?.item.elements.find(({ id }) => id === match.element)?.label ?? match.element;
      return { evidence: context.evidence(match.span), label, noticed: right !== undefined && reply !== null ? context.evidence(firstWords(reply)) : null, corrected: right === undefined ? null : context.evidence(right.span) };
    });
  return { asked: asked === undefined ? null : context.evidence(asked.span), answered: answer === null ? null : context.evidence({ first: answer.first, end: answer.end }), errors };
}

/** A misunderstanding is one of something that was taught. */
function taughtBefore(context: Context, item: string, element: string, word: number): boolean {
  return context.matches.elements.some((match) => match.item === item && match.element === element && match.span.first < word);
}

const OPENING_WORDS = 12;

function firstWords(reply: { first: number; end: number }) {
  return { first: reply.first, end: Math.min(reply.end, reply.first + OPENING_WORDS) };
}
