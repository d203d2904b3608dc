import { ALLOWANCES } from "../language/allowance.ts";
import { HARMS, PERMITS } from "../language/polarity.ts";
import { speechPhrases } from "../language/speech-phrases.ts";
import type { QuantityMention } from "../language/quantity.ts";
import { isAside } from "./aside.ts";
import { isAlone } from "./company.ts";
import type { CompiledElement } from "./compile.ts";
import { isFaulted } from "./faulted.ts";
import type { Response } from "./response.ts";
import { askedShare, groupPossible, mustHolds, notWithHolds, readPolarity, readQuantity, wrongNumberBeside } from "./gates.ts";
import { goesAnotherWay } from "./direction.ts";
import { DISPENSED_ACCEPTED, isDispensedWith } from "./dispensed.ts";
import { mistakesTheUse } from "./each-use.ts";
import { heldPassages, standsAlone, withReason } from "./held-passages.ts";
import { onlyInOneCase, onlyMayHappen, tellsAnothersRule, tellsNoRule } from "./rule.ts";
import { bestOf, oneVoice } from "./one-voice.ts";
import { toldOfAnotherAge, toldOfOthers } from "./others.ts";
import type { Postings } from "./postings.ts";
import { isPlayedDown } from "./red-flag.ts";
import { clausesAround, inOneSentence, sentenceUpTo, type Stream } from "./stream.ts";
import type { Gate, Verdict } from "./types.ts";
import type { TermIndex } from "./term-index.ts";
import { bestWindows, lacksDirection, tokensOf, windowsFor, type Window } from "./windows.ts";
import { groupsBut } from "./word-group.ts";

/** A passage weighed for one element: what it would be, and what speaks against it. */
export interface Passage {
  element: CompiledElement;
  window: Window;
  first: number;
  end: number;
  /** The window's coverage, lifted by what other responses of the element add. Same name as a window's, to rank both alike. */
  coverage: number;
  verdict: Verdict;
  closed: Gate[];
  quantity?: QuantityMention;
  reason?: string;
  /** Said wrongly, and taken back at once ("no, that's not right"). */
  takenBack?: boolean;
  /** Its bare number is wrong here and right of another element. */
  ofAnother?: boolean;
  /** How likely it says the element, or states it wrongly where that is its verdict, seen beside all other passages of the station (likelihood.ts, held-likelihood.ts). */
  likelihood?: number;
}

/** Below this a passage is not worth a look. */
export const LEAST_COVERAGE = 0.34;
/**
 * From here on a passage says the element; with must-words, which the author of the rubric chose and which are there,
 * less will do. Set on the tuning side: the labelled passages would take a little less, whole rehearsals a little more.
 */
export const ACCEPTED = 0.6;
const ACCEPTED_WITH_MUST = 0.54;

function acceptedFor(element: CompiledElement): number {
  return element.must.length > 0 ? ACCEPTED_WITH_MUST : ACCEPTED;
}
/** A wrong statement must fit better than a right one before it is held against anybody. */
export const WRONG_ACCEPTED = 0.76;

/** The coverage from which a passage counts for its element. */
export function neededFor({ element, verdict }: Pick<Passage, "element" | "verdict">): number {
  return verdict === "right" ? acceptedFor(element) : WRONG_ACCEPTED;
}

/** Whether the passage fits well enough and no gate closes on it. */
export function isOpen(passage: Passage): boolean {
  return passage.closed.length === 0 && passage.coverage >= neededFor(passage);
}

/** How much the words of the element's other responses can lift a passage. */
const UNION_SHARE = 0.3;
/** Share of the passage that is asked from which it no longer tells. */
export const MOSTLY_ASKED = 0.5;
/** So near to the end of the speaker's turn an elliptic question ("any allergies") waits for its answer. */
const TURN_END = 6;

const REFUSALS = speechPhrases("refusals");
const COMPREHENSION = speechPhrases("comprehension_checks");
const TEACH_BACK = speechPhrases("teach_back_requests");

/**
 * Every passage of a stream that may carry the element, with its verdict and the gates that close on it.
 * @param speaker the patient's words are weighed for content only: they do not have to tell or ask.
 */
