import { ALLOWANCES } from "../language/allowance.ts";
import { HARMS, PERMITS } from "../language/appraisals.ts";
import { actFits } from "./act-gate.ts";
import { toldForOneCase } from "./any-case.ts";
import { isAside } from "./aside.ts";
import { toldForAfter } from "./comes-before.ts";
import { isAlone } from "./company.ts";
import type { CompiledElement } from "./compile.ts";
import { goesAnotherWay } from "./direction.ts";
import { DISPENSED_ACCEPTED, isDispensedWith } from "./dispensed.ts";
import { mistakesTheUse } from "./each-use.ts";
import { isFaulted } from "./faulted.ts";
import { mustHolds, notWithHolds } from "./must-words.ts";
import { toldOfAnotherAge, toldOfOthers } from "./others.ts";
import { namesAnotherPeriod } from "./other-period.ts";
import { overSentenceEnd, WRONG_ACCEPTED, type Passage } from "./passages.ts";
import { readPolarity } from "./polarity-gate.ts";
import type { Postings } from "./postings.ts";
import { asksForNumber, readQuantity, wrongNumberBeside } from "./quantity-gate.ts";
import { isPlayedDown } from "./red-flag.ts";
import { deniesSmallRule, onlyMayHappen, tellsAnothersRule, tellsNoRule } from "./rule.ts";
import { denies } from "./response.ts";
import type { Stream } from "./stream.ts";
import type { Gate } from "./types.ts";
import { isTurnedRound } from "./turned-order.ts";
import { lacksDirection, type Window } from "./windows.ts";
import { groupsBut } from "./word-group.ts";

export function contentGates(element: CompiledElement, window: Window, postings: Postings, stream: Stream, must = element.must): Gate[] {
  const closed: Gate[] = [];
  const { response } = window;
  const without = response.without | (response.byNumber !== 0 && saysNumber(window) ? response.byNumber : 0);
  if (!mustHolds(groupsBut(must, without), postings, stream, window)) closed.push("must");
  if (!notWithHolds(element.notWith, postings, stream, window, "instruction")) closed.push("not-with");
  return closed;
}

const saysNumber = ({ aligned, response }: Window) => aligned.some(({ term }) => response.terms[term]!.text === "{quantity}");

