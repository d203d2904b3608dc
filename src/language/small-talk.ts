import smallTalkData from "./lexicon/small-talk.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { phraseList } from "./phrase-set.ts";
import type { Token } from "./token.ts";

const WORDS = smallTalkData as LexiconFile<"small-talk">;
const MINE = new Set(WORDS.mine);
const OTHERS = new Set(WORDS.others);
const TELLERS = new Set(WORDS.tellers);
const PAST = phraseList(WORDS.past, { by: "text" });
const OPENERS = phraseList(WORDS.openers, { by: "text" });
const INTERRUPTIONS = phraseList(WORDS.interruptions, { by: "text" });
const SPOKEN_OF = phraseList(WORDS.spoken_of, { by: "text" });
const DONE_HERE = new Set(WORDS.done_here);
/** Ask the patient to wait: "while I fetch it". */
export const FETCHING = phraseList(WORDS.fetching, { by: "text" });
/** "You know", "you see": nobody is spoken to. */
const NOBODY = /^(know|see|could|would)$/;
/** A verb behind its teller: "I once, at Christmas, dropped". */
const VERB_WITHIN = 5;

/**
 * Whether a stretch of talk tells of oneself or of other people, or opens small talk, and tells the patient nothing.
 * @param aboutOthers false where somebody else is the patient, so that "he" and "she" are what the talk is about.
 */
export function isSmallTalk(tokens: readonly Token[], aboutOthers: boolean): boolean {
  if (OPENERS.find(tokens).length > 0) return true;
  const spokenOf = SPOKEN_OF.find(tokens);
  const said = spokenOf.length === 0 ? tokens : tokens.filter((_, place) => !spokenOf.some(({ first, end }) => place >= first && place < end));
  const addressed = said.some(({ text }, place) => (text === "you" && !NOBODY.test(said[place + 1]?.text ?? "")) || text === "your" || text === "yours");
  if (addressed) return false;
  if (INTERRUPTIONS.find(tokens).length > 0) return true;
  return said.some(({ text }, place) => MINE.has(text) || (aboutOthers && OTHERS.has(text)) || (TELLERS.has(text) && pastBehind(said, place + 1)));
}

function pastBehind(tokens: readonly Token[], from: number): boolean {
  for (let place = from; place < Math.min(tokens.length, from + VERB_WITHIN); place += 1) {
    const { text } = tokens[place]!;
    if (PAST.at(tokens, place) !== null || (text.length > 4 && text.endsWith("ed") && text !== "need")) return true;
    if (TELLERS.has(text)) return false;
  }
  return false;
}

/** Between a teller and the verb: "I once had". */
const BEFORE_A_VERB = /^(just|once|always|also|never|even|still|only|actually|really|nearly|already)$/;

/** Where a stretch tells a story of the speaker's own: its verb ("I had to ring for an ambulance"), and each "my" ("my daughter loses the lid of everything"). */
export interface Story {
  verb: number | null;
  mine: number[];
}

/** The words of a clause that make it a story of the speaker's own; none where it speaks to the patient. */
export function storyWords(tokens: readonly Token[], { first, end }: { first: number; end: number }): Story {
  const mine: number[] = [];
  let verb: number | null = null;
  for (let place = first; place < end; place += 1) {
    const { text } = tokens[place]!;
    if ((text === "you" && !NOBODY.test(tokens[place + 1]?.text ?? "")) || text === "your" || text === "yours") return { verb: null, mine: [] };
    if (text === "my") mine.push(place);
    if (verb === null && TELLERS.has(text)) verb = pastOf(tokens, place, end);
  }
  return { verb, mine };
}

function pastOf(tokens: readonly Token[], teller: number, end: number): number | null {
  let verb = teller + 1;
  while (verb < end && BEFORE_A_VERB.test(tokens[verb]!.text)) verb += 1;
  if (verb >= end || DONE_HERE.has(tokens[verb]!.text) || SPOKEN_OF.at(tokens, teller) !== null) return null;
  const { text } = tokens[verb]!;
  return PAST.at(tokens, verb) !== null || (text.length > 4 && text.endsWith("ed") && text !== "need") ? verb : null;
}
