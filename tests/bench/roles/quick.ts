import { correct, CORPORA, readCorpora, readCorrections } from "./corpora.ts";
import { accuracy, add, emptyTally, goldSentenceEnds, recall, type Tally } from "./measure.ts";
import { fit, foldOf, read, weightsOf } from "./model.ts";
import { CORRECTIONS, DECODING, FOLDS, SETTINGS } from "./settings.ts";
import { strip } from "./strip.ts";
for (const a of process.argv.slice(2)) { const [k, v] = a.split("="); if (k && v && k in SETTINGS) (SETTINGS as any)[k] = Number(v); if (k === "wt") DECODING.punctuated.trust = Number(v); if (k === "bt") DECODING.bare.trust = Number(v); }
const cs = correct(readCorpora("../shared/data"), readCorrections(CORRECTIONS));
const folds = foldOf(cs), T = new Map<string, Tally>();
const t0 = performance.now();
const run = (tag: string, tr: typeof cs, te: typeof cs) => {
  const w = weightsOf(fit(tr));
  for (const e of te) for (const s of ["written", "bare"] as const) { const k = `${tag} ${e.corpus} ${s}`; if (!T.has(k)) T.set(k, emptyTally()); const st = strip(e, s); add(T.get(k)!, st, read(w, st).labels, goldSentenceEnds(e)); }
};
const nf = process.argv.includes("one") ? 2 : FOLDS;
for (let f = 0; f < nf; f++) run("cv", cs.filter((e) => folds.get(e.id) !== f), cs.filter((e) => folds.get(e.id) === f));
if (process.argv.includes("lo")) for (const c of CORPORA) run("lo", cs.filter((e) => e.corpus !== c), cs.filter((e) => e.corpus === c));
console.log(process.argv.slice(2).join(" "), ((performance.now() - t0) / 1000).toFixed(0) + "s");
for (const [k, t] of [...T].sort()) console.log("  " + k.padEnd(26), accuracy(t).toFixed(3), "long", recall(t).toFixed(3), "short", (t.shortRecalled / t.shortSentences).toFixed(3));
