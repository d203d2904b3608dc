import type { CompiledElement, CompiledRubric } from "../compile.ts";
import type { Passage } from "../passages.ts";
import type { Stream } from "../stream.ts";
import type { Judgement } from "../types.ts";
import { learntReading, type LearntReading, type ReadSaying } from "./reading.ts";

/** What the responses alone leave of a stream. */
export interface ByResponses {
  rubric: CompiledRubric;
  stream: Stream;
  passages: readonly Passage[];
}

/** Everything said in a stream, as both readers see it. */
export interface ReadByBoth extends ByResponses {
  reading: LearntReading;
  /** Passages by the element that they may carry, and those that say an element rightly by its item. */
  passagesOf: ReadonlyMap<CompiledElement, readonly Passage[]>;
  saidOf: ReadonlyMap<string, readonly Passage[]>;
  /** How likely what stands beside a passage turns it, once asked. */
  turned: Map<Passage, number>;
  /** What each saying does to each element, once asked. */
  judged: Map<CompiledElement, Map<ReadSaying, Judgement>>;
}

/** One set of passages is looked at twice while a station is marked. */
const known = new WeakMap<readonly Passage[], ReadByBoth>();

/** @returns null where nothing was learnt about the rubric. */
export function readByBoth(by: ByResponses): ReadByBoth | null {
  const before = known.get(by.passages);
  if (before !== undefined && before.rubric === by.rubric && before.stream === by.stream) return before;
  const reading = learntReading(by.rubric, by.stream);
  if (reading === null) return null;
  const says = by.passages.filter(({ verdict, closed }) => verdict === "right" && closed.length === 0);
  const read: ReadByBoth = { ...by, reading, passagesOf: grouped(by.passages, ({ element }) => element), saidOf: grouped(says, ({ element }) => element.item), turned: new Map(), judged: new Map() };
  known.set(by.passages, read);
  return read;
}

function grouped<Of, Key>(all: readonly Of[], keyOf: (one: Of) => Key): Map<Key, Of[]> {
  const groups = new Map<Key, Of[]>();
  for (const one of all) {
    const group = groups.get(keyOf(one));
    if (group === undefined) groups.set(keyOf(one), [one]);
    else group.push(one);
  }
  return groups;
}
