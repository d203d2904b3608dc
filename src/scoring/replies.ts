import { turnsOf } from "../station/turns.ts";
import type { Station, Turn, WordSpan } from "../station/types.ts";

/** "Mm", "okay": the patient's small reply does not end the candidate's answer. */
const SMALL_REPLY = 3;

/** The candidate's words in reply to a span of the patient's: up to the patient's next turn of any size. */
export function replyTo(station: Station, span: WordSpan): WordSpan | null {
  const turns = turnsOf(station);
  const at = turns.findIndex((turn) => span.first >= turn.first && span.first < turn.end);
  if (at < 0) return null;
  let reply = null as WordSpan | null;
  for (const turn of turns.slice(at + 1)) {
    if (turn.role === "candidate") reply = { first: reply?.first ?? turn.first, end: turn.end };
    else if (reply !== null && turn.end - turn.first > SMALL_REPLY) break;
  }
  return reply;
}

/** What the patient says next after a span of the candidate's. */
export function patientAfter(station: Station, span: WordSpan, fewest: number): Turn | null {
  return turnsOf(station).find((turn) => turn.first >= span.end - 1 && turn.role === "patient" && turn.end - turn.first >= fewest) ?? null;
}