export function passagesFor(element: CompiledElement, postings: Postings, stream: Stream, speaker: "candidate" | "patient"): Passage[] {
  const saying = sayingPassages(element, postings, stream, speaker);
  return oneVoice(bestOf([...saying, ...heldPassages(element, saying, postings, stream, speaker, WRONG_ACCEPTED).filter(standsAlone)]), stream).map((passage) => (passage.verdict === "wrong" ? withReason(passage, stream) : passage));
}

/** Passages that would say the element, whatever closes on them, and those that are right elsewhere. Several may share their words. */
export function sayingPassages(element: CompiledElement, postings: Postings, stream: Stream, speaker: "candidate" | "patient"): Passage[] {
  const passages: Passage[] = [];
  // A must-word that nobody said closes every passage; only something unheard could still be it.
  const unsaid = stream.hasDoubt ? 0 : element.must.reduce((bits, group, place) => (groupPossible(group, postings) ? bits : bits | (1 << place)), 0);
  const possible = (response: Response) => (unsaid & ~(response.without | response.byNumber)) === 0;
  for (const window of bestWindows(element.say.filter(possible), postings, stream, LEAST_COVERAGE, endsOf(element))) passages.push(weigh(passageOf(element, window, postings), postings, stream, speaker));
  for (const other of element.elsewhere) {
    for (const response of other.responses) {
      for (const window of windowsFor(response, postings, stream, WRONG_ACCEPTED)) {
        const quantity = other.quantity === null ? null : readQuantity(stream, window, other.quantity);
        if (quantity !== null && (quantity.reading !== "right" || isRightHere(element, window, stream))) continue;
        const closed = contentGates(element, window, postings, stream, other.quantity === null ? [] : element.must);
        if (closed.length > 0 || readPolarity(stream, window, element.vocabulary) !== "agrees") continue;
        passages.push({ ...passageOf(element, window, postings), verdict: "elsewhere", closed: [], reason: other.note, ...(quantity !== null && { quantity: quantity.mention }) });
      }
    }
  }
  return passages;
}

/** A number that is right here is none of elsewhere, though it is right there too: of "15 to 30 minutes" the thirty. */
const isRightHere = ({ quantity }: CompiledElement, window: Window, stream: Stream) => quantity !== null && readQuantity(stream, window, quantity).reading === "right";

/** One question asks one thing: "any allergies? And which other medicines" must not hide "any allergies?", which fits a little less. */
const endsOf = ({ kind }: CompiledElement) => (kind === "ask" || kind === "ask-openly" ? "in-the-sentence" : "anywhere");

export function passageOf(element: CompiledElement, window: Window, postings: Postings): Omit<Passage, "verdict" | "closed"> {
  return { element, window, first: window.first, end: window.end, coverage: withUnion(element, window, postings) };
}

/** Near words lift nothing. */
const LIFTING_QUALITY = 0.9;

/** A term of any of the element's responses that a key carries. */
interface Lifting {
  text: string;
  /** Weight times quality. */
  worth: number;
}

/** By key the distinct terms of an element's responses, gathered once: an element is asked for them at every passage of every station. */
const liftingTerms = new WeakMap<CompiledElement, Map<number, Lifting[]>>();

function liftingTermsOf(element: CompiledElement, index: TermIndex): Map<number, Lifting[]> {
  let known = liftingTerms.get(element);
  if (known !== undefined) return known;
  known = new Map();
  const texts = new Set<string>();
  for (const { terms } of element.say) {
    for (const { plain, text, keys, weight } of terms) {
      if (plain || texts.has(text)) continue;
      texts.add(text);
      for (const { key, quality } of keys) {
        if (quality < LIFTING_QUALITY) continue;
        const lifting = { text, worth: weight * quality };
        const place = index.keyAt(key);
        const others = known.get(place);
        if (others === undefined) known.set(place, [lifting]);
        else others.push(lifting);
      }
    }
  }
  liftingTerms.set(element, known);
  return known;
}

const NOTHING: readonly Lifting[] = [];

