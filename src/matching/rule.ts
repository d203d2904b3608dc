import { opensInstruction } from "../language/main-clause.ts";
import { wordWeight } from "../language/lexicon.ts";
import { remembered } from "./remembered.ts";
import type { Response } from "./response.ts";
import { sentenceUpTo, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/*
 * A response may suppose something and tell a rule for it: "if you miss one take it when you remember". Neither half is
 * the whole: what is told without its condition is mostly understood, but the condition without its rule tells nothing.
 */

/** Of what a response tells behind its condition, at least so much by weight must be said. */
const TOLD_LEAST = 0.25;
/** Whether the passage says when, and hardly anything of what to do then: "if you miss one, tell me" is no "if you miss one, take it late". */
export function tellsNoRule({ response, aligned }: Window, { tokens, clauses, clauseOf }: Stream): boolean {
  const { terms } = response;
  const conditions = conditionsOf(response);
  if (conditions === null) return false;
  let told = 0;
  let said = 0;
  terms.forEach(({ plain, weight }, place) => {
    if (!conditions[place] && !plain) told += weight;
  });
  for (const { term, hit, quality } of aligned) {
    const { plain, weight } = terms[term]!;
    // "Go by the screen, unless it's low" tells nothing of what is low.
    if (!conditions[term] && !plain && tokens[clauses[clauseOf[hit.first]!]!.first]!.text !== "unless") said += weight * quality;
  }
  return told > 0 && said < TOLD_LEAST * told;
}

/** Of a rule told before its time ("inject it when you realise"), the rule must weigh so much of it to be missed: "for when you get tight" says all of "use it when you get tight". */
const RULE_SHARE = 0.3;
const TIME = /^(when|whenever|once)$/;

/** By term whether it belongs to what the response supposes, or to the time behind what it tells; nothing where it supposes nothing. */
const conditionsOf = remembered(({ terms, weight }: Response): readonly boolean[] | null => {
  const supposes = terms.some(({ supposed, plain }) => supposed && !plain);
  const time = terms.findIndex(({ text, plain, negated }, place) => plain && !negated && TIME.test(text) && terms.slice(0, place).some((term) => !term.plain && !term.supposed));
  const before = time < 0 ? 0 : terms.slice(0, time).reduce((sum, term) => sum + (term.plain || term.supposed ? 0 : term.weight), 0);
  const timed = time >= 0 && before >= RULE_SHARE * weight;
  return supposes || timed ? terms.map(({ supposed }, place) => supposed || (timed && place > time)) : null;
});

/** So soon behind its condition a rule is told or denied; and so soon behind that it may be told still. */
const RULE_WITHIN = { denied: 3, told: 14 } as const;
/** Deny a doing that follows. */
const DENIES_A_DOING = /^(do not|never|must not|should not|need not|no need|no point)( |$)/;
/** Who is told not to do these is told to do something: "don't sit on it". */
const PUTS_OFF = /^(wait|sit|leave|ignore|hang|delay|put|brush|think|hope|worry|panic|fret|forget|skip|miss|stop|hesitate|let|shrug|mess|dither)$/;

/**
 * Of a response whose rule is small words alone ("if it runs down your cheek try it again"), whether the passage has its
 * condition, and the rule behind that is denied: "if it runs down your cheek don't have another go".
 */
export function deniesSmallRule({ response: { terms }, aligned }: Window, stream: Stream): boolean {
  if (!terms.some(({ supposed, plain }) => supposed && !plain) || terms.some(({ supposed, plain, negated }) => !supposed && (!plain || negated))) return false;
  const { polarity, tokens } = stream;
  if (!aligned.some(({ term, hit }) => terms[term]!.supposed && polarity[hit.first]!.hypothetical)) return false;
  let from = Math.max(...aligned.filter(({ term }) => terms[term]!.supposed).map(({ hit }) => hit.first));
  while (from < tokens.length && polarity[from]!.hypothetical) from += 1;
  const upTo = sentenceUpTo(stream, from, RULE_WITHIN.told);
  const keys = new Set(terms.flatMap((term) => (term.supposed ? [] : term.keys.map(({ key }) => key))).filter((key) => wordWeight(key) > 0));
  if (keys.size === 0) return false;
  let denial = from;
  while (denial < upTo && denial < from + RULE_WITHIN.denied && !DENIES_A_DOING.test(`${tokens[denial]!.text} ${tokens[denial + 1]?.text ?? ""}`)) denial += 1;
  if (!polarity[denial + 2]?.negated || PUTS_OFF.test(tokens[denial + 2]!.text) || denial >= upTo) return false;
  for (let place = denial; place < upTo; place += 1) if (!polarity[place]!.negated && keys.has(tokens[place]!.stem)) return false;
  return true;
}

/** "You can put them back, unless it's stinging, then give it a quarter of an hour": what stands behind the exception is told for it alone. */
function exceptsBetween({ aligned, response: { terms } }: Window, { tokens, polarity }: Stream): boolean {
  const hits = aligned.filter(({ term }) => !terms[term]!.plain).map(({ hit }) => hit.first).sort((one, other) => one - other);
  for (let place = hits[0]! + 1; place < hits.at(-1)!; place += 1) {
    if (!/^(unless|except)$/.test(tokens[place]!.text) || polarity[place - 1]!.hypothetical) continue;
    let end = place + 1;
    while (end < tokens.length && polarity[end]!.hypothetical) end += 1;
    if (!hits.some((hit) => hit > place && hit < end) && !terms.some(({ text }) => /^(unless|except)$/.test(text))) return hits.some((hit) => hit >= end);
  }
  return false;
}

/**
 * Whether all that the passage has is another word for one that the response tells, said as what may happen: "if you've
 * forgotten one" is no "skip the one you missed". The response's own word, or one that is all of it, may be named so ("if
 * you get hives").
 */
export function onlyMayHappen({ response: { terms }, aligned }: Window, { polarity }: Stream): boolean {
  const said = aligned.filter(({ term }) => !terms[term]!.plain);
  if (said.length !== 1 || said[0]!.quality === 1 || !polarity[said[0]!.hit.first]!.hypothetical || terms[said[0]!.term]!.supposed) return false;
  return terms.some(({ plain, supposed }, place) => !plain && !supposed && place !== said[0]!.term);
}

/** Opens another condition than that of what was told before it. */
const ANOTHER = /^(and|but|or)$/;

/** Whether the passage takes its condition from one rule and what is told from another: "if it's still today leave it, and if it's tomorrow | take it". */
export function tellsAnothersRule(window: Window, stream: Stream): boolean {
  const { response: { terms }, aligned } = window;
  const { tokens, clauses, clauseOf, polarity } = stream;
  if (ofTheOtherOne(window, stream) || rulesBetween(window, stream) || exceptsBetween(window, stream)) return true;
  let last = -1;
  let told = -1;
  for (const { term, hit } of aligned) {
    if (terms[term]!.plain) continue;
    if (!terms[term]!.supposed) {
      if (!polarity[hit.first]!.hypothetical && (told < 0 || hit.first < told)) told = hit.first;
    } else if (polarity[hit.first]!.hypothetical) last = Math.max(last, hit.first);
  }
  if (last < 0 || told < 0) return false;
  // "Take it if it's still today" tells it first, "take it, and if it's tomorrow" has told it for something else.
  if (told < last) return ANOTHER.test(tokens[clauses[clauseOf[last]!]!.first]!.text);
  let between = false;
  for (let place = last; place < told; place += 1) {
    if (!polarity[place]!.hypothetical) between = true;
    else if (between) return true;
  }
  return false;
}

/** "Before midnight leave it out, and if it's the next day | take it": the time, told without an "if", has had its rule, and another condition is what the rest is told for. */
function rulesBetween({ aligned, response: { terms } }: Window, { tokens, clauses, clauseOf, polarity }: Stream): boolean {
  const told = aligned.filter(({ term, hit }) => !terms[term]!.plain && !polarity[hit.first]!.hypothetical).map(({ hit }) => hit.first).sort((one, other) => one - other);
  return told.some((time, at) => {
    let ruled = false;
    for (let place = time + 1; place < (told[at + 1] ?? 0); place += 1) {
      if (!polarity[place]!.hypothetical) ruled ||= opensInstruction(tokens, place);
      else if (ruled && ANOTHER.test(tokens[clauses[clauseOf[place]!]!.first]!.text) && !aligned.some(({ hit }) => clauseOf[hit.first] === clauseOf[place])) return true;
    }
    return false;
  });
}

/** One thing of several is singled out; "just the one" says how many. */
const SINGLES_OUT = /^((it|that) is )?only (the|that|this|those|these|your) (one|ones|other)\b/;
/** It takes no more words than "it is only the one". */
const SINGLED_OUT_BY = 5;

/** "The spare ones sit on the shelf, only the one you're using goes in the fridge": what is told of the other one is not told of these. */
function ofTheOtherOne({ first, end, aligned, response: { terms } }: Window, { tokens, clauses, clauseOf }: Stream): boolean {
  for (let clause = clauseOf[first]! + 1; clause <= clauseOf[end - 1]!; clause += 1) {
    const from = clauses[clause]!.first;
    // Cheap first: most clauses open otherwise.
    if (!/^(only|it|that)$/.test(tokens[from]!.text) || !SINGLES_OUT.test(tokens.slice(from, from + SINGLED_OUT_BY).map(({ text }) => text).join(" "))) continue;
    const weighty = aligned.filter(({ term }) => !terms[term]!.plain);
    if (weighty.some(({ hit }) => hit.first < from) && weighty.some(({ hit }) => hit.first > from)) return true;
  }
  return false;
}
