import { compareQuantity, isAnotherMatter } from "../language/quantity-compare.ts";
import { soundAlikeNumbers, type QuantityMention } from "../language/quantity.ts";
import { opensInstruction } from "../language/main-clause.ts";
import { HARMS } from "../language/polarity.ts";
import { wordWeight } from "../language/lexicon.ts";
import type { ExpectedQuantity, Response } from "./response.ts";
import { firstFrom, type Postings } from "./postings.ts";
import { remembered } from "./remembered.ts";
import { clausesAround, inOneSentence, sentenceUpTo, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";
import type { WordGroup } from "./word-group.ts";

/** Words just outside a passage may still belong to it ("shake it", with "the inhaler" a breath before). */
const MARGIN = 6;
/** A number belongs to the words it stands this near to. */
const QUANTITY_REACH = 7;

/** The passage with its margin, but not across another turn of the stream. */
function around(stream: Stream, window: { first: number; end: number }, margin: number): { first: number; end: number } {
  let { first, end } = window;
  const { position, turnOf } = stream;
  const last = window.end - 1;
  while (first > 0 && position[window.first]! - position[first - 1]! <= margin && turnOf[first - 1] === turnOf[window.first]) first -= 1;
  while (end < position.length && position[end]! - position[last]! <= margin && turnOf[end] === turnOf[last]) end += 1;
  return { first, end };
}

/** Whether a notion is said between two tokens. @param least how surely its words are heard. */
export function groupPresent(group: WordGroup, postings: Postings, first: number, end: number, least = 0): boolean {
  // Loops, here and below: a function made for each run and word of each passage is a tenth of all that matching throws away.
  for (const run of group.runs) {
    for (const key of run[0]!) {
      const hits = postings.get(key);
      if (hits === undefined) continue;
      for (let place = firstFrom(hits, first); place < hits.length && hits[place]!.first < end; place += 1) {
        if (hits[place]!.end <= end && hits[place]!.quality >= least && continues(run, 1, hits[place]!.end, postings, end)) return true;
      }
    }
  }
  return false;
}

/** Whether the words of a notion stand anywhere in the stream: where not, no passage can have it. */
export function groupPossible(group: WordGroup, postings: Postings): boolean {
  return group.runs.some((run) => run.every((keys) => keys.some((key) => postings.has(key))));
}

/** A filler or an article may stand inside a run of words. */
const RUN_GAP = 1;

function continues(run: string[][], place: number, from: number, postings: Postings, end: number): boolean {
  if (place === run.length) return true;
  for (const key of run[place]!) {
    const hits = postings.get(key);
    if (hits === undefined) continue;
    for (let k = firstFrom(hits, from); k < hits.length && hits[k]!.first <= from + RUN_GAP; k += 1) {
      if (hits[k]!.end <= end && continues(run, place + 1, hits[k]!.end, postings, end)) return true;
    }
  }
  return false;
}

/** Every notion of `must` is said in or right beside the passage. */
export function mustHolds(groups: readonly WordGroup[], postings: Postings, stream: Stream, window: Window): boolean {
  if (groups.length === 0) return true;
  const { first, end } = around(stream, window, MARGIN);
  for (const group of groups) if (!groupPresent(group, postings, first, end)) return false;
  return true;
}

/** Every notion is said in the clauses of the passage: what is held against somebody is not made up of what stands next to it ("check the bottle, then tilt your head back"). */
export function mustHoldsInside(groups: readonly WordGroup[], postings: Postings, stream: Stream, window: Window): boolean {
  const { first, end } = clausesAround(stream, window);
  return groups.every((group) => groupPresent(group, postings, first, end));
}

/** Notions of `must` that are not said in or right beside the passage. */
export function unmetNotions(groups: readonly WordGroup[], postings: Postings, stream: Stream, window: Window): WordGroup[] {
  if (groups.length === 0) return [];
  const { first, end } = around(stream, window, MARGIN);
  return groups.filter((group) => !groupPresent(group, postings, first, end));
}

/**
 * None of the notions of `not_with` is said in the clauses of the passage.
 * @param upTo "instruction": what is told behind the passage, in speech without punctuation, is another matter. What is held against somebody must be free of them all the same.
 */
export function notWithHolds(groups: readonly WordGroup[], postings: Postings, stream: Stream, window: Window, upTo: "clause" | "instruction" = "clause"): boolean {
  if (groups.length === 0) return true;
  const { first, end: to } = clausesAround(stream, window);
  let end = upTo === "clause" ? to : window.end;
  while (end < to && !opensInstruction(stream.tokens, end)) end += 1;
  for (const group of groups) if (groupPresent(group, postings, first, end, SURELY_HEARD)) return false;
  return true;
}

/** What keeps a passage out must be there: "love" may be "leave" mis-heard, and mostly is not. */
const SURELY_HEARD = 0.85;

export type PolarityReading =
  /** Affirmed where the response affirms, denied where it denies. */
  | "agrees"
  /** Denied as a whole where the response affirms, or the other way round. */
  | "opposes"
  /** Neither: a modifier is denied ("not too hard"), or the clause speaks of what may happen. */
  | "apart";

/** Less than this share of the weight under the same polarity is no agreement. */
const AGREEMENT = 0.6;
/** A thing this heavy that the response denies and the speaker affirms is no agreement, whatever else is said alike. */
const DENIED_WEIGHT = 0.9;
/** So much of the weight must be denied as the response denies it for what is named before to be denied with it. */
const OF_A_TOPIC = 0.3;
/** Before a number: it tells when, or for how long. */
const TELLS_WHEN = /^(in|for|after|within|over|than|first|next)$/;
/** A denial that takes in weighty words from outside the element denies something else. */
const STRANGE_WEIGHT = 1.2;
/** Words after a denial that make it one of manner or time: "not too hard", "don't do it before". */
const MANNER = new Set(["too", "before", "until", "till", "unless", "more", "less", "than", "hard", "hardly", "fully", "enough", "if", "when", "without", "while", "yet"]);

/** How the polarity of the passage stands to that of the response. */
export function readPolarity(stream: Stream, window: Window, vocabulary: ReadonlySet<string>): PolarityReading {
  let same = 0;
  let all = 0;
  let hypothetical = 0;
  let deniedHere = false;
  let allowed = false;
  // "If your eyesight goes blurry there's no need to see anybody": the condition is not what is denied.
  const told = window.aligned.filter(({ term, hit }) => window.response.terms[term]!.weight > 0 && !stream.polarity[hit.first]!.hypothetical);
  if (told.length === 0 && needsNothing(stream, window)) return "apart";
  if (onlySupposes(window) || saysHalfARefusal(window)) return "apart";
  const weighty = told.length > 0 ? told : window.aligned;
  // "It doesn't need several days": a number may be denied too, but "not more than two" denies none.
  const spokenAs = ({ term, hit }: Window["aligned"][number]) => stream.polarity[window.response.terms[term]!.text === "{quantity}" ? hit.first : hit.end - 1]!;
  const denials = weighty.filter((one) => window.response.terms[one.term]!.negated && spokenAs(one).negated);
  const lastDenied = denials.reduce((last, { hit }) => Math.max(last, hit.first), -1);
  const topic: number[] = [];
  for (const one of weighty) {
    const { term, hit } = one;
    const { weight, negated, eitherWay, text } = window.response.terms[term]!;
    const spoken = spokenAs(one);
    // "No better in ten minutes" and "not before ten minutes": when it is so is not what is denied.
    if (text === "{quantity}" && weighty.length > 1 && (negated || spoken.negated) && TELLS_WHEN.test(stream.tokens[hit.first - 1]?.text ?? "")) continue;
    all += weight;
    if (spoken.negated === negated || (eitherWay && spoken.eitherWay)) same += weight;
    // "Fingers well away from the tip" denies what "no fingers on the tip" denies: they are named first.
    else if (negated && !spoken.hypothetical && hit.first < lastDenied && stream.clauseOf[hit.first] === stream.clauseOf[lastDenied]) topic.push(weight);
    else if (negated && weight >= DENIED_WEIGHT) allowed = true;
    if (spoken.negated) deniedHere = true;
    if (spoken.hypothetical) hypothetical += weight;
  }
  const isDenied = denials.reduce((sum, { term }) => sum + window.response.terms[term]!.weight, 0) >= OF_A_TOPIC * all;
  if (isDenied) same += topic.reduce((sum, weight) => sum + weight, 0);
  else if (topic.some((weight) => weight >= DENIED_WEIGHT)) allowed = true;
  if (all === 0 || (same / all >= AGREEMENT && !allowed)) return deniesNothing(stream, window) || deniesTheDoing(stream, window) ? "apart" : "agrees";
  if (same / all >= AGREEMENT) return "apart";
  if (hypothetical / all > 1 - AGREEMENT) return warns(stream, window) ? "agrees" : "apart";
  if (same / all > 1 - AGREEMENT) return "apart";
  if (!deniedHere) return "opposes";
  return deniesSomethingElse(stream, window, vocabulary) ? "apart" : "opposes";
}

/**
 * Whether the response denies, and the speaker near the passage denies nothing: "wait until it's empty" has most of the
 * words of "don't wait until it's empty", and the one that is turned is outvoted.
 */
function deniesNothing(stream: Stream, window: Window): boolean {
  const terms = window.aligned.map(({ term }) => window.response.terms[term]!);
  if (!terms.some(({ negated, weight, supposed }) => negated && weight > 0 && !supposed)) return false;
  if (window.aligned.some(({ term, hit }) => window.response.terms[term]!.eitherWay && stream.polarity[hit.first]!.eitherWay)) return false;
  const near = around(stream, window, MARGIN);
  const clauses = clausesAround(stream, window);
  const first = Math.min(near.first, clauses.first);
  const end = Math.max(near.end, clauses.end);
  for (let place = first; place < end; place += 1) if (stream.polarity[place]!.negated) return false;
  return !warns(stream, window);
}

/** So much of its weight a response must tell, beside what it supposes, for that to be missed. */
const TOLD_SHARE = 0.3;

/** Whether of a response that denies something only what it supposes is said: "when you're feeling fine", of "don't drop it when you're feeling fine". */
function onlySupposes({ response, aligned }: Window): boolean {
  if (!response.terms.some(({ supposed }) => supposed) || aligned.some(({ term }) => !response.terms[term]!.supposed)) return false;
  const denied = response.terms.reduce((sum, { supposed, negated, weight }) => sum + (supposed || !negated ? 0 : weight), 0);
  return denied >= TOLD_SHARE * response.weight;
}

/** "No bloods no tablets": without the one there is not the other. */
const REFUSES_BOTH = /^no (.*) no /;

const refusesBoth = remembered(({ text }: Response) => REFUSES_BOTH.test(text));

/** "You won't need any blood tests" is no half of "no blood tests no tablets", which denies them by what comes of it. */
function saysHalfARefusal({ response, aligned }: Window): boolean {
  if (!refusesBoth(response)) return false;
  const denied = response.terms.flatMap(({ negated, weight }, place) => (negated && weight > 0 ? [place] : []));
  return !denied.every((place) => aligned.some(({ term }) => term === place));
}

/** So soon behind what is supposed it is told that nothing need be done. */
const NEEDLESS_WITHIN = 5;
const NEEDLESS = /(^| )(no (need|call|reason|point)|need not|not (need|have) to|not (bother|worry|matter|trouble))( |$)/;

/** Whether all that is found of a response is what it supposes, and nothing need be done of it: "if your eyesight goes blurry there's no need to see anybody". */
function needsNothing(stream: Stream, window: Window): boolean {
  const { tokens, polarity } = stream;
  if (window.response.terms.some(({ negated }) => negated)) return false;
  let behind = window.end;
  while (behind < tokens.length && polarity[behind]!.hypothetical && inOneSentence(stream, behind, window.end - 1)) behind += 1;
  const said = tokens.slice(behind, sentenceUpTo(stream, behind, NEEDLESS_WITHIN)).map(({ text }) => text);
  return NEEDLESS.test(said.join(" "));
}

/** What is not to be done, or does not happen, stands straight behind one of these. */
const DENIES_A_DOING = /(^| )(do not|does not|will not|would not|must not|should not|need not|not to|not need to|not have to|.* never)$/;
/** Moves to what is denied with it: "don't go to hospital". */
const GOES_THERE = /^(?:go|come|get)$/;
function goesBefore(tokens: Stream["tokens"], place: number): number {
  const to = /^(the|a|an|your)$/.test(tokens[place - 1]?.text ?? "") ? place - 2 : place - 1;
  return tokens[to]?.text === "to" && GOES_THERE.test(tokens[to - 1]?.text ?? "") ? to - 1 : place;
}

/** Opens when or how it is done; what stands behind the verb without it is what it is done to. */
const HOW_OR_WHEN = /^(in|on|at|by|with|for|from|like|as|within|during|through|into|onto|over|under|around|every|each|all|so|very|that|this|really)$/;
/** A doing that weighs so much is the response's own. */
const DOING_WEIGHT = 0.1;

/** Whether the response denies nothing, and what the speaker denies is its doing: "the colour won't change". */
function deniesTheDoing(stream: Stream, { aligned, response: { terms } }: Window): boolean {
  const { tokens, polarity } = stream;
  if (terms.some(({ negated, weight }) => negated && weight > 0)) return false;
  return aligned.some(({ term, hit: { first, end } }) => {
    const { weight, supposed, eitherWay } = terms[term]!;
    if (weight < DOING_WEIGHT || supposed || eitherWay || !polarity[first]!.negated || polarity[first]!.hypothetical) return false;
    const verb = goesBefore(tokens, first);
    if (!DENIES_A_DOING.test(`${tokens[verb - 3]?.text ?? ""} ${tokens[verb - 2]?.text ?? ""} ${tokens[verb - 1]?.text ?? ""}`)) return false;
    // "It doesn't work on the spot": when it does not, or how, is what is denied; "don't mention the warfarin": what it is done to is denied with it.
    let howOrWhen = false;
    for (let place = end; polarity[place]?.negated === true && stream.clauseOf[place] === stream.clauseOf[first]; place += 1) {
      if (aligned.some(({ hit }) => hit.first <= place && place < hit.end)) continue;
      howOrWhen ||= HOW_OR_WHEN.test(tokens[place]!.text);
      if (MANNER.has(tokens[place]!.text) || (howOrWhen && wordWeight(tokens[place]!.stem) >= 1)) return false;
    }
    return true;
  });
}

/** Behind what is supposed, so many words may pass before its harm is named. */
const WARNING_REACH = 12;

/** "If you give it a big sniff it ends up in your throat" says what "not a big sniff" says. */
function warns(stream: Stream, { end, aligned, response }: Window): boolean {
  const denied = aligned.reduce((sum, { term }) => sum + (response.terms[term]!.negated ? response.terms[term]!.weight : 0), 0);
  const all = aligned.reduce((sum, { term }) => sum + response.terms[term]!.weight, 0);
  if (denied / all < AGREEMENT) return false;
  const [harm] = HARMS.find(stream.tokens, end, Math.min(stream.tokens.length, end + WARNING_REACH));
  return harm !== undefined && stream.turnOf[harm.first] === stream.turnOf[end - 1] && !stream.polarity[harm.first]!.negated;
}

function deniesSomethingElse(stream: Stream, window: Window, vocabulary: ReadonlySet<string>): boolean {
  const clauses = new Set<number>();
  for (let k = window.first; k < window.end; k += 1) clauses.add(stream.clauseOf[k]!);
  let strange = 0;
  for (const index of clauses) {
    const clause = stream.clauses[index]!;
    for (let k = clause.first; k < clause.end; k += 1) {
      if (!stream.polarity[k]!.negated) continue;
      const token = stream.tokens[k]!;
      if (MANNER.has(token.text)) return true;
      if (!vocabulary.has(token.stem)) strange += wordWeight(token.stem);
    }
  }
  return strange >= STRANGE_WEIGHT;
}

/**
 * Whether the clauses of the passage deny anything that the response does not: "the brown one won't do anything in an
 * attack" has the words of "use the brown one in an attack" and says no such thing. What is held against somebody must
 * be free of that.
 */
export function deniesBeside(stream: Stream, window: Window): boolean {
  if (window.response.terms.some(({ negated }) => negated)) return deniesAgain(stream, window);
  const { first, end } = clausesAround(stream, window);
  for (let place = first; place < Math.min(end, window.end + DENIED_BEHIND); place += 1) {
    if (stream.polarity[place]!.negated) return true;
    // "Not just the first time": that it is no more is what is denied.
    if (stream.tokens[place]!.text === "not" && /^(just|only|simply|merely)$/.test(stream.tokens[place + 1]?.text ?? "")) return true;
  }
  return false;
}

const A_DENIAL = /^(not|never|no|nor|without|cannot|\w+n't)$/;

/** A place of a response with its alternatives. */
const PLACES = /(?:\([^()]*\)|[^\s()])+/g;

/** A response with its one denial may be about all of its words ("not holding add another one"); two denials deny two things. */
const hasTwoDenials = remembered(({ text }: Response) => (text.match(PLACES) ?? []).filter((place) => place.split(/[()|\s]+/).some((word) => A_DENIAL.test(word))).length > 1);

/**
 * "If it's not holding the pain don't stick a second one on": the response too denies that it holds, and is held for the
 * second one, which is denied here once more.
 */
function deniesAgain({ tokens, polarity }: Stream, { aligned, response }: Window): boolean {
  const denied = aligned.filter(({ term, hit }) => response.terms[term]!.negated && polarity[hit.first]!.negated).map(({ hit }) => hit.first);
  const supposed = denied.filter((place) => polarity[place]!.hypothetical);
  // "Don't ring here, we can't help" tells both, and denies nothing of what is held against it.
  if (supposed.length === 0 || supposed.length === denied.length || hasTwoDenials(response)) return false;
  const from = Math.min(...supposed);
  const told = denied.find((place) => place > from && !polarity[place]!.hypothetical);
  return told !== undefined && tokens.slice(from, told).some(({ text }, behind) => A_DENIAL.test(text) && !polarity[from + behind]!.hypothetical);
}

/** What is denied later than so many words behind the passage is something else: "slowly, because you don't want to cough". */
const DENIED_BEHIND = 3;

/** Responses that ask how far apart, not how long. */
const ASKS_INTERVAL = /\b(every|each|apart|between|once|a day|a week|a month|daily|weekly)\b/;

/** "You can have a second" counts; it is no wrong time. */
const SECOND_ONE = "a second";

export type QuantityReading = { reading: "right" | "wrong" | "misheard"; mention: QuantityMention } | { reading: "none" };

/** Reads the number that belongs to the passage against the one expected. */
export function readQuantity(stream: Stream, window: Window, expected: ExpectedQuantity): QuantityReading {
  const { first, end } = around(stream, window, QUANTITY_REACH);
  const aligned = window.aligned.filter(({ term }) => window.response.terms[term]!.text === "{quantity}").map(({ hit }) => hit.first);
  const mentions = stream.quantities.filter((mention) => mention.first >= first && mention.end <= end);
  let wrong: QuantityMention | null = null;
  for (const mention of mentions) {
    if (isDeniedItself(stream, mention)) continue;
    const rate = otherPeriod(stream, mention, expected);
    const compared = rate === null ? compareQuantity(mention, expected) : "wrong";
    const reading = compared === "other-dimension" && aligned.includes(mention.first) && isBareCount(stream, window, mention, expected) ? "wrong" : compared;
    const inside = mention.first >= window.first && mention.end <= window.end;
    const sameClause = stream.clauseOf[mention.first] === stream.clauseOf[window.end - 1] || stream.clauseOf[mention.first] === stream.clauseOf[window.first];
    // "One spray each, children two": a bare number beside it puts no number of the passage right.
    if (reading === "right" && (inside || sameClause) && !(wrong !== null && wrong.unit !== null && mention.unit === null)) {
      const other = numberOfTheSentence(stream, window, mention, mentions, expected);
      return other === null ? { reading: "right", mention } : { reading: "wrong", mention: other };
    }
    if (reading === "wrong" && (mention.text === SECOND_ONE || isOfSomethingElse(stream, window, mention, expected))) continue;
    if (reading === "wrong" && (aligned.includes(mention.first) || (aligned.length === 0 && sameClause)) && wrong === null) wrong = rate ?? mention;
  }
  if (wrong === null) return { reading: "none" };
  const values = typeof expected.value === "number" ? [expected.value] : expected.value;
  const misheard = values.some((value) => soundAlikeNumbers(value, wrong.low) || soundAlikeNumbers(value, wrong.high));
  return { reading: misheard ? "misheard" : "wrong", mention: wrong };
}

/** Days in a period, and how much longer or shorter than that is another one. */
const PERIOD_DAYS = { day: 1, week: 7 } as const;
const ANOTHER_PERIOD = 3;

/** The right number, told for another period than the element's: "fourteen units a day", where they are for a week. Null where it is for none, or for that one. */
function otherPeriod({ quantities, tokens }: Stream, mention: QuantityMention, expected: ExpectedQuantity): QuantityMention | null {
  // "Four milligrams. Once a week you have a blood test": another thing.
  if (expected.per === undefined || tokens[mention.end - 1]!.after !== "" || compareQuantity(mention, expected) !== "right") return null;
  // "Two units a day" is within "up to fourteen a week" and says nothing against it.
  if (expected.bound !== "exact" && Math.abs(mention.high - (typeof expected.value === "number" ? expected.value : expected.value[1])) > expected.tolerance) return null;
  const rate = quantities.find(({ first, kind }) => first === mention.end && kind !== "amount");
  // "One or two puffs, up to four times a day" tells how often, for no other period.
  if (rate?.perDay === undefined || rate.perDay[0] > 1) return null;
  const times = 1 / rate.perDay[0] / PERIOD_DAYS[expected.per];
  return times >= ANOTHER_PERIOD || times <= 1 / ANOTHER_PERIOD ? { ...mention, end: rate.end, text: `${mention.text} ${rate.text}` } : null;
}

/**
 * "Before food you want four to seven. Two hours after, under ten": a number of another sentence puts none right where the
 * sentence that says more of the response has a number of its own, and a wrong one.
 */
function numberOfTheSentence(stream: Stream, window: Window, right: QuantityMention, mentions: readonly QuantityMention[], expected: ExpectedQuantity): QuantityMention | null {
  const { aligned, response } = window;
  const others = mentions.filter(({ first }) => !inOneSentence(stream, first, right.first));
  if (others.length === 0) return null;
  const saidBeside = ({ first }: QuantityMention) => aligned.reduce((sum, { term, hit }) => (response.terms[term]!.text !== "{quantity}" && inOneSentence(stream, hit.first, first) ? sum + response.terms[term]!.weight : sum), 0);
  const own = saidBeside(right);
  return others.find((other) => saidBeside(other) > own && !isDeniedItself(stream, other) && compareQuantity(other, expected) === "wrong" && !isOfSomethingElse(stream, window, other, expected)) ?? null;
}

/** Whether a number that is not the expected one is no wrong one either: "every four hours" says how often, not how long; one that is quite another size, or is called too many, tells something else. */
function isOfSomethingElse(stream: Stream, window: Window, mention: QuantityMention, expected: ExpectedQuantity): boolean {
  if (mention.perDay !== undefined && expected.unit !== "time-per-day" && !ASKS_INTERVAL.test(window.response.text)) return true;
  return isAnotherMatter(mention, expected) || isTooMany(stream, mention);
}

/** A number this near to a passage whose response names none still belongs to it: "hold that breath | while you count to a hundred". */
const BESIDE = 6;

/**
 * A number that is plainly not the element's, said with a response that names none: "chew a seventy five milligram
 * aspirin" is no "chew an aspirin" where the element wants three hundred. A number that the response itself has as words
 * is its own, and where the right number stands beside it another is spoken of as well.
 */
export function wrongNumberBeside(stream: Stream, window: Window, expected: ExpectedQuantity): QuantityMention | null {
  const { first, end } = around(stream, window, BESIDE);
  let wrong: QuantityMention | null = null;
  for (const mention of stream.quantities) {
    if (mention.first < first || mention.end > end || !mention.firm || isDeniedItself(stream, mention)) continue;
    const clause = stream.clauseOf[mention.first]!;
    if (clause !== stream.clauseOf[window.first] && clause !== stream.clauseOf[window.end - 1]) continue;
    const reading = compareQuantity(mention, expected);
    if (reading === "right") return null;
    if (reading !== "wrong" || isOfSomethingElse(stream, window, mention, expected)) continue;
    // Its unit may be a word of the response all the same ("full strength").
    if (window.aligned.some(({ hit }) => hit.first < mention.end - 1 && mention.first < hit.end)) continue;
    wrong ??= mention;
  }
  return wrong;
}

/** What people count without naming it: "dial it to twenty", "two in each eye". Of a length of time they name the unit. */
const COUNTED = new Set<ExpectedQuantity["unit"]>(["unit", "puff", "spray", "drop", "breath", "tablet", "capsule", "patch", "dose"]);
/** Behind a number that counts what is spoken of. Behind anything else it may count that. */
const GOES_ON_BEHIND = /^(in|into|up|on|each|every|at|to|a|per|twice|once|daily|and|then|for)$/;

/** What is said beside a bare number must weigh so much: "take three" says of what as little as "three". */
const BARE_TELLING = 0.25;
/** Of the response's words beside its number, those heavier than this share of the heaviest must be said. */
const BARE_SHARE = 0.5;

/** Whether a bare number stands for the element's: what else weighs in the response is told with it in so many words, and nothing else is counted. */
function isBareCount({ tokens, polarity, clauseOf }: Stream, { aligned, response }: Window, { first, end, unit, kind, bound }: QuantityMention, expected: ExpectedQuantity): boolean {
  if (unit !== null || kind !== "amount" || bound !== "exact" || !isCounted(expected) || polarity[first]!.hypothetical) return false;
  if (tokens[end - 1]!.after === "" && end < tokens.length && !GOES_ON_BEHIND.test(tokens[end]!.text)) return false;
  let heaviest = 0;
  for (const { plain, text, weight } of response.terms) if (!plain && text !== "{quantity}") heaviest = Math.max(heaviest, weight);
  let telling = 0;
  for (const { term, quality, hit } of aligned) {
    const { plain, text, weight } = response.terms[term]!;
    if (plain || text === "{quantity}" || quality < IN_SO_MANY_WORDS) continue;
    if (clauseOf[hit.first] !== clauseOf[first]) return false;
    telling += weight;
  }
  return telling >= BARE_TELLING && response.terms.every(({ plain, weight, text }, place) => plain || text === "{quantity}" || weight <= BARE_SHARE * heaviest || aligned.some(({ term, quality }) => term === place && quality >= IN_SO_MANY_WORDS));
}

/** Whether the element's number counts what people leave out, so that a bare number may be held against somebody. */
export const isCounted = ({ unit }: ExpectedQuantity): boolean => COUNTED.has(unit);

const IN_SO_MANY_WORDS = 0.9;

/** "Twenty units, not twelve": a number that is denied itself confirms nothing, and contradicts nothing. A bound is none ("not more than two"). */
function isDeniedItself({ tokens }: Stream, { first, bound }: QuantityMention): boolean {
  let before = first - 1;
  while (BETWEEN.test(tokens[before]?.text ?? "")) before -= 1;
  const word = tokens[before]?.text ?? "";
  return bound === "exact" && (word === "not" || (word === "of" && tokens[before - 1]?.text === "instead") || (word === "than" && tokens[before - 1]?.text === "rather"));
}

/** So soon behind a number it is called too many. */
const TOO_MANY_WITHIN = 8;

/** "Three up each nostril is too many" tells nobody to have three. */
function isTooMany(stream: Stream, { end }: QuantityMention): boolean {
  const { tokens, quantities } = stream;
  const to = sentenceUpTo(stream, end, TOO_MANY_WITHIN);
  for (let place = end; place < to; place += 1) {
    if (quantities.some(({ first }) => first === place)) return false;
    if (tokens[place]!.text === "too" && /^(many|much|few|little)$/.test(tokens[place + 1]?.text ?? "") && !stream.polarity[place]!.negated) return true;
  }
  return false;
}

const BETWEEN = /^(the|your|a|an|for|just|every|in|on|at|after|to)$/;

/** Share of the passage's aligned weight that is asked, not told. */
export function askedShare(stream: Stream, window: Window): { asked: number; open: number } {
  let asked = 0;
  let open = 0;
  for (const { hit } of window.aligned) {
    const act = stream.acts[hit.first]!;
    if (act !== "tell") asked += 1;
    if (act === "ask-open") open += 1;
  }
  return { asked: asked / window.aligned.length, open: open / window.aligned.length };
}