/** A passage that mixes the words of several responses says more than the one it fits best. */
function withUnion(element: CompiledElement, window: Window, postings: Postings): number {
  if (window.coverage >= 1) return window.coverage;
  const lifting = liftingTermsOf(element, postings.terms.index);
  const terms = window.aligned.map(({ term }) => window.response.terms[term]!.text);
  const places = window.aligned.map(({ hit }) => hit.first);
  let extra = 0;
  for (let place = window.first; place < window.end; place += 1) {
    if (places.includes(place)) continue;
    // One word lifts by what it is worth most for.
    let best: string | undefined;
    let worth = 0;
    postings.terms.eachAt(place, (key, hit) => {
      if (hit.end > window.end) return;
      for (const one of lifting.get(key) ?? NOTHING) {
        if (one.worth * hit.quality <= worth || terms.includes(one.text)) continue;
        best = one.text;
        worth = one.worth * hit.quality;
      }
    });
    if (best === undefined) continue;
    terms.push(best);
    extra += worth;
  }
  const union = Math.min(1, window.coverage + extra / window.response.weight);
  return Math.max(window.coverage, (1 - UNION_SHARE) * window.coverage + UNION_SHARE * union);
}

function contentGates(element: CompiledElement, window: Window, postings: Postings, stream: Stream, must = element.must): Gate[] {
  const closed: Gate[] = [];
  const { response } = window;
  const without = response.without | (response.byNumber !== 0 && saysNumber(window) ? response.byNumber : 0);
  if (!mustHolds(groupsBut(must, without), postings, stream, window)) closed.push("must");
  if (!notWithHolds(element.notWith, postings, stream, window, "instruction")) closed.push("not-with");
  return closed;
}

const saysNumber = ({ aligned, response }: Window) => aligned.some(({ term }) => response.terms[term]!.text === "{quantity}");

function weigh(fit: Omit<Passage, "verdict" | "closed">, postings: Postings, stream: Stream, speaker: "candidate" | "patient"): Passage {
  const { element, window } = fit;
  const passage: Passage = { ...fit, verdict: "right", closed: contentGates(element, window, postings, stream) };
  if (speaker === "candidate" && !actFits(element, window, stream)) passage.closed.push("speech-act");
  if (element.kind === "tell" && (goesAnotherWay(stream, window) || mistakesTheUse(window, stream, element))) passage.closed.push("direction");
  if (element.kind === "tell" && (tellsNoRule(window) || tellsAnothersRule(window, stream) || (element.redFlag ? onlyInOneCase(window, stream) : onlyMayHappen(window, stream)))) passage.closed.push("rule");
  // Other numbers hold for them; "not for children" may be what is to be told.
  if (element.quantity !== null && toldOfAnotherAge(window, stream, element.age)) passage.closed.push("others");
  if (element.kind === "tell" && speaker === "candidate") {
    if (isAside(window, stream)) passage.closed.push("aside");
    if (!element.redFlag && isFaulted(window, stream, element)) passage.closed.push("faulted");
  }
  const asksForNumber = window.response.terms.some(({ text }) => text === "{quantity}");
  if (element.quantity !== null && asksForNumber) {
    const quantity = readQuantity(stream, window, element.quantity);
    if (quantity.reading === "none") passage.closed.push("quantity");
    else passage.quantity = quantity.mention;
    if (quantity.reading === "wrong") passage.closed.push("quantity");
    if (quantity.reading === "misheard") {
      passage.verdict = "unclear";
      passage.reason = `'${quantity.mention.text}' may be mis-heard`;
      passage.closed.push("sound-alike");
    }
  }
  if (element.quantity !== null && !asksForNumber) {
    const wrong = wrongNumberBeside(stream, window, element.quantity);
    if (wrong !== null) passage.quantity = wrong;
    if (wrong !== null || (lacksNumber(window) && readQuantity(stream, window, element.quantity).reading !== "right")) passage.closed.push("quantity");
  }
  // A question is asked, whatever it denies ("pretend I'm not here and show me").
  const polarity = element.kind === "tell" ? readPolarity(stream, window, element.vocabulary) : "agrees";
  if (polarity === "agrees") return element.redFlag && isPlayedDown(window, stream) ? { ...passage, closed: [...passage.closed, "played-down"] } : passage;
  // In whole stations a denial beside what fits is mostly of something else: of twenty opposites told in annotated talk two
  // were said. So there a person listens; a sentence by itself says what it says.
  const dispensed = passage.coverage >= DISPENSED_ACCEPTED && isDispensedWith(window, stream);
  const held = element.kind === "tell" && passage.closed.length === 0 && passage.verdict === "right" && (dispensed || (polarity === "opposes" && passage.coverage >= WRONG_ACCEPTED));
  if (!held || overSentenceEnd(window, stream) || (!dispensed && lacksDirection(window)) || toldOfOthers(window, stream) || !outright(window, stream)) {
    passage.closed.push("polarity");
    return passage;
  }
  if (doubted(window, stream)) return { ...passage, verdict: "unclear", closed: ["sound-alike"], reason: "the denial rests on a doubtful word" };
  if (!dispensed && !isAlone(window, stream)) return { ...passage, verdict: "unclear", closed: ["sound-alike"], reason: "the opposite may have been said: what is denied here must be heard" };
  return { ...passage, verdict: "wrong", reason: window.response.terms.some(({ negated }) => negated) ? ALLOWED : RULED_OUT };
}

