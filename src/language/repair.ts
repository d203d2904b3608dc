import { FILLER_SOUNDS } from "./fillers.ts";
import repairData from "./lexicon/repairs.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { isToldVerb } from "./main-clause.ts";
import { oppositeSets } from "./opposites.ts";
import { phraseList } from "./phrase-set.ts";
import { dimensionOf } from "./quantity-compare.ts";
import { ONE, type QuantityMention } from "./quantity-mention.ts";
import type { Token } from "./token.ts";

const LEXICON = repairData as LexiconFile<"repairs">;
const EDITING = phraseList(LEXICON.editing, { by: "text" });
const MEANT = phraseList(LEXICON.meant_after, { by: "text" });
const MIXED_UP = phraseList(LEXICON.mixed_up, { by: "text" });
const SET_OFF = new Set(LEXICON.set_off);
const HESITATION = new Set([...FILLER_SOUNDS, ...LEXICON.hesitations]);
const TRAILING = phraseList(LEXICON.trailing, { by: "text" });
const WAITS = phraseList(LEXICON.waits, { by: "text" });

/** What is withdrawn stands within so many tokens before the editing term, and its replacement behind it. */
const REACH = { before: 9, after: 8 } as const;

/** What speakers take back, and the numbers that stand in its place. */
export interface Repairs {
  withdrawn: Set<number>;
  /** The words that take it back: "no, hang on" is no "hold it". */
  editing: Set<number>;
  /** Numbers said alone behind the editing term ("two up each side. Sorry, one."), where the one that each replaces was said: all else of its sentence is told of it. */
  restated: QuantityMention[];
}

/**
 * What speakers take back: "hold for five, sorry, ten seconds" withdraws "five". Withdrawn is a number that
 * another number replaces, a word that its opposite replaces, and all from a word on that is said anew.
 * @param breaks token positions before which a turn ends: nobody repairs across one.
 */
export function repairsIn(tokens: readonly Token[], quantities: readonly QuantityMention[], breaks: ReadonlySet<number>): Repairs {
  const withdrawn = new Set<number>();
  const editing = new Set<number>();
  const restated: QuantityMention[] = [];
  for (let place = 1; place < tokens.length; place += 1) {
    const end = editingEnd(tokens, place) ?? shortNo(tokens, quantities, place, breaks);
    if (end === null) continue;
    const repair = { from: reachBack(place, breaks), place, end, to: reachOn(tokens, end, breaks) };
    const before = withdrawn.size;
    const alone = numberAlone(tokens, quantities, end, breaks);
    const one = alone === null && tokens[end]?.text === "one" && COUNTS_BEHIND.test(tokens[end + 1]?.text ?? "") ? { ...ONE, first: end, end: end + 1 } : null;
    const replaced = withdrawNumbers(quantities, alone ?? one, repair, withdrawn);
    if (alone !== null && replaced !== null) restated.push({ ...alone, unit: alone.unit ?? replaced.unit, firm: alone.firm || replaced.firm, first: replaced.first, end: replaced.end, text: tokens.slice(replaced.first, alone.end).map(({ text }) => text).join(" ") });
    if (one !== null && replaced !== null) restated.push({ ...one, unit: replaced.unit, firm: replaced.firm });
    withdrawOpposite(tokens, repair, withdrawn);
    withdrawRetrace(tokens, repair, withdrawn);
    withdrawThing(tokens, repair, withdrawn);
    withdrawVerb(tokens, repair, withdrawn);
    withdrawMixedUp(tokens, repair, breaks, withdrawn);
    if (withdrawn.size > before) for (let k = place; k < end; k += 1) editing.add(k);
    place = end - 1;
  }
  for (let place = 1; place < tokens.length; place += 1) {
    if (tokens[place]!.text === "not") withdrawDenied(tokens, place, breaks, withdrawn);
    if (TRAILING.at(tokens, place) !== null) withdrawBefore(tokens, quantities, place, breaks, withdrawn);
  }
  return { withdrawn, editing, restated };
}

/** The number that is all of what is said from here to the end of the sentence or turn, or null. */
function numberAlone(tokens: readonly Token[], quantities: readonly QuantityMention[], at: number, breaks: ReadonlySet<number>): QuantityMention | null {
  const ends = (place: number) => place === tokens.length || breaks.has(place) || /[.?!]/.test(tokens[place - 1]!.after);
  const mention = quantities.find(({ first }) => first === at);
  if (mention !== undefined) return ends(mention.end) ? mention : null;
  // Elsewhere "one" is mostly a pronoun.
  if (tokens[at]?.text !== "one" || !ends(at + 1)) return null;
  return { ...ONE, first: at, end: at + 1 };
}

