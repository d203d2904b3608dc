import { BETWEEN_STATEMENTS, SUPPOSES } from "./clause.ts";
import { supposesByOrder } from "./inverted-condition.ts";
import { asksOfAThing, asksOfTheirs, dependent, INDIRECT, OPEN, openBehind, questionAt, skipOpeners, tellsWhat, whatAsks, type SpeechAct } from "./question-form.ts";
import { ASKING_TAG, endsInLeadingTag, isTag, withoutTag } from "./question-tag.ts";
import { isRhetorical } from "./rhetorical-question.ts";
import { speechPhrases } from "./speech-phrases.ts";
import type { Token } from "./token.ts";

export type { SpeechAct } from "./question-form.ts";

const ASKED_OF_ONESELF = speechPhrases("asked_of_oneself");
const STRONG = speechPhrases("strong_openings");

/** A question without a question mark ends after so many tokens at the latest. */
const LONGEST_QUESTION = 22;

/**
 * The speech act of every token, by sentence.
 * @param breaks token positions before which a sentence or turn ends, whatever the punctuation.
 */
export function speechActs(tokens: readonly Token[], breaks: ReadonlySet<number>): SpeechAct[] {
  const acts: SpeechAct[] = tokens.map(() => "tell");
  let first = 0;
  for (let place = 1; place <= tokens.length; place += 1) {
    const ended = place === tokens.length || breaks.has(place) || /^[.?!]$/.test(tokens[place - 1]!.after);
    if (!ended) continue;
    markSentence(tokens, first, place, acts);
    if (isRhetorical(tokens, first, place, breaks)) acts.fill("tell", first, place);
    first = place;
  }
  return acts;
}

function markSentence(tokens: readonly Token[], first: number, end: number, acts: SpeechAct[]): void {
  const marked = tokens[end - 1]?.after === "?";
  if (marked && endsInLeadingTag(tokens, first, end)) {
    for (let k = first; k < end; k += 1) acts[k] = "ask-closed";
    return;
  }
  const body = marked ? withoutTag(tokens, first, end) : end;
  const isQuestion = marked && body === end;
  // "I'd like to go through it with you, is that okay?": what goes before is told, the tag itself asks.
  if (end - body >= ASKING_TAG) acts.fill("ask-closed", body, end);
  let found = false;
  for (let place = first; place < body; place += 1) {
    const atStart = place === first || startsAnew(tokens, place, first);
    if (!atStart || (!marked && supposesByOrder(tokens, skipOpeners(tokens, place, body)))) continue;
    const opener = skipOpeners(tokens, place, body);
    // "One, no wait, what does it say, two": nobody else is asked, and what follows is told.
    const aside = ASKED_OF_ONESELF.at(tokens, opener);
    if (aside !== null && opener > first && aside.end < body) {
      place = aside.end - 1;
      continue;
    }
    if (isQuestion && place > first && asksOfTheirs(tokens, opener) && opensACase(tokens[skipOpeners(tokens, first, body)]!.text)) {
      acts.fill("ask-closed", first, body);
      return;
    }
    // "And your birthday please": the opener may be part of it.
    const act = questionAt(tokens, opener) ?? (place === first && asksOfAThing(tokens, opener, body) ? "ask-closed" : null) ?? (opener > place && INDIRECT.at(tokens, place) !== null ? openBehind(tokens, place, place + 1) : null);
    if (act === null || (!marked && (tellsWhat(tokens, opener, body) || isTag(tokens, opener, first)))) continue;
    found = true;
    if (act === "tell") continue;
    const stop = isQuestion ? body : Math.min(body, opener + LONGEST_QUESTION, nextStart(tokens, opener + 2, body));
    for (let k = opener; k < stop; k += 1) acts[k] = act;
    place = stop - 1;
  }
  // "Any allergies?", "And your date of birth?", "You shake it first?"
  if (isQuestion && !found) {
    // "Anything from the chemist, the health shop?" lists what is asked for.
    const lists = /^(any|anything|anybody|anyone|other)$/.test(tokens[skipOpeners(tokens, first, body)]!.text);
    const last = lists ? first : lastPart(tokens, first, body);
    // "And once you're better, you'll keep on with it?" asks the whole of it; "press it, and then?" only its end.
    const from = /^(you|it|we|they|he|she)$/.test(tokens[last]!.text) && body - last > 2 ? first : last;
    const open = OPEN.at(tokens, skipOpeners(tokens, from, body)) !== null;
    for (let k = from; k < body; k += 1) acts[k] = open ? "ask-open" : "ask-closed";
  }
}

/** In speech without punctuation a question may begin in mid stretch: behind an opener, a comma or a short reply. */
function startsAnew(tokens: readonly Token[], place: number, first: number): boolean {
  const before = tokens[place - 1]!;
  if (/^[,;:-]$/.test(before.after)) return true;
  if (place - first < 2) return false;
  if (/^(so|and|but|okay|now|great|perfect|alright|lovely)$/.test(before.text)) return true;
  // Two strong signs at once: "... fever do you have any", "... pharmacist can i check your name".
  return STRONG.at(tokens, place) !== null && asks(questionAt(tokens, place)) && !dependent(before.text) && (tokens[place]!.text !== "what" || whatAsks(tokens, place));
}

function asks(act: SpeechAct | null): boolean {
  return act === "ask-closed" || act === "ask-open";
}

function nextStart(tokens: readonly Token[], place: number, end: number): number {
  for (let k = place; k < end; k += 1) {
    if (/^[,;:-]$/.test(tokens[k - 1]!.after)) {
      if (/^(so|and|but|okay|i|you|because|just|well|anyway)$/.test(tokens[k]!.text)) return k;
    } else if (breaksOff(tokens, k)) return k;
  }
  return end;
}

/** Without punctuation a question is over where something else begins: "do you have any allergies okay so this is". */
function breaksOff(tokens: readonly Token[], place: number): boolean {
  const here = tokens[place]!.text;
  const next = tokens[place + 1]?.text ?? "";
  if (here === "but" || here === "anyway" || here === "because") return true;
  if (here === "sorry") return next === "i";
  // "Are you Robin | I'm Shay, I'm the pharmacist".
  if (here === "i" && next === "am" && !dependent(tokens[place - 1]?.text ?? "")) return true;
  if (here === "so") return /^(i|you|we|it|its|he|she|this|these|the|what|let|if|when|first)$/.test(next);
  // "Is it one tablet | no so it's four of them": what was asked in another voice, answered.
  if (/^(no|nope|yes|yeah)$/.test(here)) return /^(so|i|it|its|you|we|that|they|these|this|just|not|never)$/.test(next);
  if (BETWEEN_STATEMENTS.has(here) || here === "great") return /^(so|i|you|we|then|now|well|let|this|these|it)$/.test(next);
  // "What might you notice | your mouth might feel dry".
  return /^(your|the|his|her)$/.test(here) && /^(might|will|may|should|must)$/.test(tokens[place + 2]?.text ?? "") && !/^(if|when|how|what|where|why|that|think|know|whether|in|on|of|to|for|with|at)$/.test(tokens[place - 1]!.text);
}

function lastPart(tokens: readonly Token[], first: number, end: number): number {
  for (let k = end - 2; k > first; k -= 1) if (/^[,;:-]$/.test(tokens[k]!.after)) return k + 1;
  return first;
}

const opensACase = (text: string) => SUPPOSES.has(text) || /^(before|after|while|since|until|till)$/.test(text);