/** Numbers that a response has as words, where it does not leave them to the rubric ("{quantity}"). "One" and "once" mostly say something else. */
const NUMBER_WORD = /^(two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|couple|pair|brace|twice|both)$/;

/** Of an element with a number, a response that says it in words ("a pair of squirts each side") is not said without it. */
function lacksNumber({ response, aligned }: Window): boolean {
  return response.terms.some(({ text }, place) => text.split("|").every((word) => NUMBER_WORD.test(word)) && !aligned.some(({ term }) => term === place));
}

/** Said of a wrong statement on the sheet: what was wrong with it. */
const ALLOWED = "the opposite was said: that it may be done, or is so";
const RULED_OUT = "the opposite was said: not to do it, or that it is not so";

export function spoken(window: Window, stream: Stream): Set<string> {
  return new Set(stream.tokens.slice(window.first, window.end).map((token) => token.text.toLowerCase()));
}

/** So soon behind it the harm is named. */
const HARM_REACH = 8;

/** What the response denies counts as allowed only in so many words, and not where the harm is named. */
function outright(window: Window, stream: Stream): boolean {
  const deniedByRubric = window.response.terms.some(({ negated, weight }) => negated && weight > 0);
  if (!deniedByRubric) return true;
  const clause = stream.clauses[stream.clauseOf[window.first]!]!;
  const end = Math.max(clause.end, window.end);
  const permits = stream.tokens.slice(clause.first, end).some(({ text }) => PERMITS.has(text)) || ALLOWANCES.find(stream.tokens, clause.first, end).length > 0;
  return permits && HARMS.find(stream.tokens, clause.first, Math.min(stream.tokens.length, Math.max(end, window.end + HARM_REACH))).length === 0;
}

function doubted(window: Window, stream: Stream): boolean {
  const clause = stream.clauses[stream.clauseOf[window.first]!]!;
  for (let place = clause.first; place < window.end; place += 1) {
    if (stream.doubtful.has(place) && /^(not|no|never|can|do|without)$/.test(stream.tokens[place]!.text)) return true;
  }
  return false;
}

/** Whether the passage does what the item asks of it: tells, asks, asks openly, or asks for a teach-back. */
function actFits(element: CompiledElement, window: Window, stream: Stream): boolean {
  const { asked, open } = askedShare(stream, window);
  if ((element.kind === "ask" || element.kind === "ask-openly") && overSentenceEnd(window, stream)) return false;
  if (element.kind !== "tell" && (refuses(window, stream) || (asked === 0 && toldOfOthers({ first: window.first, end: window.first }, stream)))) return false;
  // "Do you understand all that?" asks nothing of what was known before.
  if ((element.kind === "ask" || element.kind === "ask-openly") && checksUnderstanding(window, stream)) return false;
  switch (element.kind) {
    case "tell":
      return asked <= MOSTLY_ASKED || window.response.asks !== "no";
    case "ask":
      return asked > 0 || awaitsAnswer(window, stream);
    case "ask-openly":
      return open > 0 || (window.response.asks === "open" && window.coverage >= WRONG_ACCEPTED);
    case "teach-back":
      return COMPREHENSION.find(stream.tokens, window.first, window.end).length === 0 && requestsBack(window, stream);
    default:
      return true;
  }
}

/** Whether the clauses of the passage ask whether it was understood, and the passage has words of that. */
function checksUnderstanding(window: Window, stream: Stream): boolean {
  const { first, end } = clausesAround(stream, window);
  // "Is that okay?" and "any questions?" may be what the item asks for, and "what do you understand about it?".
  const asksWhether = (hit: { first: number; end: number }) => !/^(what|much)$/.test(stream.tokens[hit.first - 1]?.text ?? "") && stream.tokens.slice(hit.first, hit.end).some(({ text }) => /^(understand|sense|clear|follow)$/.test(text));
  return COMPREHENSION.find(stream.tokens, first, end).some((hit) => asksWhether(hit) && hit.first < window.end && window.first < hit.end);
}