/** Behind a "one" that counts: "two, sorry, one in each eye". */
const COUNTS_BEHIND = /^(in|into|up|each|every|per|a|at|twice|once|daily)$/;

/** "Two up each side. No, one.": behind a full stop a plain no repairs only where a number is all that follows. Its end, or null. */
function shortNo(tokens: readonly Token[], quantities: readonly QuantityMention[], place: number, breaks: ReadonlySet<number>): number | null {
  const { text, after } = tokens[place]!;
  if (!SET_OFF.has(text) || after === "" || /[.?!]/.test(after) || !/[.!]/.test(tokens[place - 1]!.after) || breaks.has(place)) return null;
  return numberAlone(tokens, quantities, place + 1, breaks) === null ? null : place + 1;
}

interface Repair {
  /** First token that may be withdrawn. */
  from: number;
  /** The editing term: `place` up to, not including, `end`. */
  place: number;
  end: number;
  /** Behind the last token of what may replace it. */
  to: number;
}

/** End of a run of editing terms and hesitations that starts here, or null. */
function editingEnd(tokens: readonly Token[], start: number): number | null {
  let place = start;
  let found = false;
  for (;;) {
    const token = tokens[place];
    if (token === undefined) break;
    // "Your old one as well no point wasting it".
    if ((MEANT.at(tokens, place) !== null && MIXED_UP.at(tokens, place + 1) === null && anothersUpTo(tokens, place + 1) === null) || (token.text === "well" && tokens[place - 1]?.text === "as")) break;
    const mixed = MIXED_UP.at(tokens, place);
    const hit = mixed === null ? (found ? anothersUpTo(tokens, place) : null) ?? EDITING.at(tokens, place) : mixedUpTo(tokens, mixed.end);
    if (hit !== null) {
      found = true;
      place = hit.end;
    } else if (isSetOff(tokens, place, start)) {
      found = true;
      place += 1;
    } else if (HESITATION.has(token.text) && (found || EDITING.at(tokens, place + 1) !== null || isSetOff(tokens, place + 1, start))) place += 1;
    else break;
  }
  return found ? place : null;
}

/** What was had in mind by mistake takes so many words. */
const LONGEST_MIX_UP = 6;

/** Where the thing that was had in mind by mistake ends, at a comma; null where it does not end so soon. */
function mixedUpTo(tokens: readonly Token[], from: number): { end: number } | null {
  for (let place = from; place < Math.min(tokens.length, from + LONGEST_MIX_UP); place += 1) if (tokens[place]!.after !== "") return { end: place + 1 };
  return null;
}

/** What was said was told of another thing: "that's the other kind", "that's the old one I'm thinking of". */
const ANOTHERS = /^that (is|was) (for )?(the|your|my|a|an) (\w+ ){0,2}(one|ones|other|kind|sort|type)( (that )?i (am|was) thinking of)?$/;
const LONGEST_ANOTHERS = 11;

/** "Ten, no, that's the other kind, breathe straight out": where what was said is called another thing's, at a comma; null where it is not. */
function anothersUpTo(tokens: readonly Token[], place: number): { end: number } | null {
  if (tokens[place]?.text !== "that") return null;
  const last = tokens.slice(place, place + LONGEST_ANOTHERS).findIndex(({ after }) => after !== "");
  const end = place + last + 1;
  return last >= 0 && ANOTHERS.test(tokens.slice(place, end).map(({ text }) => text).join(" ")) ? { end } : null;
}

/** "Chin down to your, sorry, I'm thinking of the nose spray, chin up": all that was broken off is taken back. */
function withdrawMixedUp(tokens: readonly Token[], { from, place, end }: Repair, breaks: ReadonlySet<number>, withdrawn: Set<number>): void {
  let mixed = false;
  for (let k = place; k < end; k += 1) mixed ||= MIXED_UP.at(tokens, k) !== null || (k > place && anothersUpTo(tokens, k) !== null);
  if (!mixed) return;
  for (let k = place - 1; k >= from; k -= 1) {
    if (breaks.has(k + 1) || (k < place - 1 && tokens[k]!.after !== "")) return;
    withdrawn.add(k);
  }
}

