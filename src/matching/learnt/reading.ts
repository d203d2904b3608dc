import { NOTHING_KNOWN } from "../../rubric/learnt-keys.ts";
import type { Learnt } from "../../rubric/schema.ts";
import { MOSTLY_ASKED } from "../act-gate.ts";
import type { CompiledElement, CompiledRubric } from "../compile.ts";
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
  /** Whether it asks: then it tells nothing by itself. */
  asks: boolean;
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
  /** The item of the element that has the place. */
  itemAt: readonly string[];
  /** The sayings that hold a stretch of tokens, first the one that holds most of it, the shortest among equals; where none does the stretch itself, and none where too little is said. */
  around: (stretch: { first: number; end: number }) => ReadSaying[];
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
  const read = (saying: Saying): ReadSaying => ({ ...saying, readings: reader.read(saying.wording), company: stream.tokens.length - (saying.end - saying.first) < LEAST_AROUND ? "lonely" : "company", asks: asksOnly(saying, stream) });
  const sayings = sayingsOf(stream).map(read);
  return {
    sayings,
    placeOf: (key) => places.get(key),
    isStatement: reader.isStatement,
    itemAt: reader.itemAt,
    around: (stretch) => {
      const length = ({ first, end }: Saying) => end - first;
      const holding = sayings.filter((saying) => holdsHalf(saying, stretch)).sort((a, b) => inCommon(b, stretch) - inCommon(a, stretch) || length(a) - length(b));
      if (holding.length > 0) return holding;
      const own = sayingAt(stream, stretch.first, stretch.end);
      return own === null ? [] : [read(own)];
    },
  };
}

/** Log-odds beyond these are no surer: to the curves of what sayings do to elements, and to those of unsafe statements. */
export const SUREST = 6;
const SUREST_UNSAFE = 5;

/** What a saying seems to say of the element in a place, as the curves of unsafe statements take it. */
export function readingSigns({ readings }: ReadSaying, place: number): Pick<Reading, "about" | "turned"> {
  const { about, turned } = readings[place]!;
  return { about: within(about, SUREST_UNSAFE), turned: within(turned, SUREST_UNSAFE) };
}

function asksOnly({ first, end }: Saying, { acts }: Stream): boolean {
  let asked = 0;
  for (let place = first; place < end; place += 1) if (acts[place] !== "tell") asked += 1;
  return asked / (end - first) > MOSTLY_ASKED;
}

/** Whether an element is said by asking: "have you had one of these before?". Who does not ask says nothing wrong. */
export function isAsked({ kind }: Pick<CompiledElement, "kind">): boolean {
  return kind === "ask" || kind === "invite-questions";
}
