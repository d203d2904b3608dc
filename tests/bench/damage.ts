// `npm run bench:damage [-- --check]`: what speech-recognition damage costs. Homophones are put into the demo
// rehearsals, and the labelled passages are damaged: 10% of their words anywhere, 20% clustered on numbers and on the
// rubric's rarest words (drugs and devices). Texts are invented; sounds come from the CMU Pronouncing Dictionary.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import { mark } from "../../src/mark.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import type { Transcript } from "../../src/transcript/types.ts";
import { bare, damaged, homophonesOf } from "./match/damage.ts";
import { readPassages, rubricNamed } from "./match/passages.ts";
import { seededRandom } from "../../src/cohort/statistics/random.ts";
import { scoresOf } from "./match/scores.ts";
import { toolReading } from "./match/tool.ts";

/** Issue 3. */
const BAR = { homophones: 0.01, spread: 0.03, clustered: 0.08 };
const SEEDS = [1, 2, 3, 4, 5];
/** So many of the words that have a homophone are replaced by it. */
const REPLACED = 0.2;

const FOLDER = "fixtures/rehearsals";
let marks = 0;
let changed = 0;
let toListen = 0;
let newUnsafe = 0;
let replaced = 0;
for (const { file, rubric } of parse(readFileSync(join(FOLDER, "index.yaml"), "utf8")) as { file: string; rubric: string }[]) {
  const transcript = readTranscript(readFileSync(join(FOLDER, file)), { file });
  const before = mark(transcript, rubricNamed(rubric));
  for (const seed of SEEDS) {
    const after = mark(withHomophones(transcript, seededRandom(seed)), rubricNamed(rubric));
    before.items.forEach((item, place) => {
      const now = after.items[place]!;
      marks += 1;
      if (now.content === item.content) return;
      if (now.listen || now.content === "cannot-tell") toListen += 1;
      else changed += 1;
    });
    const standing = new Set(before.unsafe.found.filter(({ corrected, listen }) => !corrected && !listen).map(({ id }) => id));
    newUnsafe += after.unsafe.found.filter(({ id, corrected, listen }) => !corrected && !listen && !standing.has(id)).length;
  }
}

function withHomophones(transcript: Transcript, random: () => number): Transcript {
  return {
    ...transcript,
    words: transcript.words.map((word) => {
      const plain = bare(word.text);
      const same = word.kind === "word" ? homophonesOf(plain) : [];
      if (same.length === 0 || random() > REPLACED) return word;
      replaced += 1;
      return { ...word, text: word.text.toLowerCase().replace(plain, same[Math.floor(random() * same.length)]!) };
    }),
  };
}

console.log("# Speech-recognition damage\n");
console.log(`Homophones in the demo rehearsals: ${replaced} words replaced in ${SEEDS.length} rounds, ${marks} marks; ${changed} changed other than to "listen" (${((100 * changed) / marks).toFixed(2)}%), ${toListen} changed and ask to listen, ${newUnsafe} new unsafe statements.\n`);

const passages = readPassages().filter(({ side }) => side === "unseen");
const rare = new Map<string, (word: string) => boolean>();
for (const name of new Set(passages.map(({ rubric }) => rubric))) {
  const title = new Set(`${rubricNamed(name).title} ${Object.values(rubricNamed(name).scenario.label).map(({ text }) => text).join(" ")}`.toLowerCase().split(/[^a-z]+/).filter((word) => word.length > 4));
  rare.set(name, (word) => title.has(word) || /^\d|^(one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|fifty|half|once|twice)$/.test(word));
}
const f1 = (share: number, clustered: boolean, seed: number) => {
  const random = seededRandom(seed);
  return scoresOf(
    passages.map((passage) => {
      const turns = passage.turns.map((turn) => ({ ...turn, says: share === 0 ? turn.says : damaged(turn.says, share, random, clustered ? rare.get(passage.rubric) : undefined) }));
      return { truth: passage.label === "right", given: toolReading({ ...passage, turns }).label === "right", pair: passage.pair };
    }),
  ).f1;
};
const whole = f1(0, false, 0);
const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const spread = mean(SEEDS.map((seed) => f1(0.1, false, seed)));
const clustered = mean(SEEDS.map((seed) => f1(0.2, true, seed)));
console.log(`| passages of the unseen side (${passages.length}) | F1 | loss |\n|---|---|---|`);
console.log(`| as written | ${whole.toFixed(3)} | |\n| 10% of the words, anywhere | ${spread.toFixed(3)} | ${(whole - spread).toFixed(3)} |\n| 20%, clustered on drug, device and number words | ${clustered.toFixed(3)} | ${(whole - clustered).toFixed(3)} |`);
const met = changed / marks <= BAR.homophones && newUnsafe === 0 && whole - spread <= BAR.spread && whole - clustered <= BAR.clustered;
console.log(`\nBars: ${100 * BAR.homophones}% of marks, no new unsafe statement, losses ${BAR.spread} and ${BAR.clustered}. ${met ? "Met" : "NOT met"}.`);
if (process.argv.includes("--check") && !met) process.exitCode = 1;
