import { namesWhatDoesNotMatter } from "./allowance.ts";
import { LEADS_IN, type Clause } from "./clause.ts";
import { DOING } from "./denial-cue.ts";
import { judgedUpTo } from "./denial-scope.ts";
import { formsOfBe } from "./forms-of-be.ts";
import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { opensTelling } from "./main-clause.ts";
import { phraseList } from "./phrase-set.ts";
import { stem } from "./stem.ts";
import type { Token } from "./token.ts";

/*
 * What a denial denies that stands behind it: "shaking it is not needed", "the sink, leave that out", "wearing both, never".
 */

const LEXICON = polarityData as LexiconFile<"polarity">;
// By the very words: "not needed" denies what is before it, "not need" what is behind.
const BACKWARD = phraseList(LEXICON.backward.flatMap(formsOfBe), { by: "text" });
const BACKWARD_LAST = phraseList(LEXICON.backward_last, { by: "text" });

const BOTHER = stem("bother");
/** "Don't bother rinsing", "don't bother with the sink": what is not to be done stands behind. */
const bothersBehind = (text: string): boolean => text === "with" || text === "about" || DOING.test(text);

/** Tokens of a clause, `end` exclusive. */
interface Stretch {
  first: number;
  end: number;
}

/** The phrases of a clause that deny what stands before them: "is not needed", "leave that out". */
export function denialsBehindIn(tokens: readonly Token[], clause: Clause, silent: ReadonlySet<number>): Stretch[] {
  const last = BACKWARD_LAST.find(tokens, clause.first, clause.end).filter(({ end }) => end === clause.end);
  return [...BACKWARD.find(tokens, clause.first, clause.end), ...last].filter((hit) => {
    if (silent.has(hit.first)) return false;
    // "Rinsing, don't bother" denies what is before it, "don't bother rinsing" what is behind.
    if (tokens[hit.end - 1]!.stem === BOTHER && hit.end < clause.end && bothersBehind(tokens[hit.end]!.text)) return false;
    return !isTurned(tokens, clause.first, hit) && !ofACase(tokens, clause.first, hit.first);
  });
}

/** What such a phrase denies, or gives back where it was denied; null where it does neither. */
export function judgedBy(tokens: readonly Token[], clause: Clause, phrase: Stretch, denied: readonly boolean[]): (Stretch & { isDenied: boolean }) | null {
  // "It doesn't matter if the tip touches": what may be stands behind, and nothing before it is denied.
  if (namesWhatDoesNotMatter(tokens, phrase.end)) return null;
  const first = sayingFrom(tokens, clause.first, phrase.first);
  // "No need to give the lumps a wide berth": what is denied is that they are avoided.
  const given = givenFrom(tokens, clause.first, phrase.first);
  if (given !== null && denied[given]) return { first: given, end: phrase.end, isDenied: false };
  // "It's not good for it to get hot": what is judged stands behind.
  if (judgesAhead(tokens, first, phrase)) return { first: phrase.end, end: judgedUpTo(tokens, clause, phrase.end), isDenied: true };
  return { first, end: phrase.first, isDenied: true };
}

/** Between a denial and the phrase that it turns: "isn't one you can skip", "don't think it can be left out". */
const BEFORE_TURNED = /^(one|something|anything|a|the|thing|step|test|you|we|think|believe|say|that|it|this|ever|just|really|be)$/;
/** With one of these the phrase is the denial ("not needed"). */
const HAS_A_DENIAL = /^(not|no|never|nobody|nothing|neither|without)$/;

/** Whether a phrase that denies what stands before it ("can skip") is denied itself ("isn't one you can skip"), and so denies nothing. */
function isTurned(tokens: readonly Token[], from: number, { first, end }: Stretch): boolean {
  for (let place = first; place < end; place += 1) if (HAS_A_DENIAL.test(tokens[place]!.text)) return false;
  let place = first - 1;
  while (place > from && BEFORE_TURNED.test(tokens[place]!.text)) place -= 1;
  return place >= from && /^(not|never)$/.test(tokens[place]!.text);
}

/** So many words name what is so in a case: "if it is bad", "when the nights are bad", "if your wife's back is bad". */
const CASE_NAMED = 5;
const NAMES_A_CASE = /^(if|when|whenever)$/;

