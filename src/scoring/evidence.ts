import type { Station, WordSpan } from "../station/types.ts";
import type { Evidence } from "./types.ts";

/** A span of words as the sheet shows it: quote, line, times, role of its first word. */
export function evidenceOf(station: Station, span: WordSpan): Evidence {
  const { words } = station.transcript;
  const inside = words.slice(span.first, span.end);
  const first = inside[0];
  const last = inside[inside.length - 1];
  const sentence = station.sentences.find(({ first: from, end }) => span.first >= from && span.first < end);
  return {
    first: span.first,
    end: span.end,
    quote: inside.map(({ text }) => text).join(" "),
    line: first?.line ?? 1,
    start: first?.start ?? null,
    endTime: last?.end ?? null,
    estimated: inside.some(({ timing }) => timing === "estimated"),
    role: sentence?.role ?? "unknown",
  };
}
