import { namesWhatDoesNotMatter } from "./allowance.ts";
import { carryDenials } from "./carried-denial.ts";
import { LEADS_IN, SUPPOSES, type Clause } from "./clause.ts";
import { supposesByOrder } from "./inverted-condition.ts";
import { opensInstruction, opensInstructionBehind, opensTelling } from "./main-clause.ts";
import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { phraseList } from "./phrase-set.ts";
import { speechPhrases } from "./speech-phrases.ts";
import { stem } from "./stem.ts";
import type { Token } from "./token.ts";

const LEXICON = polarityData as LexiconFile<"polarity">;

const FORWARD = phraseList([...LEXICON.forward, ...LEXICON.outright]);
// By the very words: "not needed" denies what is before it, "not need" what is behind.
const BACKWARD = phraseList(LEXICON.backward.flatMap(formsOfBe), { by: "text" });
const BACKWARD_LAST = phraseList(LEXICON.backward_last, { by: "text" });
const NEUTRAL = phraseList(LEXICON.neutral);
const DISMISSALS = phraseList(LEXICON.dismissals);
const COMFORTS = speechPhrases("comforts");
/** What is dismissed is something to do: "reading the name". */
const DOING = /^(?!something|anything|nothing|everything|during|morning|evening)[a-z]{2,}ing$/;
const NEGATIVE_VERBS = phraseList(LEXICON.negative_verbs);
const AVOIDING_VERBS = new Set(LEXICON.avoiding_verbs);
const ENDERS = phraseList(LEXICON.enders);
const TURNERS = new Set(LEXICON.turners);
const LOOKS = phraseList(LEXICON.looks);
const LOOKED_FOR = phraseList(LEXICON.looked_for, { by: "text" });
const UNABLE_TO = phraseList(LEXICON.unable, { by: "text" });
const HYPOTHETICAL = phraseList(LEXICON.hypothetical);
const AWAITS = phraseList(LEXICON.awaits);
const LACKS = phraseList(LEXICON.lacks);

/** Words that allow, and words of the harm that comes of it. */
export const PERMITS: ReadonlySet<string> = new Set(LEXICON.permits);
export const HARMS = phraseList(LEXICON.harms);
export const DEATHS = phraseList(LEXICON.deaths);
/** What stands behind it is not yet so. */
export const NEARLY = phraseList(LEXICON.nearly, { by: "text" });
/** Say of a sign that it means nothing. */
export const PLAYS_DOWN = phraseList(LEXICON.plays_down, { by: "text" });
/** Look like those and are none. */
export const PLAYS_NOTHING_DOWN = phraseList(LEXICON.plays_nothing_down, { by: "text" });
/** What is told to be done at once plays nothing down: "a rash is nothing to wait with, ring us". */
export const ALARMS = phraseList(LEXICON.alarms, { by: "text" });

/** Let a thing be. */
export const LETS_BE = phraseList(LEXICON.lets_be);

/** Say of what is told beside them that nothing comes of it. */
export const UNTROUBLED = phraseList(LEXICON.untroubled, { by: "text" });

/** Call something a fault or a harm. */
export const FAULTS = phraseList(LEXICON.faults.flatMap(formsOfBe), { by: "text" });

function formsOfBe(phrase: string): string[] {
  return /^(is|was) /.test(phrase) ? ["is", "are", "was", "were", "be", "being"].map((form) => phrase.replace(/^(is|was) /, `${form} `)) : [phrase];
}

const BOTHER = stem("bother");
/** "Don't bother rinsing", "don't bother with the sink": what is not to be done stands behind. */
const bothersBehind = (text: string): boolean => text === "with" || text === "about" || DOING.test(text);

/** Behind "don't you" they make a warning of it, where it asks elsewhere. */
const FORBIDS_YOU = /^(dare|ever|go|be|let|start|even)$/;

/** What a token's clause does with it. */
export interface Polarity {
  /** Denied: by a denial before it, or by what is said about it behind. */
  negated: boolean;
  /** Speaks of what may or does happen ("if you don't shake it"), not of what to do. */
  hypothetical: boolean;
  /**
   * What it comes to is the same denied or not: what is looked for ("make sure there's no fluff", "look for fluff"), and
   * what somebody cannot or can hardly do.
   */
  eitherWay: boolean;
}

