import { LONGEST_CLAUSE } from "../language/clause.ts";
import { isOpen, type Passage } from "./passages.ts";
import { inOneSentence, type Stream } from "./stream.ts";

/** Where passages overlap, an open gate goes before a closed one, then the better fit; being wrong needs the clearly better fit. */
export function bestOf(passages: readonly Passage[]): Passage[] {
  const rank = (passage: Passage) => (passage.closed.length === 0 ? 2 : 0) + passage.coverage - (HANDICAPS[passage.verdict] ?? 0);
  const kept: Passage[] = [];
  for (const passage of [...passages].sort((a, b) => rank(b) - rank(a) || a.end - a.first - (b.end - b.first) || a.first - b.first)) {
    if (!kept.some((other) => passage.first < other.end && other.first < passage.end)) kept.push(passage);
  }
  return kept.sort((a, b) => a.first - b.first);
}

/** What is held against somebody must fit better by so much. */
export const WRONG_HANDICAP = 0.04;
/** What is right elsewhere goes behind what is right here: of "under the tongue" and "on or under it" the station's own. */
const HANDICAPS: Partial<Record<Passage["verdict"], number>> = { wrong: WRONG_HANDICAP, unclear: WRONG_HANDICAP, elsewhere: 0.03 };
/** So much better a fit decides what a sentence says that seems to say a thing and its opposite. */
const CLEARER = 0.05;

/** One sentence says one thing of an element: "avoid pointing it outwards, the middle is what you're after". */
export function oneVoice(passages: Passage[], stream: Stream): Passage[] {
  const opposed = passages.some(({ verdict }) => verdict === "wrong");
  if (!opposed) return passages;
  return passages.filter((passage) => {
    if (passage.verdict !== "right" && passage.verdict !== "wrong") return true;
    return !passages.some((other) => {
      if (other.verdict === passage.verdict || (other.verdict !== "right" && other.verdict !== "wrong") || !isOpen(other)) return false;
      if (other.coverage < passage.coverage + (passage.verdict === "right" ? CLEARER : 0)) return false;
      return sameSentence(passage, other, stream);
    });
  });
}

export function sameSentence(a: Passage, b: Passage, stream: Stream): boolean {
  const [from, to] = a.first < b.first ? [a.first, b.first] : [b.first, a.first];
  if (stream.turnOf[from] !== stream.turnOf[to]) return false;
  return inOneSentence(stream, from, to) && to - from <= LONGEST_CLAUSE;
}
