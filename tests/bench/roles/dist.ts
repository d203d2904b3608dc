import { readCorpora, readCorrections, correct, CORPORA } from "./corpora.ts";
import { strip } from "./strip.ts";
import { example, train } from "./train.ts";
import { goldSentenceEnds } from "./measure.ts";
import { chainScores } from "../../../src/station/role-model.ts";
import { marginals } from "../../../src/station/chain.ts";
import { tokenise } from "../../../src/station/token.ts";
const all = correct(readCorpora("/work/shared/data"), readCorrections("tests/bench/roles/corrections.yaml"));
const foldOf = new Map<string, number>();
for (const c of CORPORA) all.filter((e) => e.corpus === c).forEach((e, at) => foldOf.set(e.id, at % 5));
const corpus = process.argv[2];
const bins: Record<string, [number, number]> = {};
const worst: [number, string][] = [];
for (let fold = 0; fold < 5; fold++) {
  const tr = all.filter((e) => foldOf.get(e.id) !== fold), te = all.filter((e) => foldOf.get(e.id) === fold && e.corpus === corpus);
  const w = train(tr.flatMap((e) => [example(strip(e, "written")), example(strip(e, "bare", "anywhere"))]), { epochs: 10, rate: 0.1, decay: 0.002, least: 4, dropout: 0.6, seed: 1, keep: 1e9 });
  const table = new Float32Array(1 << 24);
  for (const [h, x] of w) table[h] = x;
  for (const e of te) {
    const st = strip(e, "written"), toks = tokenise(st.transcript);
    const m = marginals(chainScores(example(st).features, { table, scale: 1 })).candidate;
    let from = 0, bad = 0;
    for (const end of goldSentenceEnds(e)) {
      const g = st.sides[toks[from]!.word]!;
      const n = end - from, b = n <= 1 ? "1" : n <= 3 ? "2-3" : n <= 7 ? "4-7" : n <= 15 ? "8-15" : "16+";
      const k = (bins[g + " " + b] ??= [0, 0]);
      for (let i = from; i < end; i++) { k[0]++; if ((m[i]! >= 0.5) !== (g === "candidate")) { k[1]++; bad++; } }
      from = end;
    }
    worst.push([bad / toks.length, e.id]);
  }
}
let tot = 0; for (const k in bins) tot += bins[k]![1];
for (const k of Object.keys(bins).sort()) console.log(k.padEnd(20), bins[k]![0], bins[k]![1], (bins[k]![1] / bins[k]![0]).toFixed(3), "share of errors", (bins[k]![1] / tot).toFixed(3));
console.log(worst.sort((a, b) => b[0] - a[0]).slice(0, 15).map((x) => x[1] + " " + x[0].toFixed(3)).join("\n"));
