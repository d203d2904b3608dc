import { isAllowedAhead } from "./allowance.ts";
import { DISPENSES } from "./dispenses.ts";
import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { OUTRIGHT, OUTRIGHT_ENDS } from "./outright.ts";
import { SPEECH } from "./speech-phrases.ts";
import type { Token } from "./token.ts";

/** Tokens `first` up to, not including, `end`. Clauses tile the tokens. */
export interface Clause {
  first: number;
  end: number;
}

/** Behind "and" or a comma these begin a new clause: a subject, or a verb told to the patient. */
const CLAUSE_OPENERS = new Set([
  "you", "i", "we", "it", "he", "she", "they", "there", "then", "make", "remember", "always", "never", "do", "if", "when",
  "once", "just", "only", "please", "keep", "use", "take", "put", "hold", "wait", "press", "breathe", "check", "let",
  "come", "see", "go", "call", "ring", "get", "bring", "tell", "ask", "try", "start", "stop", "leave", "give", "clean", "wipe", "rinse", "wash",
  "shake", "blow", "tilt", "lean", "aim", "point", "look", "pull", "push", "turn", "dial", "inject", "change", "throw", "store", "count", "pinch",
  "speak", "talk", "contact", "phone", "show", "carry", "write", "close", "open", "spray", "squeeze", "drop",
  "pop", "bung", "shove", "run", "rub", "draw", "swallow", "chew", "peel", "slide", "twist", "lie", "sit", "prop", "empty", "your", "my", "her", "his", "their",
]);

/** Speech without any punctuation is still not one clause: nothing reaches further than this many tokens. */
export const LONGEST_CLAUSE = 24;

/**
 * Parts tokens into clauses: at punctuation, at "but" and "so", and at "and" before a new subject or instruction.
 * @param breaks token positions before which a sentence or turn ends, whatever the punctuation.
 */
export function clausesOf(tokens: readonly Token[], breaks: ReadonlySet<number> = new Set()): Clause[] {
  const clauses: Clause[] = [];
  let first = 0;
  for (let place = 1; place <= tokens.length; place += 1) {
    const ends = place === tokens.length || breaks.has(place) || startsClause(tokens, place, first);
    if (!ends && place - first < LONGEST_CLAUSE) continue;
    const end = ends ? place : restFrom(tokens, first, place);
    clauses.push({ first, end });
    first = end;
    place = end;
  }
  return tokens.length === 0 ? [] : clauses;
}

/** What a denial denies mostly begins within so many words. */
const DENIAL_REACH = 8;

/** Where a clause that grew too long is cut: not between a denial and what it denies ("... into the pocket | don't let the tip touch your eye"). */
function restFrom(tokens: readonly Token[], first: number, end: number): number {
  for (let place = end - 1; place > Math.max(first, end - DENIAL_REACH); place -= 1) if (opensDenial(tokens, place)) return place;
  return end;
}

function opensDenial(tokens: readonly Token[], place: number): boolean {
  const { text } = tokens[place]!;
  return (text === "never" || text === "avoid" || (text === "do" && tokens[place + 1]?.text === "not")) && !LEADS_TO_DENIAL.test(tokens[place - 1]!.text);
}

/** "You never", "please do not": what leads to a denial stays with it. */
const LEADS_TO_DENIAL = /^(i|you|we|they|he|she|it|that|which|who|should|must|will|would|can|could|please|to|and|or|but|so|just|also|people)$/;

function startsClause(tokens: readonly Token[], place: number, first: number): boolean {
  const before = tokens[place - 1]!;
  const token = tokens[place]!;
  const next = tokens[place + 1];
  if (/^[.?!;:]$/.test(before.after)) return true;
  const opens = (candidate: Token | undefined) => candidate !== undefined && CLAUSE_OPENERS.has(candidate.text);
  if (/^[,-]$/.test(before.after) && (opens(token) || token.text === "and" || token.text === "so")) return opens(token) || opens(next);
  if (opensOutrightDenial(tokens, place)) return true;
  // "If you're poorly, | no need to tell the clinic".
  if (/^[,-]$/.test(before.after) && token.text === "no" && DISPENSES.at(tokens, place) !== null) return true;
  if (token.text === "but" || (token.text === "so" && before.text !== "or" && next?.text !== "much" && (next?.text !== "that" || COMES_TO.test(tokens[place + 2]?.text ?? "")))) return true;
  if (token.text === "and" || token.text === "then") return opens(next);
  if (BETWEEN_STATEMENTS.has(token.text) && before.after === "" && !LEADS_TO_OKAY.test(before.text) && !BEHIND_OKAY.test(next?.text ?? "")) return true;
  if (place - first > 3 && supposes(tokens, first) && opensMain(tokens, place)) return true;
  if (CALLS_FOR_HELP.has(token.text) && (before.text === "wait" || (place - first >= 2 && FOR_HELP.test(next?.text ?? "") && !LEADS_ON.test(before.text)))) return true;
  // "Take it | if it's still today", "it matters | if the tip touches your eye"; but what is allowed goes on: "it doesn't matter if ...".
  return (token.text === "if" || token.text === "unless") && !isAllowedAhead(tokens, place) && (place - first > 2 || (place - first === 2 && (WHAT_IT_IS_DONE_TO.test(before.text) || before.text === "matters")));
}

