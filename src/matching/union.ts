import type { CompiledElement } from "./compile.ts";
import type { Postings } from "./postings.ts";
import type { TermIndex } from "./term-index.ts";
import type { Window } from "./windows.ts";

/** How much the words of the element's other responses can lift a passage. */
const UNION_SHARE = 0.3;

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
export function withUnion(element: CompiledElement, window: Window, postings: Postings): number {
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
