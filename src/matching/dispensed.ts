import { wordWeight } from "../language/lexicon.ts";
import { DISPENSES } from "../language/dispenses.ts";
import { clausesAround, sentenceUpTo, type Stream } from "./stream.ts";
import { tokensOf, type Window } from "./windows.ts";

/** From here on the passage has enough of the response to be what is dispensed with. */
export const DISPENSED_ACCEPTED = 0.6;
/** Small words between the dispensing and what is dispensed with: "no need to go and rinse it", "to tell the dentist". */
const BETWEEN = 3;
/** A word of this weight is not small: it is what is dispensed with itself. */
const WEIGHTY = 1;
/** A word of the response this heavy, beside the heaviest that is said, must be dispensed with. */
const WEIGHTY_SHARE = 0.5;
/** A word that may only stand for the response's ("pen" for "written") dispenses with nothing of it. */
const SAME_WORD = 0.95;
/** With one of these it is only how that need not be: "no need to shake it hard". */
const TELLS_HOW = /^(too|hard|fully|much|long|more|less|than|quickly|fast)$/;
/** And with one of these, where the response has it not, only when or in which case: "no need to ring again". */
const QUALIFIES = /^(before|until|till|unless|if|when|once|while|yet|again|every|each|always|all|today|now|yourself|myself|twice|first|else|another|except|apart|so|that|time|times|straight)$/;
/** So soon behind it the case is named in which it need not be done. */
const CASE_WITHIN = 2;
const NAMES_A_CASE = /^(if|when|unless|until|till|while|once|after|before|as|except|apart|with|for|in|on)$/;

/**
 * Whether the passage says of what the response tells to do that it need not be done, in so many words and of nothing
 * else: "no need to rinse your mouth". Elsewhere in a whole station a denial is mostly of something near by.
 */
export function isDispensedWith(window: Window, stream: Stream): boolean {
  const { tokens, polarity } = stream;
  if (window.response.terms.some(({ negated, weight }) => negated && weight > 0)) return false;
  const heaviest = Math.max(...window.aligned.map(({ term }) => window.response.terms[term]!.weight));
  const weighty = window.aligned.filter(({ term }) => window.response.terms[term]!.weight >= WEIGHTY_SHARE * heaviest);
  if (!weighty.every(({ hit, quality }) => quality >= SAME_WORD && polarity[hit.first]!.negated)) return false;
  const first = Math.min(...weighty.map(({ hit }) => hit.first));
  const last = Math.max(...weighty.map(({ hit }) => hit.end));
  const dispensing = DISPENSES.find(tokens, clausesAround(stream, window).first, first).find(({ end }) => end <= first && first - end <= BETWEEN && light(stream, end, first));
  if (dispensing === undefined) return false;
  if (namesAnother(stream, last)) return false;
  const own = tokensOf(window);
  for (let place = first; place < sentenceUpTo(stream, last, CASE_WITHIN); place += 1) {
    const { text, stem } = tokens[place]!;
    if (TELLS_HOW.test(text)) return false;
    if (own.has(place)) continue;
    if (QUALIFIES.test(text) || (place < last ? wordWeight(stem) >= WEIGHTY : NAMES_A_CASE.test(text))) return false;
  }
  return true;
}

/** Do something themselves: "no need to take her jeans off" dispenses with the taking, not with the jeans. */
const DOES = /^(take|taking|put|putting|get|getting|keep|keeping|leave|leaving|give|giving|pull|pulling|make|making|let|turn|turning)$/;

function light({ tokens }: Stream, first: number, end: number): boolean {
  for (let place = first; place < end; place += 1) if (wordWeight(tokens[place]!.stem) >= WEIGHTY || DOES.test(tokens[place]!.text)) return false;
  return true;
}

const DETERMINES = /^(your|the|a|an|her|his|their|my|any|all)$/;

/** Whether a thing is named right behind that is none of the response's: "you needn't tell them your life story". */
function namesAnother({ tokens, clauseOf }: Stream, last: number): boolean {
  if (!DETERMINES.test(tokens[last]?.text ?? "") || clauseOf[last] !== clauseOf[last - 1]) return false;
  return wordWeight(tokens[last + 1]?.stem ?? "") >= WEIGHTY;
}
