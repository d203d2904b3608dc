// `npm run fit:likelihood [-- --write]`: fits the curve of src/matching/likelihood.ts on annotated talk (fixtures/talk) and
// on the tuning side of the labelled passages, all invented, and prints what it does to talk about rubrics left out of
// the fit. `--write` puts the weights into likelihood.json.
import { writeFileSync } from "node:fs";
import { compiledRubric } from "../../src/mark.ts";
import { canSay, itemsOf, LIKELY, SIGNS, signsOfSaying, type Items } from "../../src/matching/likelihood.ts";
import { closeOtherDevices } from "../../src/matching/other-device.ts";
import { isOpen, passagesFor, type Passage } from "../../src/matching/passages.ts";
import { postingsOf } from "../../src/matching/postings.ts";
import { streamOf, type Stream } from "../../src/matching/stream.ts";
import { toldStation } from "../../src/station/told.ts";
import { chanceOf, fitLogistic } from "./logistic.ts";
import { readPassages, rubricNamed } from "./match/passages.ts";
import { readTalk } from "./match/talk.ts";

interface Case {
  /** Left out of the fit together: a rubric's talk, or an eighth of the passages. */
  fold: string;
  collection: "talk" | "passages";
  key: string;
  signs: number[];
  /** Whether the passage says its element. */
  truth: boolean;
  before: boolean;
}

/** A passage of the collection stands for so many of the talk: they are fewer, and closer to the edge. */
const PASSAGE_WEIGHT = 2;
const PASSAGE_FOLDS = 8;
const RIDGE = 1;

const cases: Case[] = [];
/** By element of a text: whether it is said. */
const said = { talk: new Map<string, boolean>(), passages: new Map<string, boolean>() };

for (const talk of readTalk()) {
  const { stream, passages, items } = passagesOf(talk.rubric, talk.turns, talk.name);
  for (const { item, element } of compiledRubric(rubricNamed(talk.rubric)).elements) {
    const truth = talk.elements.get(`${item}/${element}`);
    if (truth?.wrong !== true) said.talk.set(`${talk.name} ${item}/${element}`, truth?.said === true);
  }
  take(passages, stream, items, (passage) => ({ fold: talk.rubric, collection: "talk", key: `${talk.name} ${keyOf(passage)}`, truth: carriedBy(passage, stream, talk.sentences) }));
}
readPassages().filter(({ side }) => side === "tuning").forEach((labelled, place) => {
  const { stream, passages, items } = passagesOf(labelled.rubric, labelled.turns, labelled.id);
  const key = `${labelled.item}/${labelled.element}`;
  said.passages.set(`${labelled.id} ${key}`, labelled.label === "right");
  take(passages, stream, items, (passage) => (keyOf(passage) === key ? { fold: `passages ${(place >> 1) % PASSAGE_FOLDS}`, collection: "passages", key: `${labelled.id} ${key}`, truth: labelled.label === "right" } : null));
});

console.log(`# Likelihood that a passage says its element\n\n${cases.length} passages on which no gate closes, ${cases.filter(({ truth }) => truth).length} of them true. Texts invented; each fold (a rubric's talk, an eighth of the passages) judged by a curve fitted without it.\n`);
const chances = crossFitted();
console.log("| | elements said, found | not said, credited | passages that count and say it |\n|---|---|---|---|");
for (const collection of ["talk", "passages"] as const) {
  row(`${collection}, by fit and must-words alone`, collection, (each) => each.before);
  for (const least of [0.15, LIKELY, 0.25, 0.3]) row(`${collection}, likelihood from ${least}${least === LIKELY ? " (as shipped)" : ""}`, collection, (_, place) => chances[place]! >= least);
}
console.log("\n| likelihood | passages of talk | mean | true |\n|---|---|---|---|");
for (let from = 0; from < 1; from += 0.1) {
  const inside = cases.flatMap(({ collection, truth }, place) => (collection === "talk" && chances[place]! >= from && chances[place]! < from + 0.1 ? [{ truth, chance: chances[place]! }] : []));
  if (inside.length > 0) console.log(`| ${from.toFixed(1)} to ${(from + 0.1).toFixed(1)} | ${inside.length} | ${(inside.reduce((sum, { chance }) => sum + chance, 0) / inside.length).toFixed(3)} | ${(inside.filter(({ truth }) => truth).length / inside.length).toFixed(3)} |`);
}
const { intercept, signs } = fitted(cases);
console.log(`\n| sign | weight |\n|---|---|\n| intercept | ${intercept} |\n${SIGNS.map((name, place) => `| ${name} | ${signs[place]} |`).join("\n")}`);
if (process.argv.includes("--write")) writeFileSync("src/matching/likelihood.json", `${JSON.stringify({ intercept, signs })}\n`);

