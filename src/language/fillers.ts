import fillerData from "./lexicon/fillers.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { digitWord, twoDigitWord } from "./number-words.ts";
import { phraseList, PhraseSet, type PhraseHit } from "./phrase-set.ts";
import type { Token } from "./token.ts";

const FILLERS = fillerData as LexiconFile<"fillers">;
const fillers = (phrases: readonly string[]) => new PhraseSet(phrases.map((phrase) => [phrase, phrase] as const), { by: "text" });

/** Sounds that fill a pause wherever they stand: "um". */
export const FILLER_SOUNDS: ReadonlySet<string> = new Set(FILLERS.always);
const ALWAYS = fillers(FILLERS.always);
const PARENTHETICAL = fillers(FILLERS.parenthetical);
const MEANT_AFTER = phraseList(FILLERS.meant_after, { by: "text" });
const MEANT_BEFORE = phraseList(FILLERS.meant_before, { by: "text" });
/** The longest of `meant_after` has three words. */
const CONTEXT = 3;

/** Fillers in a run of tokens, conservatively: what may mean something is left out. */
export function findFillers(tokens: readonly Token[]): PhraseHit<string>[] {
  const hits: PhraseHit<string>[] = [];
  for (let place = 0; place < tokens.length; ) {
    const sound = ALWAYS.at(tokens, place);
    const always = sound !== null && !isMeant(tokens, sound) && !isLength(tokens, place) ? sound : null;
    const phrase = always === null ? PARENTHETICAL.at(tokens, place) : null;
    const hit = always ?? (phrase !== null && breaksIn(tokens, phrase) && !isMeant(tokens, phrase) ? phrase : null);
    if (hit === null) place += 1;
    else {
      hits.push(hit);
      place = hit.end;
    }
  }
  return hits;
}

/** "a 4 mm needle". */
function isLength(tokens: readonly Token[], place: number): boolean {
  const before = tokens[place - 1]?.text;
  return tokens[place]!.text === "mm" && (/^\d/.test(before ?? "") || digitWord(before) !== undefined || twoDigitWord(before) !== undefined);
}

/** Set off by punctuation on both sides, or said twice. Without punctuation "you know" and "I mean" in mid speech count, single words do not. */
function breaksIn(tokens: readonly Token[], { first, end, value }: PhraseHit<string>): boolean {
  const before = tokens[first - 1];
  const setOffBefore = before === undefined || before.after !== "";
  const setOffBehind = tokens[end - 1]!.after !== "";
  if (setOffBefore && setOffBehind) return true;
  const doubled = tokens.slice(end, end + (end - first)).map(({ text }) => text).join(" ") === value;
  return doubled || ((value === "you know" || value === "i mean") && (setOffBefore || setOffBehind));
}

function isMeant(tokens: readonly Token[], { first, end }: PhraseHit<string>): boolean {
  if (MEANT_BEFORE.at(tokens, first) !== null) return true;
  for (let place = Math.max(0, first - CONTEXT); place <= first; place += 1) {
    if (MEANT_AFTER.allAt(tokens, place).some((hit) => hit.end >= end)) return true;
  }
  return false;
}
