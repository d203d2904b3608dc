import { beginsIn } from "./span.ts";
import type { Station, Turn, WordSpan } from "./types.ts";

/** Turns inside the station by people who take part in it. */
export function turnsOf(station: Station): Turn[] {
  return station.turns.filter((turn) => turn.first < station.end.word && turn.end > station.start.word && turn.role !== "announcer");
}

/** The place among turns of the one in which a span begins; -1 where it begins in none of them. */
export function turnAt(turns: readonly Turn[], span: Pick<WordSpan, "first">): number {
  return turns.findIndex((turn) => beginsIn(span, turn));
}
