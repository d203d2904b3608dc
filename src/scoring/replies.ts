import { speechPhrases } from "../language/speech-phrases.ts";
import { tokenise } from "../language/token.ts";
import { beginsIn } from "../station/span.ts";
import { turnAt, turnsOf } from "../station/turns.ts";
import type { Station, Turn, WordSpan } from "../station/types.ts";
import { closesSentence, textsIn } from "../station/written-words.ts";

const STALLS = speechPhrases("stalls");
const LONGEST_STALL = 9;
const OPENING = { fewest: 6, most: 28 } as const;
/** "Mm", "okay": the patient's small reply does not end the candidate's answer. */
const SMALL_REPLY = 3;

/** Behind a whole sentence these take the answer as given: what comes next is something else. */
const TAKEN = /\b(got it|got that|i see|thanks|thank you|understood|makes sense|great|perfect)\b/i;

/** The candidate's words in reply to a span of the patient's: up to the patient's next turn of any size. */
export function replyTo(station: Station, span: WordSpan): WordSpan | null {
  const turns = turnsOf(station);
  const at = turnAt(turns, span);
  if (at < 0) return null;
  let reply = null as WordSpan | null;
  for (const turn of turns.slice(at + 1)) {
    if (turn.role === "candidate") reply = { first: reply?.first ?? turn.first, end: turn.end };
    else if (reply !== null && (turn.end - turn.first > SMALL_REPLY || takesAsGiven(station, reply, turn)) && !stalls(station, reply)) break;
  }
  return reply;
}

/** "You bin it." "Right, got it.": the answer ends there. */
function takesAsGiven({ transcript }: Station, reply: WordSpan, turn: WordSpan): boolean {
  return /[.!]["')]*$/.test(transcript.words[reply.end - 1]!.text) && TAKEN.test(textsIn(transcript, turn).join(" "));
}

/** "Um, good question." wins time; the answer comes later. */
function stalls({ transcript }: Station, reply: WordSpan): boolean {
  return reply.end - reply.first <= LONGEST_STALL && STALLS.find(tokenise(textsIn(transcript, reply))).length > 0;
}

/** The first sentences of a reply: enough words to know what it is about, few enough to be read. */
export function openingOf(station: Station, reply: WordSpan): WordSpan {
  const { words } = station.transcript;
  for (let end = reply.first + OPENING.fewest; end < Math.min(reply.end, reply.first + OPENING.most); end += 1) {
    if (closesSentence(words[end - 1]!.text)) return { first: reply.first, end };
  }
  return { first: reply.first, end: Math.min(reply.end, reply.first + OPENING.most) };
}

/** What the patient says next after a span of the candidate's. */
export function patientAfter(station: Station, span: WordSpan, fewest: number): Turn | null {
  return turnsOf(station).find((turn) => turn.first >= span.end - 1 && turn.role === "patient" && turn.end - turn.first >= fewest) ?? null;
}

/** Speech without full stops is one long sentence: so many words show what was meant. */
const LONGEST_QUOTE = 30;

/** The whole sentences that a span stands in, inside its turn; as it is where a sentence is too long to be read. */
export function sentenceAround(station: Station, span: WordSpan): WordSpan {
  const { words } = station.transcript;
  const turn = station.turns.find((one) => beginsIn(span, one));
  if (turn === undefined) return span;
  const closes = (place: number) => place === turn.end - 1 || closesSentence(words[place]!.text);
  let end = Math.min(span.end, turn.end);
  while (!closes(end - 1) && end - span.first < LONGEST_QUOTE) end += 1;
  if (!closes(end - 1)) end = Math.min(span.end, turn.end);
  let { first } = span;
  while (first > turn.first && !closes(first - 1) && end - first < LONGEST_QUOTE) first -= 1;
  return { first: first === turn.first || closes(first - 1) ? first : span.first, end };
}
