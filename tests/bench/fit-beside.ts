// `npm run fit:beside [-- --write]`: fits the curve of src/matching/beside.ts on passages that fit an element: of drills
// (all but d3, which nobody has read), of the practice and the tuning passages, and of annotated talk; all invented. It
// prints what the curve drops of the texts about rubrics left out of the fit. `--write` puts the weights into beside.json.
import { writeFileSync } from "node:fs";
import { compiledRubric } from "../../src/mark.ts";
import { BESIDE_FIGURES, besideOf, TURNED, type Beside } from "../../src/matching/beside.ts";
import type { CompiledRubric } from "../../src/matching/compile.ts";
import { candidatePassages, LIKELY } from "../../src/matching/likelihood.ts";
import type { Passage } from "../../src/matching/passages.ts";
import { postingsOf } from "../../src/matching/postings.ts";
import { streamOf, type Stream } from "../../src/matching/stream.ts";
import { withinReach } from "../../src/matching/within-reach.ts";
import { findStation } from "../../src/station/find.ts";
import { toldStation, type ToldTurn } from "../../src/station/told.ts";
import type { Station } from "../../src/station/types.ts";
import { carriedBy } from "./carried-by.ts";
import { readDrills } from "./match/drill.ts";
import { readPassages, rubricNamed } from "./match/passages.ts";
import { readTalk } from "./match/talk.ts";
import { readRehearsals, type ReaderMarks } from "./rehearsals.ts";
import { fitSparse, scoreOf, type SparseRow } from "./sparse-logistic.ts";

type Collection = "drills" | "passages" | "talk" | "stations";

interface Case extends SparseRow {
  collection: Collection;
  rubric: string;
}

/** Words that fewer passages have are left out, and weights nearer to nought than this. */
const LEAST_PASSAGES = 5;
const LEAST_WEIGHT = 0.1;
/** Mirrored passages are fewer, and closer to the edge. */
const WEIGHT: Record<Collection, number> = { drills: 1, passages: 3, talk: 1, stations: 1 };
/** Rubrics that are left out of the fit together. */
const FOLDS = 4;

const cases: Case[] = [];
/** A rubric as compiled, and the same without what is held against anybody: what a wrong statement would have taken away is learnt from too. */
interface Both {
  full: CompiledRubric;
  bare: CompiledRubric;
}

const rubrics = new Map<string, Both>();

for (const round of ["d1", "d2", "d4", "d5", "d6"]) {
  for (const { rubric, elements } of readDrills(round)) {
    for (const [key, { right, near, wrong }] of Object.entries(elements)) {
      for (const says of right) take(rubric, key, [{ role: "candidate", says }], true, "drills");
      for (const says of [...near, ...wrong]) take(rubric, key, [{ role: "candidate", says }], false, "drills");
    }
  }
}
for (const { rubric, item, element, turns, label } of [...readPassages().filter(({ side }) => side === "tuning"), ...readPassages("fixtures/passages-practice")]) {
  if (label !== "unclear") take(rubric, `${item}/${element}`, turns, label === "right", "passages");
}
for (const talk of readTalk()) {
  for (const { passage, stream, elements } of fitting(talk.rubric, talk.turns, "full")) {
    const says = carriedBy(passage, stream, talk.sentences);
    // What is said elsewhere takes no harm from a passage too many.
    if (!says && talk.elements.get(`${passage.element.item}/${passage.element.element}`)?.said === true) continue;
    add(talk.rubric, besideOf(passage, stream, elements), says, "talk");
  }
}

for (const { transcript, marks } of [...readRehearsals({ practice: true }), ...readRehearsals().filter(({ side }) => side === "tuned")]) {
  const truths = saidByMarks(marks);
  const passages = fittingIn(findStation(transcript), bothOf(marks.rubric), "full").filter(({ passage }) => truths.has(keyOf(passage)));
  for (const each of passages) {
    const says = truths.get(keyOf(each.passage))!;
    // A reader marks elements, not places: where it was said is taken to be the likeliest place.
    if (says && passages.some(({ passage }) => keyOf(passage) === keyOf(each.passage) && passage.likelihood! > each.passage.likelihood!)) continue;
    add(marks.rubric, besideOf(each.passage, each.stream, each.elements), says, "stations");
  }
}

