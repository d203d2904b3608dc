import { wordWeight } from "../language/lexicon.ts";
import { opensInstruction } from "../language/main-clause.ts";
import { FETCHING, storyWords, type Story } from "../language/small-talk.ts";
import type { Token } from "../language/token.ts";
import { remembered } from "./remembered.ts";
import { sentenceUpTo, type Stream } from "./stream.ts";
import { tokensOf, type Window } from "./windows.ts";

/** So soon behind what is asked of the patient it is said what for: "hold on for ten seconds while I get that". */
const FETCHED_WITHIN = 8;
/** Weighs enough to be a thing. */
const A_THING = 1;
/** So many words may stand between "my" and the thing. */
const THING_WITHIN = 3;

/** What a clause tells of the speaker, in places of the stream; by clause, worked out when first asked for. */
const storiesOf = remembered((_: Stream) => new Map<number, Story>());

function storyOf(stream: Stream, clause: number): Story {
  const known = storiesOf(stream);
  let story = known.get(clause);
  if (story === undefined) known.set(clause, (story = storyWords(stream.tokens, stream.clauses[clause]!)));
  return story;
}

/**
 * Whether the words of a passage teach the patient nothing: the speaker tells a story of their own ("my daughter loses the
 * lid of everything"), or has the patient wait ("hold on for ten seconds while I get that").
 */
export function isAside(window: Window, stream: Stream): boolean {
  const { tokens } = stream;
  const to = sentenceUpTo(stream, window.end, FETCHED_WITHIN);
  for (let place = window.first; place < to - 1; place += 1) if (/^(while|till|until)$/.test(tokens[place]!.text) && FETCHING.at(tokens, place) !== null) return true;
  const story = storyOf(stream, stream.clauseOf[window.first]!);
  if (story.verb === null && story.mine.length === 0) return false;
  // What the response itself says of the speaker is no story.
  if (SPEAKS_OF_ITSELF.test(window.response.text)) return false;
  if (story.verb !== null && story.verb <= window.first && !tellsBetween(tokens, story.verb, window.first)) return true;
  const carrying = tokensOf(window);
  return story.mine.some((at) => at < window.first && !ownsWhatIsTaught(stream, at, carrying) && !tellsBetween(tokens, at + 1, window.first));
}

const SPEAKS_OF_ITSELF = /\b(i|i'll|i've|i'm|my|mine|me|we|our|us)\b/;

/** "My uncle took his with a nightcap so no alcohol with it": behind the story it is told what to do. */
function tellsBetween(tokens: readonly Token[], from: number, to: number): boolean {
  for (let place = from + 1; place <= to; place += 1) if (/^(so|but|not|no|never|please|you|always)$/.test(tokens[place]!.text) || opensInstruction(tokens, place)) return true;
  return false;
}

/** Whether the first thing behind "my" is one that the passage is about: "I hold my breath". */
function ownsWhatIsTaught({ tokens }: Stream, at: number, carrying: ReadonlySet<number>): boolean {
  for (let place = at + 1; place <= at + THING_WITHIN && place < tokens.length; place += 1) {
    if (carrying.has(place)) return true;
    if (wordWeight(tokens[place]!.stem) >= A_THING) return false;
  }
  return true;
}
