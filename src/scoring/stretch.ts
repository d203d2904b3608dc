import type { WordSpan } from "../station/types.ts";
import type { Context } from "./context.ts";
import type { AsideResult } from "./types.ts";

/** A stretch of talk with what it costs: spoken words, and seconds where the file has times. */
export function stretchWithCost(context: Context, span: WordSpan): AsideResult {
  const evidence = context.evidence(span);
  const words = context.station.transcript.words.slice(span.first, span.end).filter(({ kind }) => kind === "word").length;
  return { evidence, words, seconds: evidence.start === null || evidence.endTime === null ? null : Math.max(0, evidence.endTime - evidence.start) };
}
