import type { Finding } from "../problem/problem.ts";
import { applies } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import type { Rubric } from "../rubric/schema.ts";
import { USUAL_PACE } from "../scoring/time/plan.ts";
import type { Seconds } from "../transcript/types.ts";
import { findingAt } from "./finding.ts";
import type { Readings } from "./readings.ts";
import type { RubricFigures } from "./types.ts";
import type { SaidElement } from "./utterances.ts";

/** Words of the shortest and of the middling (median) sentence of every element that applies. */
export function wordsToSay(elements: readonly SaidElement[], rubric: Rubric): Readings["speaking"] {
  const lengths = elements.filter(({ item }) => applies(item, rubric.scenario)).map(({ said }) => said.flat().map((text) => text.split(" ").length).sort((a, b) => a - b));
  const total = (pick: (sorted: number[]) => number) => lengths.reduce((sum, sorted) => sum + pick(sorted), 0);
  return { words: total((sorted) => sorted[0]!), middleWords: total((sorted) => sorted[sorted.length >> 1]!) };
}

/**
 * The time it takes to say the shortest response of every element of every item that applies, at the usual pace of an
 * interview (190 words a minute: Tauroza and Allison 1990, "Speech rates in British English", Applied Linguistics 11(1)).
 * The patient's talk, pauses and everything said in more words come on top: a station needs more, never less.
 */
export function speakingTime({ time }: Rubric, { words, middleWords }: Readings["speaking"]): RubricFigures["speaking"] {
  return { words, seconds: secondsFor(words), middleWords, middleSeconds: secondsFor(middleWords), limit: time.limit, target: time.target };
}

/** To a tenth: the estimate is no finer than that. */
function secondsFor(words: number): number {
  return Math.round((600 * words) / USUAL_PACE) / 10;
}

/** No station is shorter: a limit below it was meant in minutes. */
const MINUTE: Seconds = 60;
const SECONDS = "A number alone is seconds: write '7 min' for minutes.";

/** A warning when even the shortest words do not fit into the limit; a note when the middling ones do not fit into the target. */
export function checkLength({ places }: PlacedRubric, speaking: RubricFigures["speaking"]): Finding[] {
  const { words, seconds, middleWords, middleSeconds, limit, target } = speaking;
  const mend = limit < MINUTE ? SECONDS : undefined;
  const tell = (severity: Finding["severity"], length: string, count: number, takes: number, over: string) =>
    findingAt(places.top(["time"]), "SW-C13", severity, `to say the ${length} response of every element takes about ${Math.round(takes)} s (${count} words at ${USUAL_PACE} a minute), more than the ${over}`, mend);
  if (seconds > limit) return [tell("warning", "shortest", words, seconds, `limit of ${limit} s`)];
  if (middleSeconds > target) return [tell("info", "middling", middleWords, middleSeconds, `target of ${target} s`)];
  return limit < MINUTE ? [findingAt(places.top(["time"]), "SW-C13", "warning", `the limit is ${limit} seconds`, SECONDS)] : [];
}