/** A denial seldom reaches further in speech without punctuation. */
const REACH = 12;
/** "Without" and "instead of" deny the thing or the doing just behind them. */
const SHORT_REACH = 5;
/** A clause that denies what is before it has its own verb: "you can leave that out". */
const WHOLE = 4;
const SHORT = new Set(["without", "instead", "rather", "as"]);

/** The polarity of every token, worked out once for each clause. */
export function polarityOf(tokens: readonly Token[], clauses: readonly Clause[]): Polarity[] {
  const result = tokens.map(() => ({ negated: false, hypothetical: false, eitherWay: false }));
  clauses.forEach((clause, place) => {
    const ruledOut = markClause(tokens, clause, result);
    const before = clauses[place - 1];
    // "Shaking it, you can leave that out": the clause says no more than that what came before its comma is not needed.
    if (ruledOut && before !== undefined && tokens[clause.first - 1]!.after === ",") for (let k = before.first; k < before.end; k += 1) result[k]!.negated = true;
  });
  const byItself = result.map(({ negated }) => negated);
  carryDenials(tokens, clauses, (place) => byItself[place]!, (first, end) => {
    for (let k = first; k < end; k += 1) result[k]!.negated = true;
  });
  clauses.forEach((clause, place) => goOnSupposing(tokens, clauses[place - 1], clause, clauses[place + 1], result));
  markEitherWay(tokens, result);
  return result;
}

/** "Need not look", "no need to look": but "never look for it" may tell what must not be there. */
const DENIES_LOOKING = /^(not|to|bother)$/;

/** Behind the verb that looks, so many tokens may stand before what is looked for is named; and so many name it. */
const LOOKING = { before: 8, behind: 6 } as const;
/** What somebody cannot do is said in so many words. */
const UNABLE = 4;

function markEitherWay(tokens: readonly Token[], result: Polarity[]): void {
  const mark = (first: number, reach: number) => {
    for (let k = first; k < Math.min(tokens.length, first + reach); k += 1) {
      result[k]!.eitherWay = true;
      if (/[.?!;]/.test(tokens[k]!.after)) return;
    }
  };
  for (let place = 0; place < tokens.length; place += 1) {
    const looks = LOOKS.at(tokens, place);
    // "No need to look for fluff": the looking itself is denied.
    if (looks !== null && !(result[place]!.negated && DENIES_LOOKING.test(tokens[place - 1]?.text ?? ""))) {
      for (let k = looks.end; k < Math.min(tokens.length, looks.end + LOOKING.before); k += 1) {
        const named = LOOKED_FOR.at(tokens, k);
        if (named !== null) mark(named.end, LOOKING.behind);
        if (named !== null || /[.?!;]/.test(tokens[k]!.after)) break;
      }
    }
    const unable = UNABLE_TO.at(tokens, place);
    if (unable !== null) mark(unable.end, UNABLE);
  }
}

