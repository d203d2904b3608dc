import { wordWeight } from "../language/lexicon.ts";
import { DISPENSES } from "../language/dispenses.ts";
import { HARMS, LETS_BE, UNTROUBLED } from "../language/polarity.ts";
import { around, MARGIN } from "./must-words.ts";
import { remembered } from "./remembered.ts";
import { denies, type Response } from "./response.ts";
import { clausesAround, inOneSentence, sentenceUpTo, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

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
  if (onlySupposes(window) || saysHalfARefusal(window) || makesACondition(stream, window)) return "apart";
  // "Never more than two, even in an attack": whether the denial reaches over the "even" is how the sentence was cut.
  const denying = told.filter(({ term }) => !window.response.terms[term]!.conceded);
  const weighty = denying.length > 0 ? denying : told.length > 0 ? told : window.aligned;
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
    // "Nothing under four": the denial belongs to the bound.
    if (text === "{quantity}" && spoken.negated && !negated && boundsNumber(stream, hit.first)) same += weight;
    else if (spoken.negated === negated || (eitherWay && spoken.eitherWay)) same += weight;
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

/** Whether the denial before a number makes it a bound: "nothing under four", "not over seven". */
function boundsNumber({ tokens, quantities }: Stream, first: number): boolean {
  return /^(not|nothing|never|no)$/.test(tokens[first - 1]?.text ?? "") && quantities.some((mention) => mention.first === first && mention.bound !== "exact");
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
  for (let place = first; place < end; place += 1) {
    if (!stream.polarity[place]!.negated) continue;
    const denied = deniedUpTo(stream, place);
    if (place < window.end || !deniesAnother(stream, place, denied)) return false;
    place = denied - 1;
  }
  return !warns(stream, window);
}

/** Behind the last token of what is denied from here on. */
function deniedUpTo({ polarity }: Stream, from: number): number {
  let end = from;
  while (polarity[end]?.negated === true) end += 1;
  return end;
}

/** Without punctuation: "dry it with a towel don't leave it to drip" denies what is told next, "a towel don't use it" what was named. */
function deniesAnother({ tokens }: Stream, first: number, end: number): boolean {
  return tokens.slice(first, end).some(({ stem }) => wordWeight(stem) >= 1);
}

/** So much of its weight a response must tell, beside what it supposes, for that to be missed. */
const TOLD_SHARE = 0.3;

/** Whether of a response that denies something only what it supposes is said: "when you're feeling fine", of "don't drop it when you're feeling fine". */
function onlySupposes({ response, aligned }: Window): boolean {
  if (!response.terms.some(({ supposed }) => supposed) || aligned.some(({ term }) => !response.terms[term]!.supposed)) return false;
  const denied = response.terms.reduce((sum, { supposed, negated, weight }) => sum + (supposed || !negated ? 0 : weight), 0);
  return denied >= TOLD_SHARE * response.weight;
}

const CONCEDES = /\beven (if|when|with|though)\b/;
const concedes = remembered(({ text }: Response) => CONCEDES.test(text));
/** So near before the passage its condition opens. */
const CONDITION_WITHIN = 6;
const CONDITION = /\b(as long as|so long as|provided|providing|only if|only with|only when)\b/;

/** "As long as she puts her own needle on" allows what "not even if she puts her own needle on" forbids. */
function makesACondition({ tokens }: Stream, { response, first, end }: Window): boolean {
  if (!concedes(response)) return false;
  const said = tokens.slice(Math.max(0, first - CONDITION_WITHIN), end).map(({ text }) => text).join(" ");
  return CONDITION.test(said) && !/\beven\b/.test(said);
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
  if (denies(window.response)) return false;
  let behind = window.end;
  while (behind < tokens.length && polarity[behind]!.hypothetical && inOneSentence(stream, behind, window.end - 1)) behind += 1;
  const said = tokens.slice(behind, sentenceUpTo(stream, behind, NEEDLESS_WITHIN)).map(({ text }) => text);
  return NEEDLESS.test(said.join(" "));
}

/** What is not to be done, or does not happen, stands straight behind one of these. */
const DENIES_A_DOING = /(^| )(do not|does not|will not|would not|must not|should not|need not|not to|not need to|not have to|rather than|sooner than|instead of|.* never)$/;
/** Moves to what is denied with it: "don't go to hospital". */
const GOES_THERE = /^(?:go|come|get)$/;

/** Where the doing that a place belongs to begins: at the "go" of "go to the hospital", else at the place itself. */
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
  const { first, end } = clausesAround(stream, window);
  if (hasItMinded(stream, first, end)) return true;
  if (denies(window.response)) return deniesAgain(stream, window);
  let needless: ReadonlySet<number> | undefined;
  for (let place = first; place < Math.min(end, window.end + DENIED_BEHIND); place += 1) {
    // "If the second go hasn't worked drive yourself in": in which case is no denial of what is told.
    if (place < window.first && stream.polarity[place]!.hypothetical && !stream.polarity[window.first]!.hypothetical) continue;
    // Looked for where something is denied: beside most statements nothing is.
    if (stream.polarity[place]!.negated && !stream.withdrawn.has(place) && !(needless ??= needlessBeside(stream, window, first, end)).has(place)) return true;
    // "Not just the first time": that it is no more is what is denied.
    if (stream.tokens[place]!.text === "not" && MERELY.test(stream.tokens[place + 1]?.text ?? "")) return true;
  }
  return false;
}

