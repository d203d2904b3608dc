import { ProblemError } from "../problem/problem.ts";
import { NOTHING_KNOWN } from "./learnt-keys.ts";
import { learntSchema } from "./learnt-schema.ts";
import type { Learnt } from "./schema.ts";

/* Reads what was learnt about a rubric, and marks what no longer is its own. */

/**
 * @param file as messages call it.
 * @param labels of the rubric's elements, by item/element: an element that has gone, or is worded otherwise now, is marked as not known.
 * @throws ProblemError SW-R08
 */
export function readLearnt(text: string, file: string, owner: string, labels: ReadonlyMap<string, string>): Learnt {
  const refuse: (message: string) => never = (message) => {
    throw new ProblemError([{ code: "SW-R08", severity: "error", file, line: 1, column: 1, message, mend: "Take the file as it was written, or take 'learnt' out of the rubric." }]);
  };
  const parsed = learntSchema.safeParse(jsonOf(text, refuse));
  if (!parsed.success) return refuse(`it is no file of what was learnt: ${parsed.error.issues[0]!.path.join("/")}: ${parsed.error.issues[0]!.message}`);
  const { elements, anyhow, words, id: of } = parsed.data;
  if (of !== owner) refuse(`it was learnt about '${of}', and '${owner}' names it`);
  const places = Object.values(elements).map(({ place }) => place);
  if (places.some((place) => place >= places.length) || new Set(places).size < places.length) refuse("its elements do not stand in places of their own from 0");
  const isPlace = (value: number) => Number.isInteger(value) && value >= 0 && value <= places.length;
  for (const [word, row] of Object.entries(words)) {
    if (row.length % 3 !== 0 || row.some((value, at) => at % 3 === 0 && !isPlace(value))) refuse(`the row of '${word}' is not made of a place and two numbers each`);
  }
  return { elements: Object.fromEntries(Object.entries(elements).map(([key, element]) => [key, element.label === labels.get(key) ? element : { ...element, about: NOTHING_KNOWN }])), anyhow, words };
}

function jsonOf(text: string, refuse: (message: string) => never): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    return refuse(`it is not JSON: ${(error as Error).message}`);
  }
}
