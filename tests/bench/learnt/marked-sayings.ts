import { sayingAt, type Saying } from "../../../src/matching/learnt/sayings.ts";
import { streamOf } from "../../../src/matching/stream.ts";
import { toldStation, type ToldTurn } from "../../../src/station/told.ts";
import { readDrills } from "../match/drill.ts";
import { readPassages } from "../match/passages.ts";
import { readTalk } from "../match/talk.ts";

/** What a candidate said, and what people say that it says. */
export interface MarkedSaying {
  rubric: string;
  /** Elements, as item/element, that it says rightly, and wrongly. Empty: it speaks of none. */
  right: string[];
  wrong: string[];
  /** Statements of the unsafe list that it states. */
  unsafe: string[];
  /** Statements of the unsafe list that it comes near and does not state. */
  safe: string[];
  /** The elements of which it was judged at all; null: of all. */
  judged: string[] | null;
  hand: string;
  saying: Saying;
}

/** All invented sayings that may be learnt from: of drills all but d3, tuning and practice passages, annotated talk. */
export function markedSayings(): MarkedSaying[] {
  const found: MarkedSaying[] = [];
  const add = ({ turns, ...marked }: Omit<MarkedSaying, "saying" | "safe"> & { turns: ToldTurn[]; safe?: string[] }) => {
    const stream = streamOf(toldStation(turns, marked.rubric), ["candidate"]);
    const saying = sayingAt(stream, 0, stream.tokens.length);
    if (saying !== null) found.push({ safe: [], ...marked, saying });
  };
  const alone = (says: string): ToldTurn[] => [{ role: "candidate", says }];
  for (const round of ["d1", "d2", "d4", "d5", "d6", "d7", "d8", "d9"]) {
    for (const { rubric, writer, elements, unsafe, safe } of readDrills(round)) {
      for (const [statement, texts] of Object.entries(unsafe)) for (const says of texts) add({ rubric, right: [], wrong: [], unsafe: [statement], judged: [], hand: handOf(round, writer), turns: alone(says) });
      for (const [statement, texts] of Object.entries(safe)) for (const says of texts) add({ rubric, right: [], wrong: [], unsafe: [], safe: [statement], judged: [], hand: handOf(round, writer), turns: alone(says) });
      for (const [key, { right, near, wrong }] of Object.entries(elements)) {
        for (const says of right) add({ rubric, right: [key], wrong: [], unsafe: [], judged: [key], hand: round, turns: alone(says) });
        for (const says of wrong) add({ rubric, right: [], wrong: [key], unsafe: [], judged: [key], hand: round, turns: alone(says) });
        for (const says of near) add({ rubric, right: [], wrong: [], unsafe: [], judged: [key], hand: round, turns: alone(says) });
      }
    }
  }
  for (const { rubric, item, element, turns, label, writer } of [...readPassages().filter(({ side }) => side === "tuning"), ...readPassages("fixtures/passages-practice")]) {
    const key = `${item}/${element}`;
    add({ rubric, right: label === "right" ? [key] : [], wrong: label === "wrong" ? [key] : [], unsafe: [], judged: [key], hand: writer, turns });
  }
  for (const { rubric, name, sentences } of readTalk()) {
    for (const { text, says, wrong, unsafe } of sentences) {
      add({ rubric, right: says.filter((key) => !wrong.includes(key)), wrong: [...wrong], unsafe: [...unsafe], judged: null, hand: handOfTalk(name), turns: alone(text) });
    }
  }
  return found;
}

/** Talk is called by its rubric and its hand. */
export const handOfTalk = (name: string): string => name.replace(/^.*-/, "");

/** What is unsafe alone was written by several hands in one round, what elements say by one a round. */
export const handOf = (round: string, writer: string): string => (["d8", "d9"].includes(round) ? writer : round);
