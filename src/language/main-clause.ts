import instructionsData from "./lexicon/instructions.yaml";
import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { OUTRIGHT_ENDS } from "./outright.ts";
import type { Token } from "./token.ts";

/*
 * Speech without punctuation runs on: "no running water you take a cloth and wipe it". Where a subject with its verb or
 * something told to the patient opens, what was denied before it is over.
 */

const POLARITY = polarityData as LexiconFile<"polarity">;
const LEXICON = instructionsData as LexiconFile<"instructions">;
const { thing, amount, any, doubled, person_place_or_time } = LEXICON.behind;
const TOLD_ALONE = new Set(LEXICON.alone);
const TOLD_OF_ANYTHING = new Set(LEXICON.before_anything);
const TOLD_OF_A_THING = new Set(LEXICON.before_a_thing);
const TOLD_OF_AN_AMOUNT = new Set(LEXICON.before_an_amount);
/** What may stand behind a verb that is told, by the kinds of the lexicon. */
const ANYTHING = new Set([...thing, ...amount, ...any, ...person_place_or_time]);
const A_THING = new Set([...thing, ...amount]);
const AN_AMOUNT = new Set(amount);
const HAD = new Set([...thing, ...amount, ...any, ...doubled]);
/** Behind these it is what is taken: "never use double the next day". */
const TAKES_IT = /^(use|using|take|taking|have|having|give|giving|get|getting|do|doing)$/;
/** A verb behind these belongs to them, or is none. */
const LEADS_TO_VERB = new Set([
  "i", "you", "we", "they", "he", "she", "people", "who", "to", "not", "never", "will", "would", "can", "could", "should", "shall", "must", "may", "might", "do", "does", "did", "let", "make", "help", "the", "a", "an", "your", "my", "his", "her", "their",
  "this", "that", "these", "those", "any", "no", "some", "another", "each", "every", "first", "then", "just", "also", "ever", "always", "only", "usually", "really", "still", "already", "please", "is", "are", "was", "were", "be", "and", "or", "nor", "go", "come", "try", "dare", "even",
  ...OUTRIGHT_ENDS, "else", "everyone", "anyone", "someone", "nobody", "anybody", "somebody", "everybody", "children", "kids", "of", "for", "in", "on", "by", "with", "at", "from", "as", "than", "if", "when", "what", "how", "where", "need", "better", "rather", "so", "but", "instead", "without", "morning", "evening", "other", "bit",
]);

/** Whether this word may tell a patient what to do, as these do in most sentences. */
export function isToldVerb(text: string): boolean {
  return TOLD_ALONE.has(text) || TOLD_OF_ANYTHING.has(text) || TOLD_OF_A_THING.has(text);
}

/** Verbs and modals that a subject is heard by. */
const MODAL = /^(will|would|can|could|should|must|may|might|shall|is|are|am|was|were|has|have|had|do|does|did|need|ought)$/;
/** No verb of "you". */
const NOT_WITH_YOU = /^(and|or|nor|but|to|in|on|at|off|out|up|down|back|for|of|with|from|by|about|after|before|until|till|when|if|unless|as|than|that|the|a|an|your|any|much|more|less|too|very|so|either|both|all|no|not|badly|good|well|now|today|again|sick|ill|one|two|three|yourself|feeling|feel|who|what)$/;
/** Behind these "you" is whom it is done to. */
const DONE_TO_YOU = new Set(POLARITY.done_to_you);
const SUBJECT_VERBS = new Set(POLARITY.subject_verbs);

/** What stands behind these is what is thought, known or meant, or a part of what they name, and is denied with it. */
const TAKES_A_CLAUSE = new Set([
  "think", "thinking", "thinks", "thought", "mean", "means", "meaning", "believe", "say", "saying", "says", "know", "assume", "expect", "feel", "guess", "suppose", "reason", "way", "like", "sure", "see", "wish", "hope", "reckon", "imagine", "notice", "worry", "certain", "need", "point", "want", "check", "matter", "because",
  "that", "than", "as", "if", "when", "what", "how", "where", "who", "which", "whether", "whatever", "wherever", "why", "until", "till", "before", "after", "while", "and", "or", "nor", "to", "of", "for", "with", "at", "in", "on", "by", "from", "about", "let", "make", "help", "tell", "give", "show", "ask",
  "one", "ones", "thing", "things", "anything", "something", "everything", "nothing", "any", "time", "times", "place", "places", "stuff", "all", "those", "the", "a", "an", "your", "my", "no", "not", "never", "just", "even",
]);

/** Whether a subject and its verb, something told to the patient or a question opens at this token. */
export function opensTelling(tokens: readonly Token[], place: number): boolean {
  return opensSubject(tokens, place) || opensInstruction(tokens, place);
}

/** "Don't let the little ones use it": whom it is let may take so many words. */
const LET_REACH = 4;

/** Behind what is supposed, or does not work, these open what is told: "if you miss one just have two". */
const TELLS_HOW = /^(just|simply|then|please|only|always|also)$/;

