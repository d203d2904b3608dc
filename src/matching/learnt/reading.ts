import type { Learnt } from "../../rubric/learnt.ts";
import { MOSTLY_ASKED } from "../act-gate.ts";
import { toldOfOthers } from "../others.ts";
import { remembered } from "../remembered.ts";
import type { CompiledRubric } from "../compile.ts";
import type { Stream } from "../stream.ts";
import { LearntReader, type Reading } from "./learnt.ts";
import { sayingAt, sayingsOf, type Saying } from "./sayings.ts";

/** A saying and what it seems to say of each element that something was learnt about. */
export interface ReadSaying extends Saying {
  /** By place of the element. */
  readings: readonly Reading[];
  /** Hardly anything else is said. */
  alone: boolean;
  /** It asks: then it tells nothing by itself. */
  asks: boolean;
  /** It tells of somebody else ("we had a gentleman who ..."): then it is held against nobody. */
  ofOthers: boolean;
}

/** With fewer tokens around it a saying stands alone. */
const LEAST_AROUND = 20;

/** A stream read by what was learnt. */
export interface LearntReading {
  sayings: readonly ReadSaying[];
  /** Place of an element in the readings; undefined where nothing was learnt of it. */
  placeOf: (key: string) => number | undefined;
  /** Whether an unsafe statement has the place. */
  isStatement: readonly boolean[];
  /** The shortest saying that holds a stretch of tokens, whole or at least by half. */
  around: (first: number, end: number) => ReadSaying | null;
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
  const reader = new LearntReader(learnt);
  return { reader, places: new Map(reader.elements.map((key, place) => [key, place])) };
});

/** One stream is looked at several times while a station is marked. */
const readingsOf = remembered((_: Stream) => new Map<LearntReader, LearntReading>());

function readStream(reader: LearntReader, places: ReadonlyMap<string, number>, stream: Stream): LearntReading {
  const read = (saying: Saying): ReadSaying => ({ ...saying, readings: reader.read(saying.wording), alone: stream.tokens.length - (saying.end - saying.first) < LEAST_AROUND, asks: shareAsked(saying, stream) > MOSTLY_ASKED, ofOthers: toldOfOthers(saying, stream) });
  const sayings = sayingsOf(stream).map(read);
  return {
    sayings,
    placeOf: (key) => places.get(key),
    isStatement: reader.isStatement,
    around: (first, end) => {
      let best: ReadSaying | null = null;
      let most = 0;
      for (const saying of sayings) {
        const shared = Math.min(end, saying.end) - Math.max(first, saying.first);
        if (shared < (end - first) / 2 || shared < most || (shared === most && best !== null && saying.end - saying.first >= best.end - best.first)) continue;
        best = saying;
        most = shared;
      }
      if (best !== null) return best;
      const own = sayingAt(stream, first, end);
      return own === null ? null : read(own);
    },
  };
}

function shareAsked({ first, end }: Saying, { acts }: Stream): number {
  let asked = 0;
  for (let place = first; place < end; place += 1) if (acts[place] !== "tell") asked += 1;
  return asked / (end - first);
}