/** @returns whether the clause begins with what denies the thing before it. */
function markClause(tokens: readonly Token[], clause: Clause, result: Polarity[]): boolean {
  let start = clause.first;
  while (start < clause.end && LEADS_IN.test(tokens[start]!.text)) start += 1;
  if ((HYPOTHETICAL.at(tokens, start) !== null || supposesByOrder(tokens, start)) && !givesARule(tokens, start, clause.end)) {
    const end = SUPPOSES.has(tokens[start]!.text) ? mainFrom(tokens, start, clause.end) : clause.end;
    for (let k = clause.first; k < end; k += 1) result[k]!.hypothetical = true;
  }

  const silenced = new Set<number>();
  for (const hit of NEUTRAL.find(tokens, clause.first, clause.end)) {
    // "Don't worry" denies nothing, "don't worry about reading the label" does.
    if (DISMISSALS.at(tokens, hit.first) !== null) continue;
    // "Don't you dare put it in the sink" asks nothing.
    if (tokens[hit.end - 1]!.text === "you" && FORBIDS_YOU.test(tokens[hit.end]?.text ?? "")) continue;
    for (let k = hit.first; k < hit.end; k += 1) silenced.add(k);
  }
  // "Rinsing, don't bother" denies what is before it, "don't bother rinsing" what is behind.
  const backward = [...BACKWARD.find(tokens, clause.first, clause.end), ...BACKWARD_LAST.find(tokens, clause.first, clause.end).filter(({ end }) => end === clause.end)].filter((hit) => !silenced.has(hit.first) && !(tokens[hit.end - 1]!.stem === BOTHER && hit.end < clause.end && bothersBehind(tokens[hit.end]!.text)));
  const firm = backward.filter((hit) => !isTurned(tokens, clause.first, hit) && !ofACase(tokens, clause.first, hit.first));
  for (const hit of firm) for (let k = hit.first; k < hit.end; k += 1) silenced.add(k);
  let denied = false;
  for (let place = clause.first; place < clause.end; place += 1) {
    const verb = silenced.has(place) ? null : NEGATIVE_VERBS.at(tokens, place);
    const phrase = silenced.has(place) ? null : FORWARD.at(tokens, place);
    // "Not bother with the sink" is more than "not bother".
    const comforts = silenced.has(place) ? null : DISMISSALS.at(tokens, place);
    const dismissal = comforts !== null && phrase !== null && phrase.end > comforts.end ? null : comforts;
    if (dismissal !== null && !DOING.test(tokens[dismissal.end]?.text ?? "")) {
      // "Don't worry about the noise": comfort, no denial.
      place = dismissal.end - 1;
      continue;
    }
    const trigger = dismissal ?? (silenced.has(place) || ((phrase === null || phrase.end === place + 1) && isAnswer(tokens, place)) ? null : (phrase ?? keptOff(tokens, place, clause)));
    // "You can't skip the shake": behind a denial the negative verb turns a thing too.
    const hit = trigger ?? (verb !== null && (governsAnAction(tokens, verb.end) || (result[place]!.negated && governsAThing(tokens, verb.end))) ? verb : null);
    if (hit === null || (tokens[place]!.text === "out" && takesOut(tokens, clause, place))) continue;
    // "If it lands on your cheek, never mind, have another go": comfort by itself denies nothing.
    const comfort = tokens[place - 1]?.after === "," ? COMFORTS.at(tokens, place) : null;
    if (comfort !== null && comfort.end >= hit.end && tokens[comfort.end - 1]!.after === ",") {
      place = comfort.end - 1;
      continue;
    }
    // "Never inject without changing the needle": two denials cancel.
    if (denied && tokens[place]!.text === "without") continue;
    denied = true;
    // "No pain, no cough" denies twice; "don't forget to shake", "don't avoid it" deny a denial.
    if (!isTerminal(tokens, place, hit.end, clause)) deny(tokens, clause, hit.end, reachOf(tokens, clause, place), result, trigger === null || (result[place]!.negated && AVOIDING_VERBS.has(tokens[place]!.text)), { list: deniesAList(tokens, clause, place, result), bare: forbids(tokens, clause, place, hit.end) });
    else for (let k = deniedBefore(tokens, clause, place, result); k < place; k += 1) result[k]!.negated = true;
    place = hit.end - 1;
  }
  for (const hit of firm) {
    // "It doesn't matter if the tip touches": what may be stands behind, and nothing before it is denied.
    if (namesWhatDoesNotMatter(tokens, hit.end)) continue;
    const first = sayingFrom(tokens, clause.first, hit.first);
    // "No need to give the lumps a wide berth": what is denied is that they are avoided.
    const given = givenFrom(tokens, clause.first, hit.first);
    if (given !== null && result[given]!.negated) {
      for (let k = given; k < hit.end; k += 1) result[k]!.negated = false;
      continue;
    }
    // "It's not good for it to get hot": what is judged stands behind.
    if (judgesAhead(tokens, first, hit)) deny(tokens, clause, hit.end, REACH, result, false);
    else for (let k = first; k < hit.first; k += 1) result[k]!.negated = true;
  }
  return firm.some(({ first, end }) => first === start && (end - first >= WHOLE || end === clause.end));
}

/** Between a denial and the phrase that it turns: "isn't one you can skip", "don't think it can be left out". */
const BEFORE_TURNED = /^(one|something|anything|a|the|thing|step|test|you|we|think|believe|say|that|it|this|ever|just|really|be)$/;
/** With one of these the phrase is the denial ("not needed"). */
const HAS_A_DENIAL = /^(not|no|never|nobody|nothing|neither|without)$/;

/** Whether a phrase that denies what stands before it ("can skip") is denied itself ("isn't one you can skip"), and so denies nothing. */
function isTurned(tokens: readonly Token[], from: number, { first, end }: { first: number; end: number }): boolean {
  for (let place = first; place < end; place += 1) if (HAS_A_DENIAL.test(tokens[place]!.text)) return false;
  let place = first - 1;
  while (place > from && BEFORE_TURNED.test(tokens[place]!.text)) place -= 1;
  return place >= from && /^(not|never)$/.test(tokens[place]!.text);
}

