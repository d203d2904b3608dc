import { besideOf, TURNED, turnedBy } from "../beside.ts";
import type { CompiledRubric } from "../compile.ts";
import { likelihoodOf, logOddsOf } from "../curve.ts";
import type { Passage } from "../passages.ts";
import type { Stream } from "../stream.ts";
import { tokensOf } from "../windows.ts";
import curves from "./curves.json" with { type: "json" };
import { learntReading, readingSigns, type ReadSaying } from "./reading.ts";

/*
 * What was learnt from marked sayings is a second reader beside the responses of the rubric: neither decides alone.
 * Logistic curves over what both say, fitted by `npm run fit:learnt` on sayings of hands that the lines were learnt
 * without.
 */

/** Log-odds beyond these are no surer. */
const SUREST = Math.log(999);

/** In the order of the weights of `turned` and `held` in curves.json. */
export const TURNED_SIGNS = ["log-odds of its likelihood", "log-odds that what stands beside turns it", "about", "turned", "hardly anything else is said", "turned where hardly anything is"] as const;
export const HELD_SIGNS = ["log-odds of its likelihood", "about", "turned", "hardly anything else is said"] as const;

/** From here on a passage that would say its element is taken for one that does not. */
export const TURNED_LIKELY = 0.9;
/** From here on a passage stands against the speaker. */
export const STANDS_AGAINST = 0.5;

/** A passage that likely says its element; closed where what stands beside it turns it, by that alone or with the second reader. */
export function weighedBeside(passage: Passage, rubric: CompiledRubric, stream: Stream): Passage {
  const beside = turnedBy(besideOf(passage, stream, rubric.elements));
  return beside >= TURNED || isTurned(turnedSigns(passage, beside, rubric, stream)) ? { ...passage, closed: [...passage.closed, "turned"] } : passage;
}

const isTurned = (signs: readonly number[] | null): boolean => signs !== null && likelihoodOf(curves.turned, signs) >= TURNED_LIKELY;

/**
 * How likely a passage that fits does not say its element hangs on these; null where nothing is known of it.
 * @param beside how likely what stands beside the passage turns it.
 */
export function turnedSigns(passage: Passage, beside: number, rubric: CompiledRubric, stream: Stream): number[] | null {
  const read = readingOf(passage, rubric, stream);
  if (read === null) return null;
  const { about, turned, alone } = read;
  return [logOddsOf(passage.likelihood ?? 0, SUREST), logOddsOf(beside, SUREST), about, turned, alone, alone * turned];
}

/** The signs of a passage that may be held against the speaker; null where nothing is known of its element. */
export function heldSigns(passage: Passage, rubric: CompiledRubric, stream: Stream): number[] | null {
  const read = readingOf(passage, rubric, stream);
  return read === null ? null : [logOddsOf(passage.likelihood ?? 0, SUREST), read.about, read.turned, read.alone];
}

/** Whether the second reader lets a passage be held against the speaker. */
export function standsForReader(passage: Passage, rubric: CompiledRubric, stream: Stream): boolean {
  const signs = heldSigns(passage, rubric, stream);
  return signs === null || likelihoodOf(curves.held, signs) >= STANDS_AGAINST;
}

function readingOf(passage: Passage, rubric: CompiledRubric, stream: Stream): ReturnType<typeof readingSigns> | null {
  const reading = learntReading(rubric, stream);
  const place = reading?.placeOf(`${passage.element.item}/${passage.element.element}`);
  if (reading === null || place === undefined) return null;
  const saying = reading.around(passage);
  return saying === null || isAllOf(passage, saying) ? null : readingSigns(saying, place);
}

/** A response said whole, with so few words beside it, is what the author of the rubric says it is. */
const BESIDE = 2;
const WHOLE = 0.95;

function isAllOf({ window, coverage }: Passage, saying: ReadSaying): boolean {
  return coverage >= WHOLE && saying.end - saying.first <= tokensOf(window).size + BESIDE;
}