console.log(`# What stands beside a passage\n\n${cases.length} passages that fit an element, ${cases.filter(({ truth }) => truth).length} of them turned: they do not say it. Texts invented; each fold of rubrics judged by a curve fitted without it.\n`);
const names = [...new Set(cases.map(({ rubric }) => rubric))].sort();
const given = new Map<Case, number>();
for (let fold = 0; fold < FOLDS; fold += 1) {
  const within = (each: Case) => names.indexOf(each.rubric) % FOLDS === fold;
  const model = fitted(cases.filter((each) => !within(each)));
  for (const each of cases.filter(within)) given.set(each, scoreOf(model, each));
}
console.log("| texts | turned from | right passages kept | turned ones dropped |\n|---|---|---|---|");
for (const collection of ["drills", "passages", "talk", "stations"] as const) {
  for (const least of [0.5, 0.65, 0.75, TURNED]) {
    const of = (truth: boolean) => cases.filter((each) => each.collection === collection && each.truth === truth);
    const share = (part: Case[], all: Case[]) => `${part.length} of ${all.length} (${((100 * part.length) / Math.max(1, all.length)).toFixed(1)}%)`;
    console.log(`| ${collection} | ${least}${least === TURNED ? " (as shipped)" : ""} | ${share(of(false).filter((each) => given.get(each)! < least), of(false))} | ${share(of(true).filter((each) => given.get(each)! >= least), of(true))} |`);
  }
}
const model = fitted(cases);
const rounded = (value: number) => Math.round(value * 100) / 100;
const words = [...model.words].map(([word, weight]) => [word, rounded(weight)] as const).filter(([, weight]) => Math.abs(weight) >= LEAST_WEIGHT).sort(([a], [b]) => (a < b ? -1 : 1));
console.log(`\n| figure | weight |\n|---|---|\n| intercept | ${rounded(model.intercept)} |\n${BESIDE_FIGURES.map((name, place) => `| ${name} | ${rounded(model.figures[place]!)} |`).join("\n")}`);
const heaviest = [...words].sort(([, a], [, b]) => b - a);
const listed = (some: typeof heaviest) => some.map(([word, weight]) => `${word} ${weight}`).join(", ");
console.log(`\n${words.length} words and pairs ("*" is a word that carries the passage). They turn it most: ${listed(heaviest.slice(0, 40))}. They speak for it most: ${listed(heaviest.slice(-40).reverse())}.`);
if (process.argv.includes("--write")) writeFileSync("src/matching/beside.json", `${JSON.stringify({ intercept: rounded(model.intercept), figures: model.figures.map(rounded), words: Object.fromEntries(words) })}\n`);

function take(rubric: string, key: string, turns: readonly ToldTurn[], says: boolean, collection: Collection): void {
  const own = fitting(rubric, turns, "bare").filter(({ passage: { element } }) => `${element.item}/${element.element}` === key);
  const best = own.sort((a, b) => b.passage.likelihood! - a.passage.likelihood!)[0];
  if (best !== undefined) add(rubric, besideOf(best.passage, best.stream, best.elements), says, collection);
}

interface Fitting {
  passage: Passage;
  stream: Stream;
  elements: CompiledRubric["elements"];
}

function fitting(name: string, turns: readonly ToldTurn[], as: "full" | "bare"): Fitting[] {
  return fittingIn(toldStation([...turns], name), bothOf(name), as);
}

/** Passages that fit, each with its element as it is compiled in full. */
function fittingIn(station: Station, both: Both, as: "full" | "bare"): Fitting[] {
  const { full } = both;
  const stream = streamOf(station, ["candidate"]);
  const postings = postingsOf(stream, full);
  return candidatePassages(both[as], postings, stream, withinReach(both[as], postings).elements)
    .filter(({ verdict, closed, likelihood }) => verdict === "right" && closed.every((gate) => gate === "turned") && (likelihood ?? 0) >= LIKELY)
    .map((passage) => ({ passage: { ...passage, element: full.elements.find(({ item, element }) => item === passage.element.item && element === passage.element.element)! }, stream, elements: full.elements }));
}

/** Elements of which the reader's marks tell whether they were said; stated wrongly, they were not. */
function saidByMarks({ items, incorrect, rubric }: ReaderMarks): Map<string, boolean> {
  const said = new Map<string, boolean>();
  for (const { item, element } of bothOf(rubric).full.elements) {
    const mark = items[item];
    if (mark === undefined) continue;
    const key = `${item}/${element}`;
    if (mark.content === "absent" || incorrect?.includes(key) === true) said.set(key, false);
    else if (mark.content === "complete" || mark.content === "partial") said.set(key, mark.missing?.includes(element) !== true);
  }
  return said;
}

function keyOf({ element }: Passage): string {
  return `${element.item}/${element.element}`;
}

function bothOf(name: string): Both {
  const known = rubrics.get(name);
  if (known !== undefined) return known;
  const full = compiledRubric(rubricNamed(name));
  const both = { full, bare: { ...full, elements: full.elements.map((element) => ({ ...element, incorrect: [] })), unsafe: [] } };
  rubrics.set(name, both);
  return both;
}

function add(rubric: string, { figures, words }: Beside, says: boolean, collection: Collection): void {
  cases.push({ figures, words: [...words], truth: !says, weight: WEIGHT[collection], collection, rubric });
}

function fitted(chosen: readonly Case[]) {
  return fitSparse(chosen, LEAST_PASSAGES);
}
