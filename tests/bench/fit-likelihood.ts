// `npm run fit:likelihood [-- --write]`: fits the curve of src/matching/likelihood.ts on annotated talk (fixtures/talk) and
// on the tuning side of the labelled passages, all invented, and prints what it does to talk about rubrics left out of
// the fit. `--write` puts the weights into likelihood.json.
import { writeFileSync } from "node:fs";
import { compiledRubric } from "../../src/mark.ts";
import { Fitting, itemsOf, type Items } from "../../src/matching/company.ts";
import { likelihoodOf, type Curve } from "../../src/matching/curve.ts";
import shipped from "../../src/matching/likelihood.json" with { type: "json" };
import { canSay, firstLook, LIKELY, SIGNS, signsOfSaying } from "../../src/matching/likelihood.ts";
import { closeOtherDevices } from "../../src/matching/other-device.ts";
import { isOpen, passagesFor, type Passage } from "../../src/matching/passages.ts";
import { postingsOf } from "../../src/matching/postings.ts";
import { streamOf, type Stream } from "../../src/matching/stream.ts";
import { toldStation } from "../../src/station/told.ts";
import { carriedBy } from "./carried-by.ts";
import { curveOf, fitLogistic } from "./logistic.ts";
import { readPassages, rubricNamed } from "./match/passages.ts";
import { readTalk } from "./match/talk.ts";

/** A text, its passages on which no gate closes, and for those that are judged whether they say their element. */
interface Text {
  stream: Stream;
  items: Items;
  fitting: Fitting;
  /** Left out of the fit together: a rubric's talk, or an eighth of the passages. */
  fold: string;
  collection: "talk" | "passages";
  cases: { passage: Passage; key: string; truth: boolean }[];
}

interface Case {
  text: Text;
  passage: Passage;
  collection: Text["collection"];
  key: string;
  truth: boolean;
  before: boolean;
}

/** A passage of the collection stands for so many of the talk: they are fewer, and closer to the edge. */
const PASSAGE_WEIGHT = 2;
const PASSAGE_FOLDS = 8;
const RIDGE = 1;

const texts: Text[] = [];
/** By element of a text: whether it is said. */
const said = { talk: new Map<string, boolean>(), passages: new Map<string, boolean>() };

for (const talk of readTalk()) {
  for (const { item, element } of compiledRubric(rubricNamed(talk.rubric)).elements) {
    const truth = talk.elements.get(`${item}/${element}`);
    if (truth?.wrong !== true) said.talk.set(`${talk.name} ${item}/${element}`, truth?.said === true);
  }
  take(talk.rubric, talk.turns, talk.name, talk.rubric, "talk", (passage, stream) => carriedBy(passage, stream, talk.sentences));
}
readPassages().filter(({ side }) => side === "tuning").forEach((labelled, place) => {
  const key = `${labelled.item}/${labelled.element}`;
  said.passages.set(`${labelled.id} ${key}`, labelled.label === "right");
  take(labelled.rubric, labelled.turns, labelled.id, `passages ${(place >> 1) % PASSAGE_FOLDS}`, "passages", (passage) => (keyOf(passage) === key ? labelled.label === "right" : null));
});
const cases = texts.flatMap((text): Case[] => text.cases.map(({ passage, key, truth }) => ({ text, passage, collection: text.collection, key, truth, before: isOpen(passage) })));

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
console.log("\n| best likelihood of an element's passages | elements of talk | said |\n|---|---|---|");
const best = new Map<string, number>();
cases.forEach(({ collection, key }, place) => {
  if (collection === "talk") best.set(key, Math.max(best.get(key) ?? 0, chances[place]!));
});
for (const [from, to] of [[-1, 0], [0, 0.02], [0.02, 0.05], [0.05, 0.1], [0.1, 0.15], [0.15, 0.2], [0.2, 0.25], [0.25, 0.3], [0.3, 0.4], [0.4, 0.5], [0.5, 0.6], [0.6, 0.7], [0.7, 0.8], [0.8, 0.9], [0.9, 1]] as const) {
  const inside = [...said.talk].filter(([key]) => (from < 0 ? !best.has(key) : best.has(key) && best.get(key)! >= from && best.get(key)! < to));
  console.log(`| ${from < 0 ? "none" : `${from} to ${to}`} | ${inside.length} | ${(inside.filter(([, truth]) => truth).length / Math.max(1, inside.length)).toFixed(3)} |`);
}
const [first, second] = fitted(texts);
console.log(`\n| sign | first look | second look |\n|---|---|---|\n| intercept | ${first.intercept} | ${second.intercept} |\n${SIGNS.map((name, place) => `| ${name} | ${first.signs[place]} | ${second.signs[place]} |`).join("\n")}`);
if (process.argv.includes("--write")) writeFileSync("src/matching/likelihood.json", `${JSON.stringify({ ...shipped, first, second })}\n`);

