import type { Station, Turn } from "./types.ts";

/** Turns inside the station by people who take part in it. */
export function turnsOf(station: Station): Turn[] {
  return station.turns.filter((turn) => turn.first < station.end.word && turn.end > station.start.word && turn.role !== "announcer");
}