/** "keep it dry", "wipe the mouthpiece": the verb leads and nothing before it leads to it. */
export function opensInstruction(tokens: readonly Token[], place: number): boolean {
  const here = tokens[place]!.text;
  const before = tokens[place - 1]?.text ?? "";
  const next = tokens[place + 1]?.text ?? "";
  // "Not working just ring us": behind what does not work something else is told.
  const toldInstead = TELLS_HOW.test(before) && (tokens[place - 2]?.text.endsWith("ing") ?? false) && tokens[place - 3]?.text === "not";
  if ((LEADS_TO_VERB.has(before) && !(before === "no" && tokens[place - 1]!.after === "") && !toldInstead) || before.endsWith("ly")) return false;
  for (let k = place - 2; k >= Math.max(0, place - LET_REACH); k -= 1) if (/^(let|lets|letting|make|makes|making|help|helps)$/.test(tokens[k]!.text)) return false;
  // "Don't take double the next night" is no instruction.
  if (here === "double" && next === "the") return false;
  if (TOLD_OF_A_THING.has(here)) return A_THING.has(next) && !TAKES_IT.test(before);
  return TOLD_ALONE.has(here) ? next !== "of" : TOLD_OF_ANYTHING.has(here) && ANYTHING.has(next);
}

/** Whether something told to the patient opens at this token behind what is supposed, by its verb or by a word before that. */
export function opensInstructionBehind(tokens: readonly Token[], place: number): boolean {
  if (opensInstruction(tokens, place)) return true;
  // "If you miss one do two the next day".
  if (TOLD_OF_AN_AMOUNT.has(tokens[place]!.text) && AN_AMOUNT.has(tokens[place + 1]?.text ?? "") && !LEADS_TO_VERB.has(tokens[place - 1]?.text ?? "")) return true;
  if (!TELLS_HOW.test(tokens[place]!.text) || LEADS_TO_VERB.has(tokens[place - 1]?.text ?? "") || tokens[place + 1] === undefined) return false;
  // "If he won't wake properly just leave him": what he does properly is supposed.
  let supposed = place;
  while (supposed > 0 && tokens[supposed - 1]!.text.endsWith("ly")) supposed -= 1;
  const plain = [...tokens.slice(Math.max(0, supposed - LET_REACH), supposed), ...tokens.slice(place + 1, place + 1 + LET_REACH)];
  const verb = Math.min(supposed, LET_REACH);
  return opensInstruction(plain, verb) || (TOLD_OF_AN_AMOUNT.has(plain[verb]!.text) && HAD.has(plain[verb + 1]?.text ?? ""));
}

/** Said alone it tells to ring it: "don't hang about 999". */
const EMERGENCY_NUMBER = /^(999|nine (nine nine|one one))/;

function opensSubject(tokens: readonly Token[], place: number): boolean {
  const here = tokens[place]!.text;
  const before = tokens[place - 1]?.text ?? "";
  const next = tokens[place + 1]?.text ?? "";
  if ((here === "nine" || here === "999") && EMERGENCY_NUMBER.test(`${here} ${next} ${tokens[place + 2]?.text}`)) return !/^(ring|call|dial|phone|the|for|to)$/.test(before);
  // "Don't go fiddling with how many you have".
  if (TAKES_A_CLAUSE.has(before) || (tokens[place - 2]?.text === "how" && /^(many|much|often|long|far)$/.test(before))) return false;
  switch (here) {
    case "i":
    case "he":
    case "she":
    case "we":
    case "they":
      return true;
    case "you":
      return MODAL.test(next) || (next !== "" && tokens[place]!.after === "" && !next.endsWith("ly") && !NOT_WITH_YOU.test(next) && !DONE_TO_YOU.has(before));
    case "it":
    case "this":
      return (MODAL.test(next) && next !== "need" && next !== "have" && next !== "do" && next !== "are") || SUBJECT_VERBS.has(next) || (here === "this" && namesSubject(tokens, place));
    case "there":
      return next === "is" || next === "are";
    case "the":
    case "your":
    case "these":
      return namesSubject(tokens, place);
    case "its":
      return /^(too|very|so|all|just|really|only|not|got|been|going|easier|better)$/.test(next);
    case "or":
      return /^(he|she|they|his|her|their|your|its?)$/.test(next) && place + 3 < tokens.length && (opensSubject(tokens.slice(place + 1, place + 6), 0) || namesSubject(tokens, place + 1));
    case "do":
    case "does":
    case "did":
    case "are":
    case "is":
      return !OUTRIGHT_ENDS.has(before) && !/^(way|point|stage|event)$/.test(before) && /^(you|your|it|they|he|she|there)$/.test(next);
    default:
      return false;
  }
}

/** "the syrup is too slow", "this card goes in your purse". */
function namesSubject(tokens: readonly Token[], place: number): boolean {
  for (let verb = place + 2; verb <= place + 3 && verb < tokens.length; verb += 1) {
    const { text } = tokens[verb]!;
    // "The one you are using" is a thing.
    if (/^(i|you|we|he|she|they)$/.test(tokens[verb - 1]!.text)) return false;
    if (tokens[verb - 1]!.after !== "" || (TAKES_A_CLAUSE.has(tokens[verb - 1]!.text) && !/^ones?$/.test(tokens[verb - 1]!.text))) return false;
    if (/s$/.test(tokens[verb - 1]!.text) && /^(look|feel|go|turn|get|hurt|start|seem)$/.test(text)) return true;
    if (SUBJECT_VERBS.has(text) || /^(will|would|can|should|must|is|are|has)$/.test(text)) return true;
  }
  return false;
}
