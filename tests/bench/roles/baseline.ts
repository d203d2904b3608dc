// The baseline: naive Bayes on word unigrams and bigrams of each sentence, and a two-state Viterbi pass over sentences.
import { viterbi } from "../../../src/station/chain.ts";
import { MARK, tokenise, type Token } from "../../../src/station/token.ts";
import type { Stripped } from "./strip.ts";

/** Without punctuation there are no sentences: chunks of so many words stand in. */
const CHUNK_WORDS = 12;

function chunks(tokens: Token[]): [number, number][] {
  const spans: [number, number][] = [];
  let from = 0;
  tokens.forEach((token, at) => {
    const next = tokens[at + 1];
    if (token.mark < MARK.stop && next !== undefined && !next.opensSegment && at + 1 - from < CHUNK_WORDS * 3) return;
    for (let start = from; start <= at; start += CHUNK_WORDS) {
      // A written sentence stays whole; a long stretch without a mark is cut.
      const whole = token.mark >= MARK.stop;
      spans.push([start, whole ? at + 1 : Math.min(at + 1, start + CHUNK_WORDS)]);
      if (whole) break;
    }
    from = at + 1;
  });
  return spans;
}

function grams(tokens: Token[], from: number, end: number): string[] {
  const found: string[] = [];
  for (let at = from; at < end; at++) {
    found.push(tokens[at]!.norm);
    if (at + 1 < end) found.push(`${tokens[at]!.norm} ${tokens[at + 1]!.norm}`);
    if (tokens[at]!.mark === MARK.question) found.push("?");
  }
  return found;
}

export interface Bayes {
  logOdds: Map<string, number>;
  change: [number, number];
}

export function trainBayes(data: Stripped[]): Bayes {
  const counts = new Map<string, [number, number]>();
  const totals = [0, 0];
  const changes = [1, 1];
  const stays = [1, 1];
  for (const each of data) {
    const tokens = tokenise(each.transcript);
    let before = -1;
    for (const [from, end] of chunks(tokens)) {
      const patient = tokens.slice(from, end).filter((token) => each.sides[token.word] === "patient").length;
      const label = patient * 2 > end - from ? 1 : 0;
      if (before >= 0) (before === label ? stays : changes)[before]!++;
      before = label;
      for (const gram of grams(tokens, from, end)) {
        const pair = counts.get(gram) ?? [0, 0];
        pair[label]!++;
        totals[label]!++;
        counts.set(gram, pair);
      }
    }
  }
  const size = counts.size;
  const logOdds = new Map([...counts].map(([gram, [a, b]]) => [gram, Math.log((a + 0.5) / (totals[0]! + size / 2)) - Math.log((b + 0.5) / (totals[1]! + size / 2))]));
  return { logOdds, change: [Math.log(changes[0]! / stays[0]!), Math.log(changes[1]! / stays[1]!)] };
}

/** 0 candidate, 1 patient, by token. */
export function bayesLabels(bayes: Bayes, each: Stripped): Uint8Array {
  const tokens = tokenise(each.transcript);
  const spans = chunks(tokens);
  const emission = Float64Array.from(spans, ([from, end]) => grams(tokens, from, end).reduce((sum, gram) => sum + (bayes.logOdds.get(gram) ?? 0), 0));
  const best = viterbi({
    emission,
    toPatient: new Float64Array(spans.length).fill(bayes.change[0]),
    toCandidate: new Float64Array(spans.length).fill(bayes.change[1]),
  });
  const labels = new Uint8Array(tokens.length);
  spans.forEach(([from, end], at) => labels.fill(best[at]!, from, end));
  return labels;
}