function take(rubricName: string, turns: Parameters<typeof toldStation>[0], name: string, fold: string, collection: Text["collection"], truthOf: (passage: Passage, stream: Stream) => boolean | null): void {
  const rubric = compiledRubric(rubricNamed(rubricName));
  const stream = streamOf(toldStation(turns, name), ["candidate"]);
  const postings = postingsOf(stream, rubric);
  const fitting = closeOtherDevices(rubric.elements.flatMap((element) => passagesFor(element, postings, stream, "candidate")), stream, rubric).filter(canSay);
  const judged = fitting.flatMap((passage) => {
    const truth = truthOf(passage, stream);
    return truth === null ? [] : [{ passage, key: `${name} ${keyOf(passage)}`, truth }];
  });
  texts.push({ stream, items: itemsOf(rubric.elements), fitting: new Fitting(fitting), fold, collection, cases: judged });
}

function keyOf({ element }: Passage): string {
  return `${element.item}/${element.element}`;
}

/** The first look takes what else is spoken of by its fit, the second by how likely the first found it. */
function fitted(chosen: readonly Text[]): [Curve, Curve] {
  const first = curveFor(chosen, ({ fitting, stream, items }, passage) => signsOfSaying(passage, fitting, stream, items, ({ coverage }) => coverage));
  const looks = new Map(chosen.map((text) => [text, firstLook(text.fitting, text.stream, text.items, first)]));
  return [first, curveFor(chosen, (text, passage) => secondSigns(text, passage, looks.get(text)!))];
}

function secondSigns({ fitting, stream, items }: Text, passage: Passage, look: ReadonlyMap<Passage, number>): number[] {
  return signsOfSaying(passage, fitting, stream, items, (other) => look.get(other)!);
}

function curveFor(chosen: readonly Text[], signsOf: (text: Text, passage: Passage) => number[]): Curve {
  const rows: number[][] = [];
  const truths: boolean[] = [];
  for (const text of chosen) {
    for (const { passage, truth } of text.cases) {
      const signs = signsOf(text, passage);
      for (let times = 0; times < (text.collection === "passages" ? PASSAGE_WEIGHT : 1); times += 1) {
        rows.push(signs);
        truths.push(truth);
      }
    }
  }
  return curveOf(fitLogistic(rows, truths, RIDGE));
}

/** For each case how likely it is by curves fitted without its fold. */
function crossFitted(): number[] {
  const given = new Map<Passage, number>();
  for (const fold of new Set(texts.map((text) => text.fold))) {
    const [first, second] = fitted(texts.filter((text) => text.fold !== fold));
    for (const text of texts.filter((each) => each.fold === fold)) {
      const look = firstLook(text.fitting, text.stream, text.items, first);
      for (const { passage } of text.cases) given.set(passage, likelihoodOf(second, secondSigns(text, passage, look)));
    }
  }
  return cases.map(({ passage }) => given.get(passage)!);
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
