import { LEADS_IN, type Clause } from "./clause.ts";
import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { phraseList } from "./phrase-set.ts";
import type { Token } from "./token.ts";

const LEXICON = polarityData as LexiconFile<"polarity">;

const FORWARD = phraseList(LEXICON.forward);
// By the very words: "not needed" denies what is before it, "not need" what is behind.
const BACKWARD = phraseList(LEXICON.backward.flatMap(formsOfBe), { by: "text" });
const NEUTRAL = phraseList(LEXICON.neutral);
const DISMISSALS = phraseList(LEXICON.dismissals);
/** What is dismissed is something to do: "reading the name". */
const DOING = /^(?!something|anything|nothing|everything|during|morning|evening)[a-z]{2,}ing$/;
const NEGATIVE_VERBS = phraseList(LEXICON.negative_verbs);
const ENDERS = phraseList(LEXICON.enders);
const TURNERS = new Set(LEXICON.turners);
const HYPOTHETICAL = phraseList(LEXICON.hypothetical);

/** Words that allow, and words of the harm that comes of it. */
export const PERMITS: ReadonlySet<string> = new Set(LEXICON.permits);
export const HARMS = phraseList(LEXICON.harms);

function formsOfBe(phrase: string): string[] {
  return /^(is|was) /.test(phrase) ? ["is", "are", "was", "were", "be", "being"].map((form) => phrase.replace(/^(is|was) /, `${form} `)) : [phrase];
}

/** What a token's clause does with it. */
export interface Polarity {
  /** Denied: by a denial before it, or by what is said about it behind. */
  negated: boolean;
  /** Speaks of what may or does happen ("if you don't shake it"), not of what to do. */
  hypothetical: boolean;
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
  const result = tokens.map(() => ({ negated: false, hypothetical: false }));
  clauses.forEach((clause, place) => {
    const ruledOut = markClause(tokens, clause, result);
    const before = clauses[place - 1];
    // "Shaking it, you can leave that out": the clause says no more than that what came before its comma is not needed.
    if (ruledOut && before !== undefined && tokens[clause.first - 1]!.after === ",") for (let k = before.first; k < before.end; k += 1) result[k]!.negated = true;
  });
  return result;
}

/** @returns whether the clause begins with what denies the thing before it. */
function markClause(tokens: readonly Token[], clause: Clause, result: Polarity[]): boolean {
  let start = clause.first;
  while (start < clause.end && LEADS_IN.test(tokens[start]!.text)) start += 1;
  if (HYPOTHETICAL.at(tokens, start) !== null && !givesARule(tokens, start, clause.end)) for (let k = clause.first; k < clause.end; k += 1) result[k]!.hypothetical = true;

  const silenced = new Set<number>();
  for (const hit of NEUTRAL.find(tokens, clause.first, clause.end)) {
    // "Don't worry" denies nothing, "don't worry about reading the label" does.
    if (DISMISSALS.at(tokens, hit.first) !== null) continue;
    for (let k = hit.first; k < hit.end; k += 1) silenced.add(k);
  }
  const backward = BACKWARD.find(tokens, clause.first, clause.end).filter((hit) => !silenced.has(hit.first));
  for (const hit of backward) for (let k = hit.first; k < hit.end; k += 1) silenced.add(k);
  let denied = false;
  for (let place = clause.first; place < clause.end; place += 1) {
    const verb = silenced.has(place) ? null : NEGATIVE_VERBS.at(tokens, place);
    const dismissal = silenced.has(place) ? null : DISMISSALS.at(tokens, place);
    if (dismissal !== null && !DOING.test(tokens[dismissal.end]?.text ?? "")) {
      // "Don't worry about the noise": comfort, no denial.
      place = dismissal.end - 1;
      continue;
    }
    const trigger = dismissal ?? (silenced.has(place) || isAnswer(tokens, place) ? null : FORWARD.at(tokens, place));
    // "You can't skip the shake": behind a denial the negative verb turns a thing too.
    const hit = trigger ?? (verb !== null && (governsAnAction(tokens, verb.end) || (result[place]!.negated && governsAThing(tokens, verb.end))) ? verb : null);
    if (hit === null) continue;
    // "Never inject without changing the needle": two denials cancel.
    if (denied && tokens[place]!.text === "without") continue;
    denied = true;
    // "No pain, no cough" denies twice; "don't forget to shake" denies a denial.
    deny(tokens, clause, hit.end, SHORT.has(tokens[place]!.text) ? SHORT_REACH : REACH, result, trigger === null);
    place = hit.end - 1;
  }
  for (const hit of backward) for (let k = clause.first; k < hit.first; k += 1) result[k]!.negated = true;
  return backward.some(({ first, end }) => first === start && end - first >= WHOLE);
}

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
  return after !== "" || /^(you|i|it|we|they|that|please|sorry|wait|actually|not)$/.test(tokens[place + 1]?.text ?? "") || /^(sorry|oh|um|uh)$/.test(tokens[place - 1]?.text ?? "");
}

/** "forget to shake", "skip priming": the negative verb turns an action. "A missed dose" turns nothing. */
function governsAnAction(tokens: readonly Token[], place: number): boolean {
  const next = tokens[place]?.text;
  return next === "to" || (next !== undefined && /^[a-z]{3,}ing$/.test(next) && next !== "something" && next !== "anything");
}

/** "skip the shake", "miss your morning one": but "don't miss a dose" denies the missing of a dose. */
function governsAThing(tokens: readonly Token[], place: number): boolean {
  return /^(the|that|this|your|it)$/.test(tokens[place]?.text ?? "");
}

/** Behind a comma a denial goes on only through a list: "don't twist, bend or force it", but "don't wait, have some juice". */
function goesOn(tokens: readonly Token[], from: number, end: number): boolean {
  for (let place = from; place < end; place += 1) if (/^(or|nor)$/.test(tokens[place]!.text)) return true;
  return false;
}

/** "Anything that gets hot": tells which thing, and is denied with it. */
function isRelative(tokens: readonly Token[], place: number): boolean {
  return tokens[place]!.text === "that" && /^((any|some|every)(thing|one|body|where)|things?|places?|stuff)$/.test(tokens[place - 1]?.text ?? "");
}

/** Denies the tokens from `first` on, or turns what they were, until something ends the reach. */
function deny(tokens: readonly Token[], clause: Clause, first: number, reach: number, result: Polarity[], turns: boolean): void {
  const end = Math.min(clause.end, first + reach);
  for (let place = first; place < end; place += 1) {
    const text = tokens[place]!.text;
    if (place > first && tokens[place - 1]!.after === "," && !goesOn(tokens, place, end)) return;
    if ((place > first || TURNERS.has(text)) && (TURNERS.has(text) || (ENDERS.at(tokens, place) !== null && !isRelative(tokens, place)))) return;
    result[place]!.negated = turns ? !result[place]!.negated : true;
  }
}