/** Between "give" and "a wide berth" stand so many words at most. */
const GIVEN_WITHIN = 6;

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

/** Where the "give" stands that ends in a phrase ("give the lumps | a wide berth"); null where it is none of a gift. */
function givenFrom(tokens: readonly Token[], from: number, end: number): number | null {
  for (let place = end - 1; place >= Math.max(from, end - GIVEN_WITHIN); place -= 1) if (/^(give|gives|giving)$/.test(tokens[place]!.text)) return place;
  return null;
}

/** Subject, verb and what it is done to: what is supposed takes so many words at least, and one less before an instruction ("if that happens take"). */
const SHORTEST_SUPPOSITION = 4;
/** Behind a comma these go on with what is supposed. */
const SUPPOSES_ON = /^(and|or|but|not|if|when|because|like|say|even|in|on|at|for|with|by|from|to)$/;

/** Where what is told begins behind what is supposed: "when she's had the jab walk her to the car", "if it's been a week, prime it". */
function mainFrom(tokens: readonly Token[], start: number, end: number): number {
  // Where the clause itself ends at a comma, those before it part a list.
  const parted = tokens[end - 1]!.after !== ",";
  let comma = end;
  for (let place = start + SHORTEST_SUPPOSITION - 1; place < end; place += 1) {
    if (opensInstructionBehind(tokens, place) || judges(tokens, place) || ((place >= start + SHORTEST_SUPPOSITION || happensBefore(tokens, place)) && opensTelling(tokens, place))) return place;
    if (parted && tokens[place - 1]!.after === "," && !SUPPOSES_ON.test(tokens[place]!.text)) comma = place;
  }
  return comma;
}

/** "If it clicks | you've gone too far": a thing and what it does are a supposition. */
function happensBefore(tokens: readonly Token[], place: number): boolean {
  return /^(it|that|this|one)$/.test(tokens[place - 2]?.text ?? "") && /[^s]s$/.test(tokens[place - 1]!.text) && !/^(is|was|has|does|its|needs|wants|gets|makes|lets|helps)$/.test(tokens[place - 1]!.text);
}

/** "If it's below four | that's a hypo", but not "if you get a cough that is dry". */
function judges(tokens: readonly Token[], place: number): boolean {
  return tokens[place]!.text === "that" && tokens[place + 1]?.text === "is" && /^(a|an|the|when|why|your|not|too|fine|okay|normal)$/.test(tokens[place + 2]?.text ?? "") && tokens[place + 3]?.text !== "bit";
}

/** "If you're on holiday and you stop it, your chest gets worse": a supposition goes on behind "and" until what comes of it is told. */
function goOnSupposing(tokens: readonly Token[], before: Clause | undefined, clause: Clause, next: Clause | undefined, result: Polarity[]): void {
  if (before === undefined || tokens[clause.first]!.text !== "and" || tokens[clause.first - 1]!.after !== "" || !result[clause.first - 1]!.hypothetical || result[clause.first]!.hypothetical) return;
  if (/^(then|so|if|when)$/.test(tokens[clause.first + 1]?.text ?? "")) return;
  // "If you're ill, halve the dose and carry on": behind a comma it was told already.
  for (let k = before.first; k < before.end; k += 1) if (tokens[k]!.after !== "" || !result[k]!.hypothetical) return;
  const from = clause.first + 1;
  let end = mainFrom(tokens, from, clause.end);
  // Without anything told behind it, it is what is told: "if it's blocked up and you just use a pin".
  if (end === clause.end && (tokens[clause.end - 1]!.after !== "," || next === undefined)) end = clause.first;
  for (let k = clause.first; k < end; k += 1) result[k]!.hypothetical = true;
}

/** So far before it stands the verb of "out of": "slide it gently out of its tube". */
const VERB_REACH = 5;

/** "Pull it out of the box" tells, "keep it out of the damp" denies. */
function takesOut(tokens: readonly Token[], clause: Clause, place: number): boolean {
  for (let k = place - 1; k >= Math.max(clause.first, place - VERB_REACH); k -= 1) {
    if (MOVES_OUT.has(tokens[k]!.stem)) return true;
    if (/^(keep|kept|store|leave|stay|put)$/.test(tokens[k]!.text)) return false;
  }
  return OPENED.test(tokens[place + 2]?.text ?? "") || OPENED.test(tokens[place + 3]?.text ?? "");
}