/** Behind a denial: that it is no more than that is what is denied. */
const MERELY = /^(just|only|simply|merely)$/;

/** Between a denial and the verb it denies. */
const BEFORE_LETTING_BE = /^(just|simply|ever|be|to|try)$/;

/** "Never ignore a funny reading": for the clause's polarity the two cancel, and a statement that tells to ignore it would have all its words. */
function hasItMinded({ tokens }: Stream, first: number, end: number): boolean {
  return LETS_BE.find(tokens, first, end).some((verb) => {
    let before = verb.first - 1;
    while (before > first && BEFORE_LETTING_BE.test(tokens[before]!.text)) before -= 1;
    return before >= first && A_DENIAL.test(tokens[before]!.text);
  });
}

/**
 * Places that are denied as needless or as harmless beside the passage: "ten times a day is fine, no need to let anybody
 * know", "I drop mine over the lenses, never had any bother" take nothing back. What the passage itself says must not be
 * among it.
 */
function needlessBeside({ tokens, polarity }: Stream, { aligned }: Window, first: number, end: number): ReadonlySet<number> {
  const needless = new Set<number>();
  for (const phrase of [...DISPENSES.find(tokens, first, end), ...UNTROUBLED.find(tokens, first, end)]) {
    let behind = phrase.end;
    while (behind < end && polarity[behind]!.negated) behind += 1;
    if (aligned.some(({ hit }) => hit.first >= phrase.first && hit.first < behind)) continue;
    for (let place = phrase.first; place < behind; place += 1) needless.add(place);
  }
  return needless;
}

const A_DENIAL = /^(not|never|no|nor|without|cannot|\w+n't)$/;

/** A place of a response with its alternatives. */
const PLACES = /(?:\([^()]*\)|[^\s()])+/g;
const placesOf = (text: string): string[][] => (text.match(PLACES) ?? []).map((place) => place.split("|"));
const hasDenial = (alternative: string): boolean => alternative.split(/[()\s]+/).some((word) => A_DENIAL.test(word));

/** A response with its one denial may be about all of its words ("not holding add another one"); two denials deny two things. */
const hasTwoDenials = remembered(({ text }: Response) => placesOf(text).filter((alternatives) => alternatives.some(hasDenial)).length > 1);

/**
 * "If it's not holding the pain don't stick a second one on": the response too denies that it holds, and is held for the
 * second one, which is denied here once more.
 */
function deniesAgain(stream: Stream, window: Window): boolean {
  const { tokens, polarity } = stream;
  const { aligned, response } = window;
  if (deniesWhatIsTold(stream, window)) return true;
  const denied = aligned.filter(({ term, hit }) => response.terms[term]!.negated && polarity[hit.first]!.negated).map(({ hit }) => hit.first);
  const supposed = denied.filter((place) => polarity[place]!.hypothetical);
  // "Don't ring here, we can't help" tells both, and denies nothing of what is held against it.
  if (supposed.length === 0 || supposed.length === denied.length || hasTwoDenials(response)) return false;
  const from = Math.min(...supposed);
  const told = denied.find((place) => place > from && !polarity[place]!.hypothetical);
  return told !== undefined && tokens.slice(from, told).some(({ text }, behind) => A_DENIAL.test(text) && !polarity[from + behind]!.hypothetical);
}

/** Whether the response has two denials whichever of its alternatives is said: in "(can't wee) drink|(don't worry)" there is one. */
const deniesTwice = remembered(({ text }: Response) => placesOf(text).filter((alternatives) => alternatives.every(hasDenial)).length > 1);

/** A word this heavy, beside the heaviest of its response, is what is told. */
const TOLD_WEIGHT = 0.3;
/** "You can't" tells what somebody is unable to do as well. */
const FORBIDS = /^(do|should|must)$/;
/** So near before a word its own denial stands: "don't ever wait". */
const OWN_DENIAL = 2;

/**
 * "If you can't wee don't wait" denies what the statement "if you can't wee, wait" tells, and so does "don't just run the
 * tap and wait": the statement denies too, but of the case alone, and here what is told behind the case is denied.
 */
function deniesWhatIsTold({ tokens, polarity }: Stream, { aligned, response, first }: Window): boolean {
  if (deniesTwice(response)) return false;
  const { terms } = response;
  const ofTheCase = aligned.filter(({ term, hit }) => terms[term]!.negated && polarity[hit.end - 1]!.negated);
  const from = ofTheCase.length === 0 ? first - 1 : Math.min(...ofTheCase.map(({ hit }) => hit.first));
  const heavy = TOLD_WEIGHT * Math.max(...terms.map(({ weight }) => weight));
  const forbids = (place: number) => tokens[place]!.text === "never" || (tokens[place]!.text === "not" && FORBIDS.test(tokens[place - 1]?.text ?? ""));
  return aligned.some(({ term, hit }) => {
    const { weight, plain, negated } = terms[term]!;
    if (plain || weight < heavy || hit.first <= from) return false;
    for (let place = hit.first - 1; place > from; place -= 1) {
      if (!forbids(place)) continue;
      const merely = MERELY.test(tokens[place + 1]!.text);
      // What the statement's own denial has run on to is denied once more only by one straight before it.
      if (merely ? !negated : polarity[hit.end - 1]!.negated && (!negated || hit.first - place <= OWN_DENIAL)) return true;
    }
    return false;
  });
}

/** What is denied later than so many words behind the passage is something else: "slowly, because you don't want to cough". */
const DENIED_BEHIND = 3;
