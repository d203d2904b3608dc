import { readCorpora, readCorrections, correct, CORPORA } from "./corpora.ts";
import { strip } from "./strip.ts";
import { example, train } from "./train.ts";
import { chainScores } from "../../../src/station/role-model.ts";
import { marginals } from "../../../src/station/chain.ts";
import { tokenise } from "../../../src/station/token.ts";
const all = correct(readCorpora("/work/shared/data"), readCorrections("tests/bench/roles/corrections.yaml"));
const foldOf = new Map<string, number>();
for (const c of CORPORA) all.filter((e) => e.corpus === c).forEach((e, at) => foldOf.set(e.id, at % 5));
const corpus = process.argv[2], fold = Number(process.argv[3] ?? 0), style = (process.argv[4] ?? "written") as "written";
const tr = all.filter((e) => foldOf.get(e.id) !== fold), te = all.filter((e) => foldOf.get(e.id) === fold && e.corpus === corpus);
const w = train(tr.flatMap((e) => [example(strip(e, "written")), example(strip(e, "bare", "anywhere"))]), { epochs: 6, rate: 0.1, decay: 0.002, least: 5, dropout: 0.5, seed: 1, keep: 1e9 });
const table = new Float32Array(1 << 24);
for (const [h, x] of w) table[h] = x;
for (const e of te.filter((e) => !process.argv[5] || process.argv[5].split(",").includes(e.id))) {
  const st = strip(e, style), toks = tokenise(st.transcript);
  const m = marginals(chainScores(example(st).features, { table, scale: 1 })).candidate;
  console.log("=====", e.id);
  let out = "";
  let lastTurn = -1;
  toks.forEach((t, i) => {
    const g = st.sides[t.word] === "candidate" ? "C" : "P", p = m[i]! >= 0.5 ? "C" : "P";
    if (st.turns[t.word] !== lastTurn) out += `\n${g}: `;
    lastTurn = st.turns[t.word]!;
    const text = st.transcript.words[t.word]!.text + (st.transcript.words[t.word + 1] && !/[\p{L}\p{N}]/u.test(st.transcript.words[t.word + 1]!.text) ? st.transcript.words[t.word + 1]!.text : "");
    out += g === p ? text + " " : `*${text.toUpperCase()} `;
  });
  console.log(out);
}
