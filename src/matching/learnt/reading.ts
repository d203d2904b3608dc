import { NOTHING_KNOWN } from "../../rubric/learnt.ts";
import type { Learnt } from "../../rubric/schema.ts";
import { MOSTLY_ASKED } from "../act-gate.ts";
import type { CompiledRubric } from "../compile.ts";
import { within } from "../curve.ts";
import { remembered } from "../remembered.ts";
import type { Stream } from "../stream.ts";
import { LearntReader, type Reading } from "./learnt.ts";
import { holdsHalf, inCommon, sayingAt, sayingsOf, type Saying } from "./sayings.ts";

/** A saying and what it seems to say of each element that something was learnt about. */
export interface ReadSaying extends Saying {
  /** By place of the element. */
  readings: readonly Reading[];
  company: Company;
}

/** Whether anything is said around a saying that speaks for it: the curves know both ways apart. */
export type Company = "company" | "lonely";

/** With fewer tokens around it a saying stands alone. The curves were fitted so; `isAlone` of company.ts draws the line one token later. */
const LEAST_AROUND = 20;

/** A stream read by what was learnt. */
export interface LearntReading {
  sayings: readonly ReadSaying[];
  /** Place of an element in the readings; undefined where nothing is known of it. */
  placeOf: (key: string) => number | undefined;
  /** Whether an unsafe statement has the place. */
  isStatement: readonly boolean[];
  /** The saying that holds most of a stretch of tokens, the shortest among equals, or else the stretch itself; null where too little is said. */
  around: (stretch: { first: number; end: number }) => ReadSaying | null;
}

/** @returns null where nothing was learnt about the rubric. */
export function learntReading({ learnt }: Pick<CompiledRubric, "learnt">, stream: Stream): LearntReading | null {
  if (learnt === null) return null;
  const { reader, places } = readerOf(learnt);
  const readings = readingsOf(stream);
  let known = readings.get(reader);
  if (known === undefined) readings.set(reader, (known = readStream(reader, places, stream)));
  return known;
}

const readerOf = remembered((learnt: Learnt) => {
  const known = Object.entries(learnt.elements).filter(([, { about }]) => about !== NOTHING_KNOWN);
  return { reader: new LearntReader(learnt), places: new Map(known.map(([key, { place }]) => [key, place])) };
});

/** One stream is looked at several times while a station is marked. */
const readingsOf = remembered((_: Stream) => new Map<LearntReader, LearntReading>());

function readStream(reader: LearntReader, places: ReadonlyMap<string, number>, stream: Stream): LearntReading {
  const read = (saying: Saying): ReadSaying => ({ ...saying, readings: reader.read(saying.wording), company: stream.tokens.length - (saying.end - saying.first) < LEAST_AROUND ? "lonely" : "company" });
  const sayings = sayingsOf(stream).map(read);
  return {
    sayings,
    placeOf: (key) => places.get(key),
    isStatement: reader.isStatement,
    around: (stretch) => {
      const length = ({ first, end }: Saying) => end - first;
      const [best] = sayings.filter((saying) => holdsHalf(saying, stretch)).sort((a, b) => inCommon(b, stretch) - inCommon(a, stretch) || length(a) - length(b));
      if (best !== undefined) return best;
      const own = sayingAt(stream, stretch.first, stretch.end);
      return own === null ? null : read(own);
    },
  };
}

/** Log-odds of a reading beyond these are no surer. */
export const SUREST = 5;

/** What a saying seems to say of the element in a place, as the curves take it. */
export function readingSigns({ readings }: ReadSaying, place: number): Reading {
  const { about, turned } = readings[place]!;
  return { about: within(about, SUREST), turned: within(turned, SUREST) };
}

/** How far an element is ahead of all others in what a saying is about. */
export function leadOf({ readings }: ReadSaying, place: number, { isStatement }: LearntReading): number {
  const other = readings.reduce((best, { about }, at) => (at === place || isStatement[at]! ? best : Math.max(best, about)), -SUREST);
  return within(readings[place]!.about - other, SUREST);
}

/** Whether a saying asks: then it tells nothing by itself. */
export function asksOnly({ first, end }: Saying, { acts }: Stream): boolean {
  let asked = 0;
  for (let place = first; place < end; place += 1) if (acts[place] !== "tell") asked += 1;
  return asked / (end - first) > MOSTLY_ASKED;
}
