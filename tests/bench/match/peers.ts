import Fuse from "fuse.js";
import { token_set_ratio as tokenSet } from "fuzzball";
import TfIdf from "natural/lib/natural/tfidf/tfidf.js";
import { readPhrase } from "../../../src/matching/phrase.ts";
import { rubricNamed, type Passage } from "./passages.ts";

/** How much a passage resembles the element's acceptable responses, higher is more alike; each peer has its own scale. */
export type Peer = (passage: Passage) => number;

/** The element's acceptable responses written out, a quantity as it stands in the rubric. */
function responsesFor(passage: Passage): string[] {
  const key = `${passage.rubric}/${passage.item}/${passage.element}`;
  let known = written.get(key);
  if (known === undefined) {
    const rubric = rubricNamed(passage.rubric);
    const element = rubric.sections.flatMap(({ items }) => items).find(({ id }) => id === passage.item)!.elements.find(({ id }) => id === passage.element)!;
    const quantity = element.quantity === undefined ? undefined : "label" in element.quantity ? rubric.scenario.label[element.quantity.label]?.quantity : element.quantity;
    const number = quantity !== undefined && "value" in quantity ? `${[quantity.value].flat().join(" to ")} ${quantity.unit}` : "";
    known = element.say.flatMap((phrase) => readPhrase(phrase).map((slots) => slots.map((slot) => (slot === "quantity" ? number : slot === "name" ? "robin" : slot.words[0]!)).join(" ")));
    written.set(key, known);
  }
  return known;
}
const written = new Map<string, string[]>();

/** What the candidate said: a peer that knows no roles still gets only the candidate's words. */
const saidIn = (passage: Passage): string => passage.turns.filter(({ role }) => role === "candidate").map(({ says }) => says.toLowerCase().replace(/[^\p{L}\p{N}' ]/gu, " ")).join(" ").replace(/\s+/g, " ").trim();

const best = (passage: Passage, alike: (said: string, response: string) => number): number => {
  const said = saidIn(passage);
  return Math.max(0, ...responsesFor(passage).map((response) => alike(said, response)));
};

const exactPhrase: Peer = (passage) => best(passage, (said, response) => (` ${said} `.includes(` ${response} `) ? 1 : 0));

/** Highest cosine of natural's TF-IDF vectors with a response; inverse document frequencies from the rubric's own responses. */
const tfIdfCosine: Peer = (passage) => {
  const corpus = corpusOf(passage.rubric);
  const vector = (text: string) => {
    const counts = new Map<string, number>();
    for (const word of text.split(" ")) counts.set(word, (counts.get(word) ?? 0) + 1);
    return new Map([...counts].map(([word, count]) => [word, count * corpus.idf(word)]));
  };
  const norm = (of: Map<string, number>) => Math.sqrt([...of.values()].reduce((sum, value) => sum + value * value, 0));
  return best(passage, (said, response) => {
    const [a, b] = [vector(said), vector(response)];
    let dot = 0;
    for (const [word, value] of a) dot += value * (b.get(word) ?? 0);
    return dot / (norm(a) * norm(b) || 1);
  });
};

const corpora = new Map<string, { idf: (word: string) => number }>();
function corpusOf(name: string): { idf: (word: string) => number } {
  let corpus = corpora.get(name);
  if (corpus === undefined) {
    const model = new TfIdf();
    for (const { items } of rubricNamed(name).sections) for (const item of items) for (const element of item.elements) for (const phrase of element.say) model.addDocument(phrase.replace(/[(){}|]/g, " "));
    const cache = new Map<string, number>();
    corpus = {
      idf: (word) => {
        if (!cache.has(word)) cache.set(word, model.idf(word));
        return cache.get(word)!;
      },
    };
    corpora.set(name, corpus);
  }
  return corpus;
}

/** The fuzzy search looks each response up in the passage. Its score is 0 for a perfect find and 1 for none. */
const fuzzySearch: Peer = (passage) =>
  best(passage, (said, response) => 1 - (new Fuse([said], { includeScore: true, ignoreLocation: true, threshold: 1 }).search(response.slice(0, 64))[0]?.score ?? 1));

const tokenSetRatio: Peer = (passage) => best(passage, (said, response) => tokenSet(said, response));

export const PEERS: Record<string, Peer> = { "exact phrase": exactPhrase, "TF-IDF cosine (natural)": tfIdfCosine, "fuzzy search (fuse.js)": fuzzySearch, "token-set ratio (fuzzball)": tokenSetRatio };

/** The threshold with the best F1 on the tuning side. */
export function thresholdFor(scored: readonly { score: number; truth: boolean }[]): number {
  const positives = scored.filter(({ truth }) => truth).length;
  let best = { f1: -1, threshold: Infinity };
  let hit = 0;
  const ranked = [...scored].sort((a, b) => b.score - a.score);
  ranked.forEach(({ score, truth }, place) => {
    if (truth) hit += 1;
    if (ranked[place + 1]?.score === score) return;
    const f1 = (2 * hit) / (place + 1 + positives);
    if (f1 > best.f1) best = { f1, threshold: score };
  });
  return best.threshold;
}