const OPENED = /^(box|packet|pack|packaging|tube|blister|wrapper|sleeve|pouch|sachet|foil|carton|seven|ten|hundred|habit|bed|hospital|microwave|oven)$/;
const MOVES_OUT = new Set(["take", "slide", "pull", "get", "pop", "lift", "tip", "pour", "grab", "squeeze", "spit", "push", "breathe", "blow", "fresh", "straight", "drop", "fall", "bring", "remove", "shake", "draw", "suck", "press", "come", "go", "run", "drip", "leak", "pick", "climb", "force", "empty", "wash", "rinse", "dissolve", "drive", "step", "throw", "chuck", "toss", "lob", "sling", "fling"].map(stem));

/** Where what is told last before a place begins: "keep it dry you wash it that is a bad idea" says the one and judges the other. */
function sayingFrom(tokens: readonly Token[], first: number, place: number): number {
  // "Shaking it is not needed": here a thing and its verb are what is judged.
  for (let k = place - 1; k > first; k -= 1) if (!/^(it|its|this|these|the|your|there)$/.test(tokens[k]!.text) && opensTelling(tokens, k)) return k;
  return first;
}

/** For whom or what it is bad takes so many words. */
const JUDGED_WITHIN = 5;

function judgesAhead(tokens: readonly Token[], first: number, hit: { first: number; end: number }): boolean {
  const behind = tokens.slice(hit.end, hit.end + JUDGED_WITHIN).map(({ text }) => text);
  // "Bad for a baby" judges nothing that is done, "bad for it to get wet" does.
  if (!(/^(to|if|when)$/.test(behind[0] ?? "") || (behind[0] === "for" && behind.includes("to"))) || tokens[hit.end - 1]!.after !== "") return false;
  for (let k = first; k < hit.first; k += 1) if (!LEADS_IN.test(tokens[k]!.text) && !/^(it|is|was|be|would|will|that|this|really|just|because|a)$/.test(tokens[k]!.text)) return false;
  return true;
}