/** Whether a phrase that denies what stands before it tells only in which case: "wear two if it is bad", "if your back is bad". */
function ofACase(tokens: readonly Token[], from: number, first: number): boolean {
  for (let place = first - 1; place >= Math.max(from, first - CASE_NAMED); place -= 1) {
    if (NAMES_A_CASE.test(tokens[place]!.text)) return true;
    // "If you leave it that is bad": what is judged is told; "if that is bad" names a case.
    if (/^(that|this|which|then)$/.test(tokens[place]!.text) && !NAMES_A_CASE.test(tokens[place - 1]?.text ?? "")) return false;
  }
  return false;
}

/** Between "give" and "a wide berth" stand so many words at most. */
const GIVEN_WITHIN = 6;

/** Where the "give" stands that ends in a phrase ("give the lumps | a wide berth"); null where it is none of a gift. */
function givenFrom(tokens: readonly Token[], from: number, end: number): number | null {
  for (let place = end - 1; place >= Math.max(from, end - GIVEN_WITHIN); place -= 1) if (/^(give|gives|giving)$/.test(tokens[place]!.text)) return place;
  return null;
}

/** Where what is told last before a place begins: "keep it dry you wash it that is a bad idea" says the one and judges the other. */
function sayingFrom(tokens: readonly Token[], first: number, place: number): number {
  // "Shaking it is not needed": here a thing and its verb are what is judged.
  for (let k = place - 1; k > first; k -= 1) if (!/^(it|its|this|these|the|your|there)$/.test(tokens[k]!.text) && opensTelling(tokens, k)) return k;
  return first;
}

/** For whom or what it is bad takes so many words. */
const JUDGED_WITHIN = 5;

function judgesAhead(tokens: readonly Token[], first: number, hit: Stretch): boolean {
  const behind = tokens.slice(hit.end, hit.end + JUDGED_WITHIN).map(({ text }) => text);
  // "Bad for a baby" judges nothing that is done, "bad for it to get wet" does.
  if (!(/^(to|if|when)$/.test(behind[0] ?? "") || (behind[0] === "for" && behind.includes("to"))) || tokens[hit.end - 1]!.after !== "") return false;
  for (let k = first; k < hit.first; k += 1) if (!LEADS_IN.test(tokens[k]!.text) && !/^(it|is|was|be|would|will|that|this|really|just|because|a)$/.test(tokens[k]!.text)) return false;
  return true;
}

/** "People don't, and have a look inside", "with water never": the denial has nothing behind it. */
export function isTerminal(tokens: readonly Token[], place: number, end: number, clause: Clause): boolean {
  if (end >= clause.end) return true;
  if (/^(never|not)$/.test(tokens[end - 1]!.text) && tokens[end - 1]!.after !== "" && !/^(ever|never|not|or|nor|under|even)$/.test(tokens[end]!.text)) return true;
  return tokens[place]!.text === "never" && tokens[end]!.text === "never" && /^(the|you|it|they|this|that|is)$/.test(tokens[end + 1]?.text ?? "the") && place > clause.first;
}

/** What is denied by no more than "isn't" is named in so few words. */
const LONGEST_SUBJECT = 4;

/** Where what is said since the last pause before a place begins. */
function behindPause(tokens: readonly Token[], first: number, place: number): number {
  let from = place;
  while (from > first && tokens[from - 1]!.after === "") from -= 1;
  return from;
}

/**
 * From where a denial that ends what is said denies what stands before it: "wearing both, never" all of its clause, "the
 * red one is fine, the blue one isn't" the other; its own place where it denies nothing.
 */
export function deniedBefore(tokens: readonly Token[], { first, end }: Clause, place: number, supposed: readonly boolean[]): number {
  const { text, after } = tokens[place]!;
  if (text === "never") return sayingFrom(tokens, first, place);
  if (text !== "not" || place !== end - 1 || after === "?" || supposed[place] || !/^(is|are)$/.test(tokens[place - 1]?.text ?? "")) return place;
  const from = behindPause(tokens, first, place);
  const words = place - 1 - from;
  return words >= 1 && words <= LONGEST_SUBJECT ? sayingFrom(tokens, from, place) : place;
}
