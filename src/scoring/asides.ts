import { turnsOf } from "../station/turns.ts";
import type { WordSpan } from "../station/types.ts";
import type { Context } from "./context.ts";
import { replyTo } from "./replies.ts";

/** Shorter stretches are the oil of a conversation. */
const ASIDE_WORDS = 25;
/** A passage that came this near to an element is about the station's business, marked or not. */
const NEAR = 0.5;

/**
 * Long stretches of the candidate's that touch nothing the rubric asks for and answer no question: what could go
 * first when time is short. A guess to be read, not a fault.
 */
export function asidesOf(context: Context): WordSpan[] {
  const { matches, station } = context;
  const useful = new Set<number>();
  const use = (span: WordSpan) => {
    for (let word = span.first; word < span.end; word += 1) useful.add(word);
  };
  for (const match of matches.elements) use(match.clause);
  for (const { span } of [...matches.unsafe, ...matches.answers]) use(span);
  for (const attempt of matches.nearest) if (attempt.score >= NEAR) use(attempt.span);
  for (const span of matches.claims) use(span);
  for (const span of matches.asked) {
    const reply = replyTo(station, span);
    if (reply !== null) use(reply);
  }
  const asides: WordSpan[] = [];
  for (const turn of turnsOf(station)) {
    if (turn.role !== "candidate") continue;
    const from = Math.max(turn.first, station.start.word);
    const to = Math.min(turn.end, station.end.word);
    let first = from;
    for (let word = from; word <= to; word += 1) {
      if (word < to && !useful.has(word)) continue;
      if (word - first >= ASIDE_WORDS) asides.push({ first, end: word });
      first = word + 1;
    }
  }
  return asides;
}
