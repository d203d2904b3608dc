// `npm run bench:speed [-- --check]`: transcripts a second on one core (about 1,000 words, 25 items), beside reading
// the same files with times and tokenising them, and beside the token-set peer over the same texts. Ratios of one run.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { token_set_ratio as tokenSet } from "fuzzball";
import { parse } from "yaml";
import { tokenise } from "../../src/language/token.ts";
import { compiledRubric } from "../../src/mark.ts";
import { matchStation } from "../../src/matching/match.ts";
import { readPhrase } from "../../src/matching/phrase.ts";
import { findStation } from "../../src/station/find.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import { rubricNamed } from "./match/passages.ts";

/** Issue 3. */
const BAR = { reading: 12, peer: 40 };
const ROUNDS = 8;
const WARM_UP = 4;

const folder = "fixtures/rehearsals";
const files = (parse(readFileSync(join(folder, "index.yaml"), "utf8")) as { file: string; rubric: string }[]).map(({ file, rubric }) => ({ file, bytes: readFileSync(join(folder, file)), rubric: rubricNamed(rubric) }));
const stations = files.map(({ file, bytes, rubric }) => ({ station: findStation(readTranscript(bytes, { file }), {}), rubric: compiledRubric(rubric), source: rubric }));
const words = stations.reduce((sum, { station }) => sum + station.transcript.words.length, 0) / stations.length;

/** Milliseconds a file, the best of the rounds: what else the machine does only ever adds. */
function time(work: () => void): number {
  let best = Infinity;
  for (let round = 0; round < ROUNDS + WARM_UP; round += 1) {
    const start = performance.now();
    work();
    if (round >= WARM_UP) best = Math.min(best, performance.now() - start);
  }
  return best / files.length;
}

const reading = time(() => {
  for (const { file, bytes } of files) tokenise(readTranscript(bytes, { file }).words.map(({ text }) => text));
});
const matching = time(() => {
  for (const { station, rubric } of stations) matchStation(station, rubric);
});

/** Every response of every element against every sentence of the candidate, as the peer would have to. */
const texts = stations.map(({ station, source }) => ({
  sentences: station.sentences.filter(({ role, inStation }) => role === "candidate" && inStation).map(({ first, end }) => station.transcript.words.slice(first, end).map(({ text }) => text).join(" ").toLowerCase()),
  responses: source.sections.flatMap(({ items }) => items.flatMap(({ elements }) => elements.flatMap(({ say }) => say.flatMap((phrase) => readPhrase(phrase).map((slots) => slots.map((slot) => (typeof slot === "string" ? "ten" : slot.words[0]!)).join(" ")))))),
}));
const start = performance.now();
let sum = 0;
// One rehearsal is enough: it takes seconds.
for (const sentence of texts[0]!.sentences) for (const response of texts[0]!.responses) sum += tokenSet(sentence, response);
const peer = performance.now() - start;

console.log(`# Speed on one core: ${files.length} rehearsals of ${Math.round(words)} words, 25 items\n`);
console.log("| | milliseconds a rehearsal | a second | ratio to matching |\n|---|---|---|---|");
for (const [name, each] of [["matching", matching], ["reading and tokenising", reading], ["token-set peer (fuzzball)", peer]] as const) console.log(`| ${name} | ${each.toFixed(2)} | ${(1000 / each).toFixed(1)} | ${(each / matching).toFixed(2)} |`);
const met = matching / reading <= BAR.reading && peer / matching >= BAR.peer;
console.log(`\nMatching takes ${(matching / reading).toFixed(1)} times as long as reading (bar ${BAR.reading}) and is ${(peer / matching).toFixed(0)} times as fast as the peer (bar ${BAR.peer}). ${met ? "Met" : "NOT met"}.`);
if (Number.isNaN(sum)) throw new Error("the peer gave no figures");
if (process.argv.includes("--check") && !met) process.exitCode = 1;