/** Whether it is an editing word between commas, alone or behind hesitations that begin at `start`. */
function isSetOff(tokens: readonly Token[], place: number, start: number): boolean {
  const token = tokens[place];
  if (token === undefined || !SET_OFF.has(token.text) || token.after === "") return false;
  for (let before = place; before >= start; before -= 1) {
    const { after, text } = tokens[before - 1]!;
    if (after !== "") return !/[.?!]/.test(after);
    if (!HESITATION.has(text)) return false;
  }
  return false;
}

function reachBack(place: number, breaks: ReadonlySet<number>): number {
  let from = place;
  while (from > 0 && place - from < REACH.before && !breaks.has(from)) from -= 1;
  return from;
}

/** What follows these is said next, not in place of what was said: "ten seconds, sorry, lost my place, then wait thirty". */
const GOES_ON = /^(and|then)$/;

/** The replacement comes before the sentence ends or goes on to something else. */
function reachOn(tokens: readonly Token[], end: number, breaks: ReadonlySet<number>): number {
  let to = end;
  while (to < tokens.length && to - end < REACH.after && !breaks.has(to) && !GOES_ON.test(tokens[to]!.text)) {
    to += 1;
    if (/[.?!]/.test(tokens[to - 1]!.after)) break;
  }
  return to;
}

/**
 * A number replaces those of its own kind before it that say something else: puffs take no seconds back, nor ten puffs ten puffs.
 * @param alone the replacing number, where it is all that follows.
 * @returns the last number that it replaces.
 */
function withdrawNumbers(quantities: readonly QuantityMention[], alone: QuantityMention | null, { from, place, end, to }: Repair, withdrawn: Set<number>): QuantityMention | null {
  const replacing = alone ?? quantities.find((mention) => mention.first >= end && mention.first < to);
  if (replacing === undefined) return null;
  let last: QuantityMention | null = null;
  for (const mention of quantities) {
    if (mention.first < from || mention.end > place || !isReplacedBy(replacing, mention)) continue;
    for (let k = mention.first; k < mention.end; k += 1) withdrawn.add(k);
    last = mention;
  }
  return last;
}

function isReplacedBy(replacing: QuantityMention, mention: QuantityMention): boolean {
  if (mention.unit === null || replacing.unit === null) return true;
  const sameKind = dimensionOf(mention.unit) === dimensionOf(replacing.unit) || (mention.perDay !== undefined && replacing.perDay !== undefined);
  return sameKind && (mention.unit !== replacing.unit || mention.low !== replacing.low || mention.high !== replacing.high);
}

function withdrawOpposite(tokens: readonly Token[], { from, place, end, to }: Repair, withdrawn: Set<number>): void {
  for (let behind = end; behind < to; behind += 1) {
    const sets = oppositeSets.get(tokens[behind]!.stem);
    if (sets === undefined) continue;
    for (let before = place - 1; before >= from; before -= 1) {
      const { stem: stemmed } = tokens[before]!;
      if (stemmed === tokens[behind]!.stem) break;
      if ([...(oppositeSets.get(stemmed) ?? [])].some((set) => sets.has(set))) {
        withdrawn.add(before);
        break;
      }
    }
  }
}

/** Denies what was said, where it is said anew: "you whip it, no, you don't whip it off". */
const DENIES = /^((do|does|must|should|need|can|could|would|is|are) not|never)\b/;

/** How many words deny it. */
function denialBetween(tokens: readonly Token[], at: number): number {
  const denial = DENIES.exec(tokens.slice(at, at + 2).map(({ text }) => text).join(" "));
  return denial === null ? 0 : denial[0].split(" ").length;
}

/** "You press it, sorry, you press before": the words said anew replace all from there on. */
function withdrawRetrace(tokens: readonly Token[], { from, place, end }: Repair, withdrawn: Set<number>): void {
  const first = tokens[end];
  const second = tokens[end + 1 + denialBetween(tokens, end + 1)];
  if (first === undefined || second === undefined) return;
  for (let before = place - 2; before >= from; before -= 1) {
    if (tokens[before]!.text !== first.text || tokens[before + 1]!.text !== second.text) continue;
    for (let k = before; k < place; k += 1) withdrawn.add(k);
    return;
  }
}

/** Opens what is named: "the fridge", "your left hand". */
const NAMES = /^(the|a|an|your|his|her|their|this|that)$/;
/** What is named in place of something else takes so few words, and so does what it replaces. */
const LONGEST_NAME = 3;

