import { wordWeight } from "../language/lexicon.ts";
import namesData from "../language/lexicon/names.yaml";
import type { LexiconFile } from "../language/lexicon/schema.ts";
import { isTradeWord } from "../language/stem.ts";
import type { Token } from "../language/token.ts";

const LEXICON = namesData as LexiconFile<"names">;
const GIVES_A_NAME = new Set(LEXICON.gives);
const ASKS_FOR_A_NAME = new Set(LEXICON.asks);
const PUT_FORWARD = new Set(LEXICON.put_forward);
const GREETINGS = new Set(LEXICON.hello);
const JOBS = new Set(LEXICON.jobs);
const DAY = /^(mon|tues|wednes|thurs|fri|satur|sun)days?$/;

/**
 * Where names stand. Capitals tell a name; in speech without any, a word that the trade does not use, and of what is asked about two of them.
 * @param written a token as the transcript has it.
 * @returns `asked`: those of them that are asked for by a tag behind them.
 */
export function namesIn(tokens: readonly Token[], written: (place: number) => string): { names: Set<number>; asked: number[] } {
  const cased = tokens.some((_, place) => /^\p{Lu}/u.test(written(place)));
  const asked = tokens.flatMap((_, place) => {
    if (cased && isPutForward(tokens, place, written)) return [place];
    return isAskedByTag(tokens, place, cased ? written(place) : null) ? [place] : [];
  });
  const names = new Set(asked);
  if (cased) for (let place = 0; place < tokens.length - 1; place += 1) if (namesItself(tokens, place, written) || asksForTheRest(tokens, place, written)) names.add(place);
  for (let place = 2; place < tokens.length; place += 1) {
    if (tokens[place - 1]!.after !== "") continue;
    const opening = `${tokens[place - 2]!.text} ${tokens[place - 1]!.text}`;
    const given = GIVES_A_NAME.has(opening);
    if (!given && !ASKS_FOR_A_NAME.has(opening)) continue;
    const isName = (at: number) => at < tokens.length && isNameLike(tokens[at]!, cased ? written(at) : null);
    // "Is this Warfarin?": what the trade knows is a name only before another ("Pat Ellwood").
    if (isName(place) && (given || (cased && !isTradeWord(tokens[place]!.text)) || isName(place + 1))) names.add(place);
  }
  return { names, asked };
}

/** "The pharmacist", "one of the pharmacists", "your duty pharmacist". */
const BEFORE_A_JOB = /^((the|one of the|your|duty) )*/;
const LONGEST_CALLING = 4;

/** "You're Lee, aren't you? Lee what?": who has half of a name asks for the rest. */
function asksForTheRest(tokens: readonly Token[], place: number, written: (place: number) => string): boolean {
  const what = tokens[place + 1]!;
  return what.text === "what" && (/^[?,.]/.test(what.after) || place + 2 === tokens.length) && tokens[place]!.after === "" && isPersonsName(tokens[place]!, written(place));
}

/** Who gives a name and a calling and nothing else: "Sadie, pharmacist", "Hello, Ravi, the pharmacist." */
function namesItself(tokens: readonly Token[], place: number, written: (place: number) => string): boolean {
  const before = tokens[place - 1];
  if (before !== undefined && !/[.!?]/.test(before.after) && !GREETINGS.has(before.text)) return false;
  if (!isPersonsName(tokens[place]!, written(place)) || GREETINGS.has(tokens[place]!.text) || !/^,?$/.test(tokens[place]!.after)) return false;
  let end = place + 1;
  while (end < tokens.length - 1 && end < place + LONGEST_CALLING && tokens[end]!.after === "") end += 1;
  return JOBS.has(tokens.slice(place + 1, end + 1).map(({ text }) => text).join(" ").replace(BEFORE_A_JOB, ""));
}

/** "Jordan Vale, yeah?", "you're Jordan, right?": a name put forward to be said yes to. */
function isPutForward(tokens: readonly Token[], place: number, written: (place: number) => string): boolean {
  const isName = (at: number) => isPersonsName(tokens[at]!, written(at));
  if (place === 0 || tokens[place - 1]!.after !== "" || !isName(place) || !(isName(place - 1) || `${tokens[place - 2]?.text ?? ""} ${tokens[place - 1]!.text}` === "you are")) return false;
  let end = place + 1;
  while (end < tokens.length - 1 && end <= place + 3 && tokens[end]!.after === "") end += 1;
  return (tokens[end]?.after === "?" || end === tokens.length - 1) && PUT_FORWARD.has(tokens.slice(place + 1, end + 1).map(({ text }) => text).join(" "));
}

/** Who asks for a name by a tag behind it: "Hi, Alex, is it?", "You're Lee, aren't you?"; without capitals a greeting before it makes it a name. */
function isAskedByTag(tokens: readonly Token[], place: number, written: string | null): boolean {
  if (!/^(is|are)$/.test(tokens[place + 1]?.text ?? "") || place === 0 || !/^,?$/.test(tokens[place]!.after)) return false;
  const before = tokens[place - 1]!;
  const tag = [1, 2, 3].map((ahead) => tokens[place + ahead]?.text ?? "").join(" ");
  const greeted = GREETINGS.has(before.text);
  const tagged = /^is (not )?it\b/.test(tag) ? greeted || (written !== null && before.after === "") : tag === "are not you" && (greeted || (written !== null && `${tokens[place - 2]?.text ?? ""} ${before.text}` === "you are"));
  return tagged && isPersonsName(tokens[place]!, written);
}

/** A name may look like a small word's inflection: Porter's stem of "Ines" is "in". */
const SMALL_STEM = 2;

/** A name that is no word of the trade: "Warfarin" is written like one. */
const isPersonsName = (token: Token, written: string | null): boolean => !isTradeWord(token.text) && isNameLike(token, written);

/** @param written as the transcript has it; null where it has no capitals. */
function isNameLike({ text, stem }: Token, written: string | null): boolean {
  if (!/^\p{L}{2,}$/u.test(text) || DAY.test(text)) return false;
  return written !== null ? /^\p{Lu}\p{Ll}/u.test(written) : !isTradeWord(text) && (wordWeight(stem) === 1 || (stem.length <= SMALL_STEM && text.length > stem.length + 1)) && !/ing$/.test(text);
}