/** "If you've skipped an evening, on no account put two in": forbidden outright, and no part of what is supposed. */
function opensOutrightDenial(tokens: readonly Token[], place: number): boolean {
  return OUTRIGHT.at(tokens, place) !== null && !/^(and|or|but|so|you|please|should|must)$/.test(tokens[place - 1]!.text);
}

/** Part two things said in speech without punctuation. */
export const BETWEEN_STATEMENTS: ReadonlySet<string> = new Set(SPEECH.between_statements);
/** Behind these such a word says how something is: "is that okay", "a cool dry place", "you'll be alright". */
const LEADS_TO_OKAY = /^(is|are|was|were|be|it|its|that|thats|this|these|they|he|she|you|i|feel|feels|seem|seems|look|looks|an?|the|your|of|in|and|or|all|just|really|very|too|so|not|perfectly|absolutely|quite|totally|usually|still|if|only|more|keep|stay|to|being)$/;
/** And before these: "okay to use", "cool water". */
const BEHIND_OKAY = /^(to|with|for|if|as|about|and|dry|place|water|when|but)$/;

/** "Each one's two point five so that's ten": what it comes to, and no "so that". */
const COMES_TO = /^(is|was|makes|make|gives|comes|means|adds)$/;

const WHAT_IT_IS_DONE_TO = /^(it|them|one|that|this|these|those)$/;

/** Said before a clause and no part of it. */
export const LEADS_IN = /^(well|so|and|but|or|then|also|okay|now|um|uh|er)$/;

/** Where what a clause says begins behind what leads in ("well, and then"). */
export function tellingFrom(tokens: readonly Token[], { first, end }: Clause): number {
  let start = first;
  while (start < end && LEADS_IN.test(tokens[start]!.text)) start += 1;
  return start;
}

function supposes(tokens: readonly Token[], first: number): boolean {
  let place = first;
  while (LEADS_IN.test(tokens[place]?.text ?? "") || tokens[place]?.text === "just") place += 1;
  return SUPPOSES.has(tokens[place]?.text ?? "");
}

/** Open what is supposed; what is told behind it, once that is said, is no supposition. */
export const SUPPOSES: ReadonlySet<string> = new Set((polarityData as LexiconFile<"polarity">).supposing);
const MAIN_VERBS = new Set(["should", "must", "can", "need", "ought", "might", "may", "will", "would", "want", "have", "could"]);

/** "If it is no better after three weeks | see your doctor", "if you forget one | take it": told without a subject. */
const TOLD = new Set(["see", "take", "go", "come", "use", "keep", "stop", "tell", "speak", "ask", "let", "give", "get", "bring", "start", "leave", "wait", "contact", "rinse", "throw", "make", "put", "try", "carry", "skip", "pop", "talk", "have", "bin", "chuck", "move", "ditch"]);
const WHAT_IS_TOLD = /^(the|a|an|your|my|it|them|one|to|with|back|us|me|in|on|out|off|for|until|till|some|another|this|that|sure|advice|help|straight|two)$/;
/** A verb behind these belongs to them, not to the patient. */
const LEADS_TO_VERB = /^(i|you|we|they|he|she|people|who|to|not|never|will|would|can|could|should|must|may|might|let|the|a|an|your|my|his|her|their|this|any|no|some|another|first|then|just|also|ever|always|only|usually|really|still|already|cannot|please|is|are|was|were|be)$/;

/** "If your sight goes blurry | there's no need to", "if you miss one | you should": a subject and its verb. */
function opensMain(tokens: readonly Token[], place: number): boolean {
  const before = tokens[place - 1]!.text;
  if (/^(and|or|that|than|as|if|when|before|after|because|what|how|where|who|which|whether|of|to|in|on|for|with|at|by|do|does|did|have|had)$/.test(before)) return false;
  const here = tokens[place]!.text;
  const next = tokens[place + 1]?.text ?? "";
  if (here === "there") return next === "is" || next === "are";
  // "If you don't he might get a sore mouth".
  if (/^(he|she|they|it)$/.test(here) && /^(will|would|can|could|may|might|should|must)$/.test(next)) return true;
  if (here === "you") return MAIN_VERBS.has(next) && !(next === "have" && tokens[place + 2]?.text !== "to");
  if (TOLD.has(here) && WHAT_IS_TOLD.test(next) && !LEADS_TO_VERB.test(before) && !OUTRIGHT_ENDS.has(before)) return true;
  return here === "please" || (here === "do" && next === "not") || (CALLS_FOR_HELP.has(here) && !/^(the|a|an|your|my|will|please|not|no)$/.test(before));
}

const FOR_HELP = /^(an|nine|999|911|112|triple)$/;
/** Behind these the call belongs to what was begun: "you should call an ambulance", "do not ring 999", "no call to tell anybody". */
const LEADS_ON = /^(to|no|not|never|should|must|can|could|will|would|might|may|and|or|please|just|you|they|i|we|he|she|who|someone|somebody|always|then|straight|also|either|a|the|your|that|of)$/;
/** "If she doesn't wake up | call 911", "don't wait | ring 999", "can't breathe | call an ambulance". */
const CALLS_FOR_HELP = new Set(["call", "ring", "dial", "phone"]);