function passagesOf(rubricName: string, turns: Parameters<typeof toldStation>[0], name: string): { stream: Stream; passages: Passage[]; items: Items } {
  const rubric = compiledRubric(rubricNamed(rubricName));
  const stream = streamOf(toldStation(turns, name), ["candidate"]);
  const postings = postingsOf(stream, rubric);
  return { stream, items: itemsOf(rubric.elements), passages: closeOtherDevices(rubric.elements.flatMap((element) => passagesFor(element, postings, stream, "candidate")), stream, rubric) };
}

function take(passages: readonly Passage[], stream: Stream, items: Items, label: (passage: Passage) => Pick<Case, "fold" | "collection" | "key" | "truth"> | null): void {
  const fitting = passages.filter(canSay);
  for (const passage of fitting) {
    const labels = label(passage);
    if (labels !== null) cases.push({ ...labels, signs: signsOfSaying(passage, fitting, stream, items), before: isOpen(passage) });
  }
}

/** Whether the annotated sentences, and those right before them, carry at least half of the passage. */
function carriedBy(passage: Passage, stream: Stream, sentences: readonly { first: number; end: number; says: readonly string[] }[]): boolean {
  const key = keyOf(passage);
  let carried = 0;
  let all = 0;
  let direct = false;
  for (const { term, hit } of passage.window.aligned) {
    const { weight } = passage.window.response.terms[term]!;
    const word = stream.tokens[hit.first]!.word;
    const place = sentences.findIndex(({ first, end }) => word >= first && word < end);
    all += weight;
    const here = sentences[place]?.says.includes(key) === true;
    direct ||= here;
    if (here || sentences[place + 1]?.says.includes(key) === true) carried += weight;
  }
  return direct && carried >= all / 2;
}

function keyOf({ element }: Passage): string {
  return `${element.item}/${element.element}`;
}

function fitted(chosen: readonly Case[]) {
  const model = modelOf(chosen);
  const weights = model.weights.slice(1).map((weight, k) => weight / model.scale[k]!);
  return { intercept: rounded(model.weights[0]! - weights.reduce((sum, weight, k) => sum + weight * model.mean[k]!, 0)), signs: weights.map(rounded) };
}

function modelOf(chosen: readonly Case[]) {
  const weighted = chosen.flatMap((each) => (each.collection === "passages" ? Array.from({ length: PASSAGE_WEIGHT }, () => each) : [each]));
  return fitLogistic(weighted.map(({ signs: row }) => row), weighted.map(({ truth }) => truth), RIDGE);
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function crossFitted(): number[] {
  const given = new Array<number>(cases.length).fill(0);
  for (const fold of new Set(cases.map((each) => each.fold))) {
    const model = modelOf(cases.filter((each) => each.fold !== fold));
    cases.forEach((each, place) => {
      if (each.fold === fold) given[place] = chanceOf(model, each.signs);
    });
  }
  return given;
}

function row(name: string, collection: Case["collection"], counts: (each: Case, place: number) => boolean): void {
  const credited = new Set<string>();
  let true_ = 0;
  let all = 0;
  cases.forEach((each, place) => {
    if (each.collection !== collection || !counts(each, place)) return;
    credited.add(each.key);
    all += 1;
    if (each.truth) true_ += 1;
  });
  const of = { yes: [0, 0], no: [0, 0] };
  for (const [key, truth] of said[collection]) {
    const side = truth ? of.yes : of.no;
    side[1]! += 1;
    if (credited.has(key)) side[0]! += 1;
  }
  const share = ([part, whole]: number[]) => `${part} of ${whole} (${((100 * part!) / whole!).toFixed(1)}%)`;
  console.log(`| ${name} | ${share(of.yes)} | ${share(of.no)} | ${share([true_, all])} |`);
}

console.log("\n| best likelihood of an element's passages | elements of talk | said |\n|---|---|---|");
const best = new Map<string, number>();
cases.forEach(({ collection, key }, place) => {
  if (collection === "talk") best.set(key, Math.max(best.get(key) ?? 0, chances[place]!));
});
for (const [from, to] of [[-1, 0], [0, 0.02], [0.02, 0.05], [0.05, 0.1], [0.1, 0.15], [0.15, 0.2], [0.2, 0.25], [0.25, 0.3], [0.3, 0.4], [0.4, 0.5], [0.5, 0.6], [0.6, 0.7], [0.7, 0.8], [0.8, 0.9], [0.9, 1]] as const) {
  const inside = [...said.talk].filter(([key]) => (from < 0 ? !best.has(key) : best.has(key) && best.get(key)! >= from && best.get(key)! < to));
  console.log(`| ${from < 0 ? "none" : `${from} to ${to}`} | ${inside.length} | ${(inside.filter(([, truth]) => truth).length / Math.max(1, inside.length)).toFixed(3)} |`);
}
