import { readCorpora, readCorrections, correct, CORPORA } from "./corpora.ts";
import { strip, type Stripped } from "./strip.ts";
import { example, train, type Weights, type Example } from "./train.ts";
import { add, emptyTally, goldSentenceEnds, line } from "./measure.ts";
import { bayesLabels, trainBayes } from "./baseline.ts";
import { chainScores } from "../../../src/station/role-model.ts";
import { marginals, viterbi } from "../../../src/station/chain.ts";
import { existsSync } from "node:fs";
import { inventedTalks } from "./invented.ts";

const arg = (name: string, or: string) => { const at = process.argv.indexOf(`--${name}`); return at < 0 ? or : process.argv[at + 1]!; };
let all = readCorpora("/work/shared/data");
if (existsSync("tests/bench/roles/corrections.yaml")) all = correct(all, readCorrections("tests/bench/roles/corrections.yaml"));
console.log(all.length);
const folds = Number(arg("folds", "5"));
const only = Number(arg("only", "99"));
const foldOf = new Map<string, number>();
for (const c of CORPORA) all.filter((e) => e.corpus === c).forEach((e, at) => foldOf.set(e.id, at % folds));
const styles = arg("styles", "written,bare").split(",") as ("written" | "bare")[];
const t0 = performance.now();
const cache = new Map<string, Example[]>();
const exs = (id: string) => {
  let r = cache.get(id);
  if (!r) { const e = all.find((x) => x.id === id)!; r = styles.map((s, k) => example(strip(e, s, k % 2 ? "anywhere" : "turns"))); cache.set(id, r); }
  return r;
};
const opts = { epochs: Number(arg("epochs", "8")), rate: Number(arg("rate", "0.1")), decay: Number(arg("decay", "0.002")), least: Number(arg("least", "3")), dropout: Number(arg("dropout", "0.2")), seed: 1, keep: Number(arg("keep", "1e9")) };
console.log(JSON.stringify(opts));
const nInv = Number(arg("inv", "3"));
const inv = nInv ? inventedTalks("tests/bench/roles/invented.yaml", nInv).flatMap((e) => [example(strip(e, "written"), Number(arg("invw", "1"))), example(strip(e, "bare", "anywhere"), Number(arg("invw", "1")))]) : [];
const tallies: Record<string, ReturnType<typeof emptyTally>> = {};
const t = (k: string) => (tallies[k] ??= emptyTally());
function evaluate(tag: string, weights: Weights, tests: typeof all, bayes?: ReturnType<typeof trainBayes>) {
  const table = new Float32Array(1 << 24);
  for (const [h, w] of weights) table[h] = w;
  for (const e of tests) {
    const ends = goldSentenceEnds(e);
    for (const s of ["written", "bare"] as const) {
      const st: Stripped = strip(e, s);
      const ex = s === "written" ? example(st) : example(st);
      const sc = chainScores(ex.features, { table, scale: 1 });
      const v = arg("decode", "m") === "v" ? viterbi(sc) : Uint8Array.from(marginals(sc).candidate, (p) => (p >= 0.5 ? 0 : 1));
      add(t(`${tag} ${e.corpus} ${s}`), st, v, ends);
      if (bayes) add(t(`${tag} ${e.corpus} ${s} NB`), st, bayesLabels(bayes, st), ends);
    }
  }
}
for (let f = 0; f < Math.min(folds, only); f++) {
  const tr = all.filter((e) => foldOf.get(e.id) !== f), te = all.filter((e) => foldOf.get(e.id) === f);
  const w = train([...tr.flatMap((e) => exs(e.id)), ...inv], opts, f === 0 ? console.log : undefined);
  evaluate("cv", w, te, arg("nb", "") ? trainBayes(tr.map((e) => strip(e, "written"))) : undefined);
  console.log("fold", f, w.size, ((performance.now() - t0) / 1000).toFixed(0) + "s");
}
if (!arg("nolo", "")) for (const c of arg("lo", CORPORA.join(",")).split(",")) {
  const tr = all.filter((e) => e.corpus !== c), te = all.filter((e) => e.corpus === c);
  const w = train([...tr.flatMap((e) => exs(e.id)), ...inv], opts);
  evaluate("lo", w, te, arg("nb", "") ? trainBayes(tr.map((e) => strip(e, "written"))) : undefined);
}
for (const k of Object.keys(tallies).sort()) console.log(k.padEnd(32), line(tallies[k]!), tallies[k]!.swapped.slice(0, 12).join(" "));
console.log(((performance.now() - t0) / 1000).toFixed(0) + "s");