/** "People don't, and have a look inside", "with water never": the denial has nothing behind it. */
function isTerminal(tokens: readonly Token[], place: number, end: number, clause: Clause): boolean {
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
function deniedBefore(tokens: readonly Token[], { first, end }: Clause, place: number, result: readonly Polarity[]): number {
  const { text, after } = tokens[place]!;
  if (text === "never") return sayingFrom(tokens, first, place);
  if (text !== "not" || place !== end - 1 || after === "?" || result[place]!.hypothetical || !/^(is|are)$/.test(tokens[place - 1]?.text ?? "")) return place;
  const from = behindPause(tokens, first, place);
  const words = place - 1 - from;
  return words >= 1 && words <= LONGEST_SUBJECT ? sayingFrom(tokens, from, place) : place;
}

/** "Keep it off the radiator", "stays well off the heat". */
function keptOff(tokens: readonly Token[], place: number, clause: Clause): { end: number } | null {
  if (tokens[place]!.text !== "off" || !/^(the|your|any|his|her)$/.test(tokens[place + 1]?.text ?? "")) return null;
  let verb = place - 1;
  while (verb > clause.first && /^(it|them|him|her|these|those|that|well|right|always|yourself)$/.test(tokens[verb]!.text)) verb -= 1;
  return verb >= clause.first && /^(keep|keeps|stay|stays)$/.test(tokens[verb]!.text) ? { end: place + 1 } : null;
}

/** "The ones you're not using live in the fridge": what tells which one denies its own verb alone. */
function reachOf(tokens: readonly Token[], clause: Clause, place: number): number {
  if (SHORT.has(tokens[place]!.text)) return SHORT_REACH;
  let subject = place - 1;
  while (subject > clause.first && /^(are|is|have|has|do|does|did|will|were|can)$/.test(tokens[subject]!.text)) subject -= 1;
  const tellsWhich = place - subject >= 2 && subject > clause.first && /^(you|he|she|they|we)$/.test(tokens[subject]!.text) && tokens[subject - 1]!.after === "" && WHICH_ONES.test(tokens[subject - 1]!.text);
  return tellsWhich ? RELATIVE_REACH : REACH;
}

const WHICH_ONES = /^(ones?|those|any|spares|two|three|four|five)$/;
const RELATIVE_REACH = 1;

/** "Because it must not go in a fire" is a reason that is a rule; "because you don't shake it" tells what happens. */
function givesARule(tokens: readonly Token[], first: number, end: number): boolean {
  if (!/^(because|since)$/.test(tokens[first]!.text)) return false;
  for (let place = first; place + 1 < end; place += 1) if (/^(can|must|should)$/.test(tokens[place]!.text) && tokens[place + 1]!.text === "not") return true;
  return false;
}

/** "No, you press it", "sorry, no, two sprays": an answer or a slip put right, no denial of what follows. */
function isAnswer(tokens: readonly Token[], place: number): boolean {
  const { text, after } = tokens[place]!;
  if (text !== "no") return false;
  return after !== "" || BEHIND_AN_ANSWER.test(tokens[place + 1]?.text ?? "") || BEFORE_AN_ANSWER.test(tokens[place - 1]?.text ?? "") || (tokens[place + 1]?.text !== "use" && place + 1 < tokens.length && opensInstruction(tokens, place + 1));
}

/** No thing that "no" denies begins so. */
const BEHIND_AN_ANSWER = /^(you|i|it|we|they|he|she|that|this|these|the|your|my|there|please|sorry|wait|actually|not|never|no|because|cause|so|well|just)$/;
const BEFORE_AN_ANSWER = /^(sorry|oh|ah|um|uh|er|mm|hmm|nah|say|says|said)$/;

/** "forget to shake", "skip priming": the negative verb turns an action. "A missed dose" turns nothing. */
function governsAnAction(tokens: readonly Token[], place: number): boolean {
  const next = tokens[place]?.text;
  return next === "to" || (next !== undefined && /^[a-z]{3,}ing$/.test(next) && next !== "something" && next !== "anything");
}

/** "skip the shake", "miss your morning one": but "don't miss a dose" denies the missing of a dose. */
function governsAThing(tokens: readonly Token[], place: number): boolean {
  return /^(the|that|this|your|it)$/.test(tokens[place]?.text ?? "");
}

/** One thing of a list seldom takes more words. */
const LONGEST_OF_A_LIST = 5;

/** Words between a denial and what it belongs to: "a cough that just will not". */
const BEFORE_A_DENIAL = /^(will|would|can|could|is|are|was|were|do|does|did|has|have|had|should|may|might|just|really|still|you|he|she|it|they|i|we)$/;

/** Whether a denial is told, and so denies all of a list: "a cough that won't stop, a sore throat or ..." and "bruises for no reason, ... or ..." name signs. */
function deniesAList(tokens: readonly Token[], clause: Clause, place: number, result: readonly Polarity[]): boolean {
  if (result[place]!.hypothetical) return false;
  let before = place - 1;
  while (before >= clause.first && BEFORE_A_DENIAL.test(tokens[before]!.text)) before -= 1;
  return before < clause.first || !/^(that|which|who|if|when|for)$/.test(tokens[before]!.text);
}

/** A list without "or" takes three things at least, of few words each. */
const BARE_LIST = { fewest: 3, longest: 2 } as const;
const IS_NOT_NAMED_ONLY = /^(is|are|was|will|can|instead|only|fine|okay|just|then|please|and|you|it|i|we|they|not|no|never|yes|yeah|now|so|to)$/;
const ANY_SUCH = /^any(thing|one|body|where)?$/;

/** "No ibuprofen, aspirin, naproxen" and "don't take aspirin, ibuprofen, anything like that" list what is denied without an "or". */
function listsBarely(tokens: readonly Token[], denied: number, from: number): boolean {
  let members = 1;
  let words = 0;
  for (let place = denied; place < tokens.length; place += 1) {
    const { text, after } = tokens[place]!;
    if (place >= from) {
      if (ANY_SUCH.test(text) && (place === from || words === 0)) return true;
      if (IS_NOT_NAMED_ONLY.test(text) || (words === 0 && opensInstruction(tokens, place))) return false;
      words += 1;
      if (words > BARE_LIST.longest) return false;
    }
    if (after === ",") {
      members += 1;
      words = 0;
    } else if (after !== "") return members >= BARE_LIST.fewest && /[.!;]/.test(after);
  }
  return members >= BARE_LIST.fewest;
}

/** Opens what is forbidden: "no", "please don't", "you must never". */
const FORBIDS_BEHIND = /^(and|so|but|well|also|please|remember|do|you|must|should|then|just|really|absolutely|obviously)$/;

/** Whether a denial opens its clause and forbids: of "no appetite, itching, dark urine" and "can't breathe, sweating" each is a sign by itself. */
function forbids(tokens: readonly Token[], clause: Clause, place: number, end: number): boolean {
  if (LACKS.at(tokens, end) !== null) return false;
  for (let k = clause.first; k < place; k += 1) if (!FORBIDS_BEHIND.test(tokens[k]!.text)) return false;
  return place === clause.first || tokens[place - 1]!.text !== "you";
}

/** Behind a comma a denial goes on only through a list: "don't twist, bend or force it", but "don't wait, have some juice". */
function goesOn(tokens: readonly Token[], from: number, end: number): boolean {
  let words = 0;
  for (let place = from; place < end; place += 1) {
    if (/^(or|nor)$/.test(tokens[place]!.text)) return true;
    words = tokens[place]!.after === "," ? 0 : words + 1;
    if (words > LONGEST_OF_A_LIST) return false;
  }
  return false;
}

/** "Anything that gets hot" tells which thing, "two at once" how many: they are denied with it. */
function goesWithIt(tokens: readonly Token[], place: number): boolean {
  // "Not on the same day as the other".
  if (tokens[place]!.text === "as") return tokens[place - 1]!.text === "much" || tokens[place - 2]?.text === "same";
  if (tokens[place]!.text === "once") return tokens[place - 1]!.text === "at" || /^(a|daily|every|more)$/.test(tokens[place + 1]?.text ?? "");
  return tokens[place]!.text === "that" && /^((any|some|every)(thing|one|body|where)|things?|places?|stuff)$/.test(tokens[place - 1]?.text ?? "");
}

/** "It isn't every week you dust it": what is singled out belongs to what is said of it. */
function isCleft(tokens: readonly Token[], first: number): boolean {
  return /^(is|was)$/.test(tokens[first - 2]?.text ?? "") && tokens[first - 3]?.text === "it" && /^(each|every|the|in|on|at|once|when|before|after|by|with|this|that)$/.test(tokens[first]?.text ?? "");
}

/** So soon behind the denial what need not be known or waited for is named. */
const AWAITED_WITHIN = 4;

/** Where what need not be known, asked or waited for is told to an end: "you don't need to know what she took | to call for help". */
function purposeFrom(tokens: readonly Token[], first: number, end: number): number {
  for (let place = first; place < Math.min(end, first + AWAITED_WITHIN); place += 1) {
    const awaited = AWAITS.at(tokens, place);
    if (awaited === null) continue;
    // "Know how to call": what need not be known is the calling.
    for (let k = awaited.end; k < end; k += 1) if (tokens[k]!.text === "to" && (k > awaited.end || tokens[k - 1]!.text !== "know") && !KNOWN_TO.test(tokens[k - 1]!.text)) return k;
    return end;
  }
  return end;
}

/** Before "to" with what is to be known: "know how to", "where to", "whether she wants to". */
const KNOWN_TO = /^(how|when|where|what|which|who|whether|not|want|wants|need|needs|have|has|had|got|going|used|able|likely|supposed|meant|about|due|allergic|close|next|up)$/;

/** Denies the tokens from `first` on, or turns what they were, until something ends the reach. */
function deny(tokens: readonly Token[], clause: Clause, first: number, reach: number, result: Polarity[], turns: boolean, { list = true, bare = false } = {}): void {
  const end = purposeFrom(tokens, first, Math.min(clause.end, first + reach));
  const cleft = isCleft(tokens, first);
  for (let place = first; place < end; place += 1) {
    const text = tokens[place]!.text;
    const listed = place > first && tokens[place - 1]!.after === ",";
    if (listed && !(list && (goesOn(tokens, place, end) || (bare && listsBarely(tokens, first, place))))) return;
    if (!listed && !(cleft && /^(you|i|we|he|she|they)$/.test(text)) && (place > first || /^(good|nothing|none)$/.test(tokens[place - 1]!.text)) && opensTelling(tokens, place)) return;
    if ((place > first || TURNERS.has(text)) && (TURNERS.has(text) || (ENDERS.at(tokens, place) !== null && !goesWithIt(tokens, place)))) return;
    result[place]!.negated = turns ? !result[place]!.negated : true;
  }
}