/** "It lives in the fridge, what am I saying, the cupboard": one thing named is replaced by another, named alike and with nothing behind it. */
function withdrawThing(tokens: readonly Token[], { from, place, end, to }: Repair, withdrawn: Set<number>): void {
  const first = tokens[end];
  if (first === undefined || !NAMES.test(first.text) || WAITS.at(tokens, place) !== null || /[.?!]/.test(tokens[end - 1]!.after)) return;
  if (!tokens.slice(end + 1, Math.min(to, end + LONGEST_NAME)).some(({ after }) => after !== "")) return;
  for (let before = place - 2; before >= Math.max(from, place - LONGEST_NAME); before -= 1) {
    if (tokens[before]!.text !== first.text) continue;
    for (let k = before; k < place; k += 1) withdrawn.add(k);
    return;
  }
}

/** A verb behind one of these is told, and no noun ("your test"). */
const TELLS = /^(you|then|and|just|so|please|first)$/;

/** "Leave, no, what am I saying, take that one": what was told and broken off is replaced by what is told behind it. */
function withdrawVerb(tokens: readonly Token[], { from, place, end }: Repair, withdrawn: Set<number>): void {
  const verb = tokens[place - 1]!;
  const instead = tokens[end];
  if (place === from || instead === undefined || verb.text === instead.text || /[.?!]/.test(verb.after) || !isToldVerb(verb.text) || !isToldVerb(instead.text)) return;
  const before = place - 2 < from ? undefined : tokens[place - 2]!;
  if (before === undefined || before.after !== "" || TELLS.test(before.text)) withdrawn.add(place - 1);
}

/** What stands behind a comma in place of what stands before it, with the editing term behind, takes so few words. */
const LONGEST_TRAILED = 5;

/** "The upper, the lower lid I mean", "two, three sorry": the editing term stands behind what was meant. */
function withdrawBefore(tokens: readonly Token[], quantities: readonly QuantityMention[], place: number, breaks: ReadonlySet<number>, withdrawn: Set<number>): void {
  const editing = TRAILING.at(tokens, place)!;
  if (tokens[place - 1]!.after !== "" || (editing.end < tokens.length && !breaks.has(editing.end) && tokens[editing.end - 1]!.after === "")) return;
  let meant = place - 1;
  while (meant > 0 && place - meant < LONGEST_TRAILED && !breaks.has(meant) && tokens[meant - 1]!.after === "") meant -= 1;
  if (breaks.has(meant) || tokens[meant - 1]?.after !== "," || GOES_ON.test(tokens[meant]!.text) || tokens[meant]!.text === "or") return;
  const repair = { from: Math.max(reachBack(meant, breaks), meant - LONGEST_TRAILED), place: meant, end: meant, to: place };
  withdrawNumbers(quantities, null, repair, withdrawn);
  withdrawOpposite(tokens, repair, withdrawn);
}

/** Between what was said and its denial in the same breath: "every day, or, I mean, not every day". */
const BETWEEN_DENIED = new Set([...SET_OFF, ...HESITATION, ...LEXICON.trailing.flatMap((phrase) => phrase.split(" ")), "or"]);
/** "Fast sugar, no, not sugar": behind a no one word is enough. */
const SAYS_NO = /^(no|sorry)$/;
/** Two words said anew are the same thing; one is only where it tells which way or how often. */
const SAID_ANEW = 2;

/** "You use it every day, well, not every day", "press it before, well no, not before": what is denied in the same breath was never meant. */
function withdrawDenied(tokens: readonly Token[], place: number, breaks: ReadonlySet<number>, withdrawn: Set<number>): void {
  let end = place;
  while (end > 0 && !breaks.has(end) && BETWEEN_DENIED.has(tokens[end - 1]!.text) && !/[.?!]/.test(tokens[end - 1]!.after)) end -= 1;
  if (tokens[end - 1]?.after !== "," || breaks.has(end)) return;
  for (let before = end - 1; before >= reachBack(end, breaks); before -= 1) {
    let same = 0;
    while (before + same < end && tokens[before + same]!.text === tokens[place + 1 + same]?.text) same += 1;
    // Without a word between them only what stands straight before it ("in the side, not the side, the middle").
    if (end === place && before + same < end) continue;
    if (same < SAID_ANEW && !(same === 1 && before === end - 1 && (oppositeSets.has(tokens[before]!.stem) || (end < place && SAYS_NO.test(tokens[end]!.text))))) continue;
    for (let k = before - 1; k >= 0 && before - k < REACH.before && tokens[k]!.after === ""; k -= 1) if (/^(not|never|no)$/.test(tokens[k]!.text)) return;
    for (let k = 0; k < same; k += 1) withdrawn.add(before + k).add(place + 1 + k);
    return;
  }
}
