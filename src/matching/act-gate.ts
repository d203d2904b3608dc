import { speechPhrases } from "../language/speech-phrases.ts";
import type { CompiledElement } from "./compile.ts";
import { toldOfOthers } from "./others.ts";
import { overSentenceEnd, WRONG_ACCEPTED } from "./passages.ts";
import { clausesAround, inOneSentence, sentenceUpTo, type Stream } from "./stream.ts";
import { tokensOf, type Window } from "./windows.ts";

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

/** Share of the passage that is asked from which it no longer tells. */
export const MOSTLY_ASKED = 0.5;
/** So near to the end of the speaker's turn an elliptic question ("any allergies") waits for its answer. */
const TURN_END = 6;

const REFUSALS = speechPhrases("refusals");
const COMPREHENSION = speechPhrases("comprehension_checks");
const TEACH_BACK = speechPhrases("teach_back_requests");

/** Whether the passage does what the item asks of it: tells, asks, asks openly, or asks for a teach-back. */
export function actFits(element: CompiledElement, window: Window, stream: Stream): boolean {
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

/** The request may follow what leads up to it: "imagine it's tonight and you've gone wheezy, what are you going to do?" */
const REQUEST_REACH = 14;

/** "Show me", "in your own words": said in the clauses of the passage or soon after. */
function requestsBack(window: Window, stream: Stream): boolean {
  const { first: from, end } = clausesAround(stream, window);
  const to = Math.min(stream.tokens.length, end + REQUEST_REACH);
  return TEACH_BACK.find(stream.tokens, from, to).some((hit) => isAskedBack(stream, from, hit));
}

/** "Show your family how you'd use it" and "let's talk it through" ask for nothing back; "I'll get you to show me" and "you do it and I'll watch" do. */
function isAskedBack({ tokens }: Stream, from: number, { first, end }: { first: number; end: number }): boolean {
  const texts = tokens.slice(from, end).map(({ text }) => text);
  const said = texts.join(" ");
  // "You'll talk it through with your wife".
  if (tokens[end]?.text === "with" && WITH_OTHERS.test(tokens[end + 1]?.text ?? "")) return false;
  return !SHOWN_TO_OTHERS.test(said) && (!OFFERS.test(said) || texts[texts.length - 1] === "watch" || texts.slice(first - from).some((text) => /^(me|us|you|your)$/.test(text)));
}

const WITH_OTHERS = /^(your|his|her|their|him|them|somebody|someone|anybody|anyone|family)$/;
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