/** So soon behind what is asked it may be said that it is not asked: "your address and so on, I'll not go into". */
const REFUSED_BEHIND = 12;

/** "I won't ask about allergies", "no need to give me your address", "your name's enough for me, I don't need your birthday": named, and not asked. */
function refuses(window: Window, stream: Stream): boolean {
  const { first } = clausesAround(stream, window);
  const hits = REFUSALS.find(stream.tokens, first, sentenceUpTo(stream, window.end, REFUSED_BEHIND));
  if (hits.length === 0) return false;
  const carrying = tokensOf(window);
  return hits.some((hit) => !allOf(hit, carrying));
}

/** What the response itself says refuses nothing. */
function allOf({ first, end }: { first: number; end: number }, carrying: ReadonlySet<number>): boolean {
  for (let place = first; place < end; place += 1) if (!carrying.has(place)) return false;
  return true;
}

/** Words gathered from two sentences are held against nobody, and ask nothing. */
export function overSentenceEnd(window: Window, stream: Stream): boolean {
  return !inOneSentence(stream, window.first, window.end - 1);
}

/** The request may follow what leads up to it: "imagine it's tonight and you've gone wheezy, what are you going to do?" */
const REQUEST_REACH = 14;

/** "Show me", "in your own words": said in the clauses of the passage or soon after. */
function requestsBack(window: Window, stream: Stream): boolean {
  const { first: from, end } = clausesAround(stream, window);
  const to = Math.min(stream.tokens.length, end + REQUEST_REACH);
  return TEACH_BACK.find(stream.tokens, from, to).some((hit) => isAskedBack(stream, from, hit));
}

/** "Show your family how you'd use it" and "let's talk it through" ask for nothing back; "I'll get you to show me" does. */
function isAskedBack({ tokens }: Stream, from: number, { first, end }: { first: number; end: number }): boolean {
  const texts = tokens.slice(from, end).map(({ text }) => text);
  const said = texts.join(" ");
  return !SHOWN_TO_OTHERS.test(said) && (!OFFERS.test(said) || texts.slice(first - from).some((text) => /^(me|us|you|your)$/.test(text)));
}

const SHOWN_TO_OTHERS = /\b(show|tell|teach|explain to) (your|his|her|their|him|them|the|everybody|everyone|anybody|somebody) (?!(what|how|hand|pen|patch)\b)/;
const OFFERS = /\b(let us|we will|we can|i will|i am going to|shall i|shall we)\b/;

/** Open a statement; a response that opens so itself ("I just need to check your name") asks all the same. */
const STATES = new Set(["i", "we", "let", "it", "if", "there", "today", "since"]);

/** A sentence so short that it leaves out its verb. */
const FRAGMENT = 6;
const VERBS = /^(am|is|are|was|were|be|been|has|have|had|do|does|did|will|would|can|could|should|must|may|might)$/;

function isLastFragment(stream: Stream, last: number): boolean {
  const turn = stream.turnOf[last];
  if (stream.turnOf[last + 1] === turn) return false;
  let first = last;
  while (first > 0 && stream.turnOf[first - 1] === turn && inOneSentence(stream, first - 1, last)) first -= 1;
  return last - first < FRAGMENT && !stream.tokens.slice(first, last + 1).some(({ text }) => VERBS.test(text));
}

function awaitsAnswer(window: Window, stream: Stream): boolean {
  const opening = stream.tokens[clausesAround(stream, window).first]!.text;
  if (STATES.has(opening) && !new RegExp(`^\\(?${opening}\\b`).test(window.response.text)) return false;
  // A full stop says that it is a statement, unless it is a last word without a verb ("And date of birth.") that the
  // other answers; speech without punctuation leaves that open.
  for (let k = window.first; k < stream.tokens.length && stream.turnOf[k] === stream.turnOf[window.first]; k += 1) {
    if (k >= window.end - 1 && /[.!]/.test(stream.tokens[k]!.after)) return isLastFragment(stream, k);
    if (k >= window.end - 1 && stream.tokens[k]!.after === "?") break;
  }
  const place = Math.min(stream.tokens.length, window.end - 1 + TURN_END);
  return window.response.asks !== "no" || place >= stream.tokens.length || stream.turnOf[place] !== stream.turnOf[window.end - 1];
}
