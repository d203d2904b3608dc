import { meets } from "../station/span.ts";
import type { Passage } from "./passages.ts";
import { isCounted } from "./quantity-gate.ts";
import { tokensOf } from "./windows.ts";

/** A passage whose words are mostly spoken for by a better fit of another item was meant for that item. */
const SPOKEN_FOR = 0.7;
/** So much worse a fit is worse; nearer than that both may stand (two items in one breath). */
const CLEARLY_BETTER = 0.06;

/**
 * Orders the passages of the whole station by fit and closes those whose words a better one has taken, so that one
 * sentence does not pay twice where it should not.
 * @param passages open ones only.
 */
export function assign(passages: readonly Passage[]): { kept: Passage[]; lookAlikes: Passage[] } {
  const owners = new Map<number, Passage[]>();
  const kept: Passage[] = [];
  const lookAlikes: Passage[] = [];
  const ranked = [...passages].sort((a, b) => b.coverage - a.coverage || weightOf(b) - weightOf(a) || a.first - b.first);
  for (const passage of ranked) {
    if (takenBy(passage, owners)) {
      lookAlikes.push(passage);
      continue;
    }
    kept.push(passage);
    for (const { hit } of passage.window.aligned) {
      for (let place = hit.first; place < hit.end; place += 1) {
        const list = owners.get(place);
        if (list) list.push(passage);
        else owners.set(place, [passage]);
      }
    }
  }
  kept.sort((a, b) => a.first - b.first);
  return { kept, lookAlikes };
}

/** Of a wrong statement a word this heavy, beside its heaviest, may not be another passage's. */
const HEAVY = 0.5;
/** A passage this likely says its own element. */
const SURELY_MEANT = 0.5;
/** So much of a wrong statement in the words of another, longer passage was meant there. */
const MOST_OF_IT = 0.6;

/**
 * What is held against somebody, without what was meant for something else. "Once a week", said of the cleaning, is no
 * wrong number for how often it is used; "two lots to catch up" does not call off the follow-up.
 * @param among all passages of the stream with their likelihood.
 */
export function withoutOthersWords(passages: readonly Passage[], among: readonly Passage[]): Passage[] {
  return passages.filter((passage) => {
    if (passage.verdict !== "wrong") return true;
    if (restsOnOneWord(passage)) return false;
    return !among.some((other) => other.element !== passage.element && other.verdict === "right" && (other.likelihood ?? 0) >= SURELY_MEANT && meantFor(other, passage));
  });
}

const NUMBER = "{quantity}";
/** A wrong statement of so many words is not said by one of them ("skip it" is not "skip it on good days"). */
const SEVERAL_WORDS = 4;
/** Said so nearly whole it rests on all its words. */
const WHOLE = 0.9;

function restsOnOneWord({ element, window: { response, aligned, coverage } }: Passage): boolean {
  // "You don't have to shake it" has one word besides its denial, and the denial is the other that was said.
  if (coverage >= WHOLE || aligned.some(({ term }) => response.terms[term]!.negated)) return false;
  return element.incorrect.includes(response) && response.length >= SEVERAL_WORDS && aligned.every(({ term, hit }) => response.terms[term]!.weight === 0 || hit.first === aligned[0]!.hit.first);
}

/** A wrong statement that has so many times the weight of another passage in words of its own was meant by itself. */
const FAR_MORE = 2;

/** "Count to sixty, then pop your lenses back": the count is right for something else, and so short that all the rest speaks of the lenses. */
function saysMore(wrong: Passage, other: Passage): boolean {
  return wrong.coverage >= WHOLE_ENOUGH && ownWeight(wrong, other) > FAR_MORE * ownWeight(other, wrong);
}
const WHOLE_ENOUGH = 0.85;

/** "Ten of the tablets in one go on the Monday": nothing of the Monday takes the ten, which counts what the element counts. */
function countsItsOwn({ quantity, element, coverage }: Passage, other: Passage): boolean {
  if (quantity?.unit == null || coverage < WHOLE || quantity.unit !== element.quantity?.unit || !isCounted(element.quantity)) return false;
  return other.quantity === undefined && !other.window.aligned.some(({ hit }) => hit.first <= quantity.first && quantity.first < hit.end);
}

/** Weight of the words of a passage, its number aside, that another does not have. */
function ownWeight({ window: { aligned, response } }: Passage, other: Passage): number {
  const theirs = other.window.aligned;
  return aligned.reduce((sum, { term, hit, quality }) => (response.terms[term]!.text === NUMBER || theirs.some((aligned) => meets(aligned.hit, hit)) ? sum : sum + response.terms[term]!.weight * quality), 0);
}

/** Whether the words of a wrong statement are those of another passage, which says more with them. */
function meantFor(other: Passage, wrong: Passage): boolean {
  if (saysMore(wrong, other) || countsItsOwn(wrong, other)) return false;
  if (wrong.quantity !== undefined && other.quantity?.first === wrong.quantity.first) return true;
  const { terms } = wrong.window.response;
  const heaviest = Math.max(...terms.map(({ weight }) => weight));
  let all = 0;
  let shared = 0;
  let tokens = 0;
  for (const { term, hit, quality } of wrong.window.aligned) {
    const { weight, text } = terms[term]!;
    all += weight;
    const theirs = other.window.aligned.find((aligned) => meets(aligned.hit, hit));
    if (theirs === undefined) continue;
    // Their own word, which here only stands for another.
    if (text !== NUMBER && quality < 1 && theirs.quality > quality && weight >= HEAVY * heaviest) return true;
    shared += weight;
    tokens += 1;
  }
  // Only what has a weighty word of its own says more.
  const own = other.window.aligned.some(({ term, hit }) => other.window.response.terms[term]!.weight >= HEAVY * heaviest && !wrong.window.aligned.some((aligned) => meets(aligned.hit, hit)));
  if (all === 0 || tokens === 0 || !own) return false;
  // "Put your head right back" with a word of its own in the middle is not "put them right back".
  return shared / all >= MOST_OF_IT || (other.coverage > wrong.coverage && other.first >= wrong.first && other.end <= wrong.end);
}

function weightOf(passage: Passage): number {
  return passage.window.aligned.reduce((sum, { term }) => sum + passage.window.response.terms[term]!.weight, 0);
}

function takenBy(passage: Passage, owners: ReadonlyMap<number, Passage[]>): boolean {
  const shares = new Map<Passage, number>();
  let all = 0;
  for (const { term, hit } of passage.window.aligned) {
    const { weight } = passage.window.response.terms[term]!;
    all += weight;
    for (const owner of owners.get(hit.first) ?? []) shares.set(owner, (shares.get(owner) ?? 0) + weight);
  }
  for (const [owner, share] of shares) {
    if (owner.element === passage.element) return true;
    // The elements of one item are meant to be said together: "two sprays up each nostril".
    if (owner.element.item === passage.element.item) continue;
    // The better fit must also say more than the words they share, or the two simply ask for the same thing.
    if (share / all > SPOKEN_FOR && owner.coverage - passage.coverage > CLEARLY_BETTER && tokensOf(owner.window).size > tokensOf(passage.window).size) return true;
  }
  return false;
}
