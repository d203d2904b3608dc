import { LEADS_IN, type Clause } from "./clause.ts";
import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { opensTelling } from "./main-clause.ts";
import { phraseList } from "./phrase-set.ts";
import type { Token } from "./token.ts";

/*
 * Denials that reach over the end of their clause: over a colon to a list, over an aside, through "and then" and "and wait", and back
 * from a clause that says no more than no.
 */

const LEXICON = polarityData as LexiconFile<"polarity">;
const HEADS = phraseList(LEXICON.list_heads, { by: "text" });
const ASIDES = phraseList(LEXICON.asides, { by: "text" });
const RULINGS = phraseList(LEXICON.rulings, { by: "text" });

/** @param deny marks tokens as denied, `first` up to, not including, `end`. @param isDenied whether a token is, by its own clause. */
export function carryDenials(tokens: readonly Token[], clauses: readonly Clause[], isDenied: (place: number) => boolean, deny: (first: number, end: number) => void): void {
  clauses.forEach((clause, place) => {
    const before = clauses[place - 1];
    const ruled = ruledOut(tokens, clause, before);
    if (ruled !== null) deny(ruled.first, ruled.end);
    if (before === undefined) return;
    if (goesOn(tokens, clause, before) && isDenied(before.end - 1)) deny(clause.first + GOES_ON, clause.end);
    if (waitsOn(tokens, clause, before)) deny(clause.first + 1, clause.end);
  });
  for (let place = 0; place < tokens.length; place += 1) {
    const head = HEADS.at(tokens, place);
    if (head !== null && tokens[head.end - 1]!.after === ":") deny(head.end, listEnd(tokens, head.end));
    const verb = denies(tokens, place) && tokens[place]!.after === "," ? behindAside(tokens, place + 1) : null;
    if (verb !== null) deny(verb, listEnd(tokens, verb, LONGEST_MEMBER));
  }
}

/** "And then", "and": words before what is told next. */
const GOES_ON = 2;

/** A clause that forbids begins with its denial: "please don't", "you must never". */
const FORBIDS_WITHIN = 4;
const NO_VERB = /^(i|you|we|he|she|it|they|what|when|if|the|your|a|an|this|that|there|once|after|as|so|for|in|on|at|with|just)$/;

/** "Don't tip your head back and then sniff": without a comma the two are one thing not to do. */
function goesOn(tokens: readonly Token[], clause: Clause, before: Clause): boolean {
  const verb = tokens[clause.first + GOES_ON];
  if (tokens[clause.first]!.text !== "and" || tokens[clause.first + 1]?.text !== "then" || verb === undefined || clause.first + GOES_ON >= clause.end || NO_VERB.test(verb.text)) return false;
  return tokens[before.end - 1]!.after === "" && tokens.slice(before.first, before.first + FORBIDS_WITHIN).some(({ text }, place) => text === "avoid" || denies(tokens, before.first + place));
}

/** To do these and wait is to do nothing; "don't panic and wait for the ambulance" forbids the one and tells the other. */
const IDLES = /^(lie|sit|stay|hang)$/;
/** Between the denial and that verb: "don't just sit there", "never ever lie down". */
const MERELY = /^(just|ever|go|simply|only)$/;

/** "Don't lie down and wait till the morning": an instruction by itself elsewhere, here what is not to be done. */
function waitsOn(tokens: readonly Token[], clause: Clause, before: Clause): boolean {
  if (tokens[clause.first]!.text !== "and" || tokens[clause.first + 1]?.text !== "wait" || tokens[clause.first + 2]?.text === "for" || tokens[before.end - 1]!.after !== "") return false;
  for (let place = before.first; place < before.end; place += 1) {
    if (!denies(tokens, place)) continue;
    let verb = place + 1;
    while (verb < before.end && MERELY.test(tokens[verb]!.text)) verb += 1;
    return verb < before.end && IDLES.test(tokens[verb]!.text);
  }
  return false;
}

/** What a clause rules out that ends in nothing but no: "you may be tempted to use a pin, but please don't do that", "..., ignore that". */
function ruledOut(tokens: readonly Token[], clause: Clause, before: Clause | undefined): Clause | null {
  for (let place = clause.first; place < clause.end; place += 1) {
    const hit = RULINGS.at(tokens, place);
    if (hit === null || hit.end !== clause.end || /\?/.test(tokens[hit.end - 1]!.after)) continue;
    let first = place;
    while (first > clause.first && LEADS_IN.test(tokens[first - 1]!.text)) first -= 1;
    const ruled = first === clause.first ? before : { first: clause.first, end: first };
    if (ruled === undefined) return null;
    const { after } = tokens[ruled.end - 1]!;
    // A sentence by itself that says no may put a slip right; "please don't" asks not to do what was named.
    return after === "," || (first < place && after === "") || (tokens[place]!.text === "please" && after === ".") ? ruled : null;
  }
  return null;
}

function denies(tokens: readonly Token[], place: number): boolean {
  const { text } = tokens[place]!;
  return text === "never" || (text === "not" && /^(do|does|should|must|can|could|would)$/.test(tokens[place - 1]?.text ?? ""));
}

/** An aside takes no more words. */
const LONGEST_ASIDE = 14;

/** "Please don't, whatever anybody tells you, use a pin": the verb behind the aside, or null. */
function behindAside(tokens: readonly Token[], first: number): number | null {
  if (ASIDES.at(tokens, first) === null) return null;
  for (let place = first; place < Math.min(tokens.length - 1, first + LONGEST_ASIDE); place += 1) {
    if (/[.?!;:]/.test(tokens[place]!.after)) return null;
    if (tokens[place]!.after === "," && !/^(i|you|we|he|she|it|they|and|or|the|your|because|but|so)$/.test(tokens[place + 1]!.text)) return place + 1;
  }
  return null;
}

/** One member of what is denied takes no more words. */
const LONGEST_MEMBER = 12;
const REASON = /^(because|but|so|instead|as|since|otherwise)$/;

/** Behind the last token of a list or member that begins here: its sentence ends, a reason follows, or something else is told. */
function listEnd(tokens: readonly Token[], first: number, most = Infinity): number {
  let end = first + 1;
  while (end < tokens.length && end - first < most && !/[.?!;]/.test(tokens[end - 1]!.after) && !REASON.test(tokens[end]!.text) && (most === Infinity || !opensTelling(tokens, end))) end += 1;
  return end;
}
