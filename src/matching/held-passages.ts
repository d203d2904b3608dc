import { DEATHS, HARMS, NEARLY } from "../language/appraisals.ts";
import { opensTelling } from "../language/main-clause.ts";
import { askedShare, MOSTLY_ASKED } from "./act-gate.ts";
import type { CompiledElement } from "./compile.ts";
import { deniesBeside } from "./denied-beside.ts";
import { notWithHolds } from "./must-words.ts";
import { toldOfOthers } from "./others.ts";
import { overSentenceEnd, passageOf, spoken, WRONG_ACCEPTED, type Passage } from "./passages.ts";
import { plainWording } from "./plain-wording.ts";
import { readPolarity } from "./polarity-gate.ts";
import type { Postings } from "./postings.ts";
import { isCounted } from "./quantity-gate.ts";
import { remembered } from "./remembered.ts";
import { denies } from "./response.ts";
import { inOneSentence, sentenceUpTo, type Stream } from "./stream.ts";
import { takenBackBehind, topicOf } from "./taken-back.ts";
import type { Gate } from "./types.ts";
import { lacksDirection, saysAll, saysChosen, tokensOf, windowsFor, type Window } from "./windows.ts";
import { groupsBut } from "./word-group.ts";

/** A wrong statement of which less is said is not worth a look, whatever is spoken of around it. */
export const HELD_LEAST = 0.5;

/**
 * Passages that may be held against the speaker: a number other than the element's, or one of its wrong statements.
 * @param saying those of the element that would say it.
 * @param least coverage of a wrong statement.
 */
export function heldPassages(element: CompiledElement, saying: readonly Passage[], postings: Postings, stream: Stream, speaker: "candidate" | "patient", least: number): Passage[] {
  const held = saying.flatMap((passage) => wrongNumber(passage, stream) ?? playedDown(passage, stream) ?? []);
  for (const response of element.incorrect) {
    for (const window of windowsFor(response, postings, stream, least)) {
      const passage = weighIncorrect(passageOf(element, window, postings), postings, stream, speaker);
      if (passage !== null) held.push(passage);
    }
  }
  return held;
}

/** A stretch without a sentence end that is longer than this has lost its punctuation. */
const LONGEST_SENTENCE = 40;

/**
 * Whether something else begins inside the window, between words that the statement takes: "this props them open you have
 * the one with your breakfast" opens nothing over a breakfast. Speech without punctuation has no other sentence ends.
 */
export function runsOn(window: Window, stream: Stream): boolean {
  const { tokens } = stream;
  const from = Math.max(0, window.first - LONGEST_SENTENCE / 2);
  const to = Math.min(tokens.length - 1, window.end + LONGEST_SENTENCE / 2);
  if (to - from < LONGEST_SENTENCE || !inOneSentence(stream, from, to)) return false;
  const carrying = tokensOf(window);
  for (let place = window.first + 1; place < window.end; place += 1) {
    if (!carrying.has(place) && !carrying.has(place + 1) && opensTelling(tokens, place)) return true;
  }
  return false;
}