export function weigh(fit: Omit<Passage, "verdict" | "closed">, postings: Postings, stream: Stream, speaker: "candidate" | "patient"): Passage {
  const { element, window } = fit;
  const passage: Passage = { ...fit, verdict: "right", closed: contentGates(element, window, postings, stream) };
  if (speaker === "candidate" && !actFits(element, window, stream)) passage.closed.push("speech-act");
  if (element.kind === "tell" && (goesAnotherWay(stream, window) || mistakesTheUse(window, stream, element) || toldForAfter(window, stream, element) || isTurnedRound(window, stream, element) || namesAnotherPeriod(window, stream))) passage.closed.push("direction");
  if (element.kind === "tell" && (tellsNoRule(window, stream) || (!element.redFlag && deniesSmallRule(window, stream)) || tellsAnothersRule(window, stream) || toldForOneCase(window, stream, element) || (!element.redFlag && onlyMayHappen(window, stream)))) passage.closed.push("rule");
  // Other numbers hold for them; "not for children" may be what is to be told.
  if (element.quantity !== null && toldOfAnotherAge(window, stream, element.age)) passage.closed.push("others");
  if (element.kind === "tell" && speaker === "candidate") {
    if (isAside(window, stream)) passage.closed.push("aside");
    if (!element.redFlag && isFaulted(window, stream, element)) passage.closed.push("faulted");
  }
  const withNumber = asksForNumber(window);
  if (element.quantity !== null && withNumber) {
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
  if (element.quantity !== null && !withNumber) {
    const wrong = wrongNumberBeside(stream, window, element.quantity);
    if (wrong !== null) passage.quantity = wrong;
    if (wrong !== null || (lacksNumber(window) && readQuantity(stream, window, element.quantity).reading !== "right")) passage.closed.push("quantity");
  }
  // A question is asked, whatever it denies ("pretend I'm not here and show me").
  const polarity = element.kind === "tell" ? readPolarity(stream, window, element.vocabulary) : "agrees";
  if (polarity === "agrees") return element.redFlag && passage.closed.length === 0 && isPlayedDown(window, stream) ? { ...passage, closed: [...passage.closed, "played-down"] } : passage;
  // In whole stations a denial beside what fits is mostly of something else: of twenty opposites told in annotated talk two
  // were said. So there a person listens; a sentence by itself says what it says.
  const dispensed = passage.coverage >= DISPENSED_ACCEPTED && isDispensedWith(window, stream);
  const held = element.kind === "tell" && passage.closed.length === 0 && passage.verdict === "right" && (dispensed || (polarity === "opposes" && passage.coverage >= WRONG_ACCEPTED));
  if (!held || overSentenceEnd(window, stream) || deniesHalf(window, stream) || (!dispensed && lacksDirection(window)) || toldOfOthers(window, stream) || !outright(window, stream)) {
    passage.closed.push("polarity");
    return passage;
  }
  if (doubted(window, stream)) return { ...passage, verdict: "unclear", closed: ["sound-alike"], reason: "the denial rests on a doubtful word" };
  if (!dispensed && !isAlone(window, stream)) return { ...passage, verdict: "unclear", closed: ["sound-alike"], reason: "the opposite may have been said: what is denied here must be heard" };
  return { ...passage, verdict: "wrong", reason: denies(window.response) ? ALLOWED : RULED_OUT };
}

/** Numbers that a response has as words, where it does not leave them to the rubric ("{quantity}"). "One" and "once" mostly say something else. */
const NUMBER_WORD = /^(two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|couple|pair|brace|twice|both)$/;

/** Of an element with a number, a response that says it in words ("a pair of squirts each side") is not said without it. */
function lacksNumber({ response, aligned }: Window): boolean {
  return response.terms.some(({ text }, place) => text.split("|").every((word) => NUMBER_WORD.test(word)) && !aligned.some(({ term }) => term === place));
}

/** Over several turns what is denied must be denied in each: "sugar" | "okay" | "a proper cola, not the diet, or sweets" rules no sweets out. */
function deniesHalf({ first, end, aligned }: Window, { turnOf, polarity }: Stream): boolean {
  if (turnOf[first] === turnOf[end - 1]) return false;
  const deniesIn = (turn: number) => aligned.some(({ hit }) => turnOf[hit.first] === turn && polarity[hit.first]!.negated);
  return aligned.some(({ hit }) => !deniesIn(turnOf[hit.first]!));
}

/** Said of a wrong statement on the sheet: what was wrong with it. */
const ALLOWED = "the opposite was said: that it may be done, or is so";
const RULED_OUT = "the opposite was said: not to do it, or that it is not so";

/** So soon behind it the harm is named. */
const HARM_REACH = 8;

/** What the response denies counts as allowed only in so many words, and not where the harm is named. */
function outright(window: Window, stream: Stream): boolean {
  const deniedByRubric = window.response.terms.some(({ negated, weight }) => negated && weight > 0);
  if (!deniedByRubric) return true;
  const clause = stream.clauses[stream.clauseOf[window.first]!]!;
  const end = Math.max(clause.end, window.end);
  // "Water must not come in" permits nothing.
  const permits = stream.tokens.slice(clause.first, end).some(({ text }, behind) => PERMITS.has(text) && !(/^(must|should)$/.test(text) && stream.tokens[clause.first + behind + 1]?.text === "not")) || ALLOWANCES.find(stream.tokens, clause.first, end).length > 0;
  return permits && HARMS.find(stream.tokens, clause.first, Math.min(stream.tokens.length, Math.max(end, window.end + HARM_REACH))).length === 0;
}

function doubted(window: Window, stream: Stream): boolean {
  const clause = stream.clauses[stream.clauseOf[window.first]!]!;
  for (let place = clause.first; place < window.end; place += 1) {
    if (stream.doubtful.has(place) && /^(not|no|never|can|do|without)$/.test(stream.tokens[place]!.text)) return true;
  }
  return false;
}
