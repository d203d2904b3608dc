import type { Role, Station, WordSpan } from "../station/types.ts";
import { sentenceAt } from "./sentence-at.ts";
import { startGiven } from "./time/given.ts";
import type { Evidence } from "./types.ts";

/** Stands in a quote where other people's words are left out. */
export const LEFT_OUT = "\u2026";

/** Fewer words than these tell a reader little: the same speaker's words around them are given as well, so many on each side. */
const TELLING = 4;
const AROUND = 5;

/**
 * A span of words as the sheet shows it: quote, line, times, role of its first word. The quote holds that speaker's words
 * only; what others said in between is left out.
 */
export function evidenceOf(station: Station, span: WordSpan): Evidence {
  const { words } = station.transcript;
  const role = roleOf(station, span.first);
  const own = ownWords(station, span, role);
  const first = words[span.first];
  const last = words[own[own.length - 1] ?? span.end - 1];
  const estimated = words.slice(span.first, span.end).some(({ timing }) => timing === "estimated");
  return {
    first: span.first,
    end: span.end,
    quote: quoted(station, own),
    ...(own.length < TELLING && around(station, { first: span.first, end: (own[own.length - 1] ?? span.first) + 1 }, role)),
    line: first?.line ?? 1,
    start: first?.start ?? null,
    endTime: last?.end ?? null,
    estimated,
    ...(estimated && startGiven(station.transcript, span.first) && { startGiven: true as const }),
    role,
  };
}

function roleOf(station: Station, word: number): Role {
  return sentenceAt(station, word)?.role ?? "unknown";
}

function ownWords(station: Station, span: WordSpan, role: Role): number[] {
  const own: number[] = [];
  for (let word = span.first; word < span.end; ) {
    const sentence = sentenceAt(station, word);
    const end = Math.min(span.end, sentence?.end ?? span.end);
    if ((sentence?.role ?? "unknown") === role) for (let place = word; place < end; place += 1) own.push(place);
    word = end;
  }
  return own;
}

function quoted({ transcript: { words } }: Station, own: readonly number[]): string {
  return own.map((place, index) => (index > 0 && own[index - 1] !== place - 1 ? `${LEFT_OUT} ${words[place]!.text}` : words[place]!.text)).join(" ");
}

/** Words of the same sentence on both sides; where the sentence has none, of the same speaker's neighbouring ones. */
function around(station: Station, span: WordSpan, role: Role): { before?: string; after?: string } {
  const { words } = station.transcript;
  const sentences = [sentenceAt(station, span.first), sentenceAt(station, span.end - 1)];
  let from = Math.max(sentences[0]?.first ?? span.first, span.first - AROUND);
  let to = Math.min(sentences[1]?.end ?? span.end, span.end + AROUND);
  if (from === span.first && to === span.end) {
    while (from > 0 && span.first - from < AROUND && roleOf(station, from - 1) === role) from -= 1;
    while (to < words.length && to - span.end < AROUND && roleOf(station, to) === role) to += 1;
  }
  const text = (first: number, end: number) => words.slice(first, end).map((word) => word.text).join(" ");
  return { ...(from < span.first && { before: text(from, span.first) }), ...(to > span.end && { after: text(span.end, to) }) };
}