/** Deny a thing by putting another in its place; so do none of the plain denials. */
const INSTEAD = /\b(instead|rather|without)\b/;
const DENIES_PLAINLY = /\b(not|never|no|nothing|\w+n't|nor|avoid)\b/;
/** So near to the window its "instead" stands. */
const INSTEAD_WITHIN = 3;

/** "It doesn't replace your preventer" denies the preventer as "instead of your preventer" does, and says the opposite. */
function putsInstead({ response, first, end }: Window, stream: Stream): boolean {
  if (!denies(response) || !INSTEAD.test(response.text) || DENIES_PLAINLY.test(response.text)) return true;
  return stream.tokens.slice(Math.max(0, first - INSTEAD_WITHIN), end + INSTEAD_WITHIN).some(({ text }) => INSTEAD.test(text));
}

/** Words of a response that are a number, or part of one. */
const NUMBER_WORD = /^(half|quarter|one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|double)$/;

/** Before "a second" that is a moment, and no second one. */
const LASTS = /^(for|in|within|after|about|just|only)$/;
const A_MOMENT = /\ba second\b/;

/** "Hold it for a second" names no second one, and "wait half an hour and do the second puff" is no "half a puff will do": the word is part of another number. */
function ofAnotherNumber({ response: { terms, text }, aligned }: Window, { quantities, tokens }: Stream): boolean {
  const saysNumberOf = (first: number) => aligned.some(({ hit }) => hit.first === first);
  return aligned.some(({ term, hit }) => {
    // "For one second" names no next one either.
    if (tokens[hit.end - 1]!.text === "second" && !terms[term]!.text.includes("second") && quantities.some(({ end, unit }) => end === hit.end && unit === "second")) return true;
    if (tokens[hit.first]!.text === "second" && tokens[hit.first - 1]?.text === "a" && LASTS.test(tokens[hit.first - 2]?.text ?? "") && !A_MOMENT.test(text) && quantities.some(({ end, unit }) => end === hit.end && unit === "second")) return true;
    if (RATE.test(text) && quantities.some((mention) => mention.end === hit.end && mention.first < hit.first && mention.low > 1 && !RATE.test(mention.text) && !saysNumberOf(mention.first))) return true;
    if (!terms[term]!.text.split("|").some((word) => NUMBER_WORD.test(word))) return false;
    const mention = quantities.find(({ first, end }) => first <= hit.first && hit.first < end);
    return mention !== undefined && TIME.test(mention.text) && !TIME.test(text);
  });
}

/** How often: "they last twelve months" is no "once a month"; "two drops each time" has its two. */
const RATE = /\b(once|every|each|per)\b/;

const TIME = /\b(seconds?|minutes?|hours?|days?|nights?|weeks?|fortnight|months?|years?|hourly|daily|weekly|monthly|tonight|morning|evening)\b/;

/** Whether the window is one statement of the speaker's own. */
export function isOwnStatement(window: Window, stream: Stream): boolean {
  return !ofAnotherNumber(window, stream) && putsInstead(window, stream) && !overSentenceEnd(window, stream) && !overAnothersTurn(window, stream) && !runsOn(window, stream) && !isPast(window, stream) && !toldOfOthers(window, stream) && !answeredWithNo(window, stream) && !saidToKill(window, stream) && !notYetSo(window, stream);
}

/** So soon behind it. */
const DEATH_WITHIN = 8;

/** "Who takes it each day, it can kill": told to warn, unless the statement itself speaks of death. */
function saidToKill({ end, aligned }: Window, stream: Stream): boolean {
  const to = sentenceUpTo(stream, end, DEATH_WITHIN);
  return DEATHS.find(stream.tokens, end, to).some(({ first }) => !stream.polarity[first]!.negated && !aligned.some(({ hit }) => hit.first === first));
}

/** So many words may stand between "nearly" and the state that it is of ("before it's quite empty"). */
const STATE_WITHIN = 2;
/** "Almost always" is still how it is, "almost every time" still each. */
const STILL_SO = /^(always|never|every|everyone|everybody|all|nobody|no|certainly|daily|weekly)$/;

/** "Order another one when it's nearly empty" is no "order another when it's empty": something that the statement tells as it is, is told as not yet so. */
function notYetSo({ first, end, aligned, response }: Window, { tokens }: Stream): boolean {
  return NEARLY.find(tokens, Math.max(0, first - STATE_WITHIN), end).some((found) => {
    const words = tokens.slice(found.first, found.end);
    if (response.text.split(/[^a-z]+/).includes(words[0]!.text)) return false;
    const state = aligned.find(({ term, hit }) => hit.first >= found.end && hit.first - found.end <= STATE_WITHIN && !response.terms[term]!.plain);
    return state !== undefined && !tokens.slice(found.end, state.hit.end).some(({ text }) => STILL_SO.test(text));
  });
}

/** So much room others' talk takes when they say more than that they listen: five words or so (stream.ts). */
const ANOTHERS_TURN = 3.5;

/** "Both on the Monday." "And what if I forget?" "You have till Tuesday.": nobody states one thing over what others ask in between. */
function overAnothersTurn({ first, end }: Window, { position, turnOf }: Stream): boolean {
  for (let place = first + 1; place < end; place += 1) if (turnOf[place] !== turnOf[place - 1] && position[place]! - position[place - 1]! >= ANOTHERS_TURN) return true;
  return false;
}

/** "I had two brothers here two weeks ago" tells of no "every two weeks". */
const isPast = ({ end }: Window, { tokens }: Stream): boolean => tokens[end]?.text === "ago";

/** "Would you leave it on the dashboard? No": who asks it and says no has not said it. */
function answeredWithNo({ end }: Window, stream: Stream): boolean {
  const { tokens, turnOf } = stream;
  const to = sentenceUpTo(stream, end, LONGEST_SENTENCE);
  return tokens[to - 1]!.after === "?" && turnOf[to] === turnOf[end - 1] && /^(no|nope|nah|never)$/.test(tokens[to]!.text);
}

/** Allow what is supposed beside them: "it's fine if you share it", but not "you'd feel fine". */
const ALLOWS = /\b(it|that|this|which) (is|will be|would be|should be) (\w+ly |quite |all |just )?(fine|okay|ok|alright|right|safe|harmless)\b/;
/** So near to what is supposed its harm is named, or that it is allowed. */
const BESIDE = { harm: 12, allowed: 8 } as const;
/** So much of it supposed, beside a harm: a warning. */
const MOSTLY = 0.5;

/**
 * "If you stop it suddenly you get worse" warns. What the response itself supposes ("if you miss one take two") may be
 * supposed; something else must be told, and no harm be named of it, or what is supposed be allowed.
 */
export function isSupposed(window: Window, stream: Stream): boolean {
  let told = 0;
  let asWritten = 0;
  let all = 0;
  for (const { term, hit } of window.aligned) {
    const { supposed, weight } = window.response.terms[term]!;
    all += weight;
    if (!stream.polarity[hit.first]!.hypothetical) told += weight;
    else if (supposed) asWritten += weight;
  }
  if (told > 0 || asWritten > 0) return told <= (1 - MOSTLY) * all && besides(window, stream, BESIDE.harm).some((place) => HARMS.at(stream.tokens, place) !== null);
  return !ALLOWS.test(besides(window, stream, BESIDE.allowed).map((place) => stream.tokens[place]!.text).join(" "));
}

/** Tokens of the window's sentence near to it, that are told and not denied. */
function besides({ first, end }: Window, stream: Stream, reach: number): number[] {
  const near: number[] = [];
  for (let place = Math.max(0, first - reach); place < Math.min(stream.tokens.length, end + reach); place += 1) {
    const { negated, hypothetical } = stream.polarity[place]!;
    if (inOneSentence(stream, place, first) && stream.turnOf[place] === stream.turnOf[first] && !negated && !hypothetical) near.push(place);
  }
  return near;
}

/** Whether this gate alone closes on what the speaker says in one sentence, and not of others. */
function closedBy(gate: Gate, passage: Passage, stream: Stream): boolean {
  return passage.closed.length === 1 && passage.closed[0] === gate && (!overSentenceEnd(passage.window, stream) || addsItsNumber(passage, stream)) && !toldOfOthers(passage, stream);
}

/** Lead a number that stands for itself: "oh, just for a second or two". */
const LEADS_NUMBER = /^(oh|ah|well|so|um|erm|er|uh|just|for|only|about|say|maybe|and|yes|yeah|ooh|like)$/;

/** "Finger stays there by the nose." "How long for?" "Oh, just a second or two, then let go.": a number right behind the sentence that it belongs to, by itself. */
function addsItsNumber({ window, quantity }: Passage, stream: Stream): boolean {
  if (quantity === undefined || window.aligned.some(({ hit }) => hit.first >= quantity.end)) return false;
  const { tokens } = stream;
  if (quantity.end < tokens.length && tokens[quantity.end - 1]!.after === "") return false;
  let lead = quantity.first;
  while (lead > window.first && inOneSentence(stream, lead - 1, quantity.first)) lead -= 1;
  for (let place = lead; place < quantity.first; place += 1) if (!LEADS_NUMBER.test(tokens[place]!.text)) return false;
  return lead > window.first && inOneSentence(stream, window.first, lead - 1);
}

/** A passage that would say the element but for its number. */
function wrongNumber(passage: Passage, stream: Stream): Passage | null {
  if (passage.quantity === undefined || !closedBy("quantity", passage, stream)) return null;
  return { ...passage, verdict: "wrong", closed: [] };
}

/** A passage that names a red flag, as clearly as any wrong statement, and says that it is nothing. */
function playedDown(passage: Passage, stream: Stream): Passage | null {
  if (passage.coverage < WRONG_ACCEPTED || !closedBy("played-down", passage, stream)) return null;
  return { ...passage, verdict: "wrong", closed: [], toldAsNothing: true, reason: "told as nothing, and must alarm" };
}

/** The passage with what was wrong with it, in words, where it does not say so yet. Few of those that are looked at come to that. */
export function withReason(passage: Passage, stream: Stream): Passage {
  const { quantity, window } = passage;
  if (passage.reason !== undefined) return passage;
  return { ...passage, reason: quantity === undefined ? `amounts to '${plainWording(window.response.text, spoken(window, stream))}', which is wrong` : `said '${quantity.text}'` };
}

/** A number alone is held against somebody only beside so much of what it is the number of; less where all that must be named is. */
const NUMBERED_SHARE = 0.6;
const NUMBERED_SHARE_WITH_MUST = 0.45;

/** Whether the passage tells by itself, whatever else is spoken of, what it holds against the speaker. */
export function standsAlone(passage: Passage): boolean {
  const { quantity, window, element } = passage;
  if (quantity === undefined) return saysAll(window);
  if (countsBare(passage)) return true;
  return ownShareOf(window) >= (element.must.length > 0 ? NUMBERED_SHARE_WITH_MUST : NUMBERED_SHARE);
}

/** Whether a bare number is held against the speaker: quantity-gate.ts let it only where all else of weight is said in so many words. */
export const countsBare = ({ quantity, element }: Passage): boolean => quantity?.unit === null && element.quantity !== null && isCounted(element.quantity);

/** Share of the response's words, its number aside, that the passage says. */
export function ownShareOf({ aligned, response }: Window): number {
  return aligned.reduce((sum, { term, quality }) => (response.terms[term]!.text === "{quantity}" ? sum : sum + response.terms[term]!.weight * quality), 0) / response.ownWeight;
}

/** What the right responses of an element affirm and what they deny: stems and sets. */
const rightWords = remembered(({ say }: CompiledElement) => {
  const words = { affirmed: new Set<string>(), denied: new Set<string>() };
  for (const { terms } of say) for (const { keys, negated } of terms) for (const { key } of keys) words[negated ? "denied" : "affirmed"].add(key);
  return words;
});

/**
 * "You might go red in the face" has the weightiest words of "if you get a red face never use it again", and all of them
 * are right: where not all of it is said, something must be that no right response says so.
 */
function saysWhatIsWrong({ response: { terms }, aligned }: Window, element: CompiledElement, { tokens }: Stream): boolean {
  if (terms.every(({ plain }, place) => plain || aligned.some(({ term }) => term === place))) return true;
  const { affirmed, denied } = rightWords(element);
  const isRight = (key: string, negated: boolean) => (negated ? denied : affirmed).has(key);
  const own = terms.map(({ plain, text, keys, negated }) => !plain && text !== "{quantity}" && !keys.some(({ key }) => isRight(key, negated)));
  return !own.includes(true) || aligned.some(({ term, hit }) => own[term]! || tokens.slice(hit.first, hit.end).some(({ stem }) => !isRight(stem, terms[term]!.negated)));
}

/** From here on a word is the response's own, or as good as it. */
const OWN_QUALITY = 0.95;

/** Whether more than two thirds of what is said of it only stand for the response's words: "clean plaster on it" is no "keep wiping", "one okay nearly there now just the boring house keeping bits" no "the old one in the household waste". */
function restsOnStandIns({ aligned, response: { terms } }: Window): boolean {
  const telling = aligned.filter(({ term }) => !terms[term]!.plain);
  // One word alone must be the very word.
  if (telling.length === 1) return terms.length > 1 && telling[0]!.quality < 1 && telling[0]!.hit.end - telling[0]!.hit.first === 1;
  const weight = (of: typeof telling) => of.reduce((sum, { term }) => sum + terms[term]!.weight, 0);
  return weight(telling.filter(({ quality }) => quality < OWN_QUALITY)) > (weight(telling) * 2) / 3;
}

function weighIncorrect(fit: Omit<Passage, "verdict" | "closed">, postings: Postings, stream: Stream, speaker: "candidate" | "patient"): Passage | null {
  const { element, window } = fit;
  if (!notWithHolds(groupsBut(element.notWith, window.response.without), postings, stream, window) || lacksDirection(window) || !saysChosen(window, postings) || !isOwnStatement(window, stream) || !saysWhatIsWrong(window, element, stream)) return null;
  if (readPolarity(stream, window, element.vocabulary) !== "agrees" || deniesBeside(stream, window)) return null;
  if (isSupposed(window, stream) || restsOnStandIns(window)) return null;
  if (speaker === "candidate" && element.kind === "tell" && askedShare(stream, window).asked > MOSTLY_ASKED) return null;
  return { ...fit, coverage: window.coverage, verdict: "wrong", closed: [], ...(takenBackBehind(stream, window.end, topicOf(window.response)) !== null && { takenBack: true }) };
}
