// `npm run fit:held [-- --write]`: fits the curves of src/matching/held-likelihood.ts, behind `fit:likelihood`, on annotated
// talk (fixtures/talk) and on the tuning side of the labelled passages, all invented, and prints what they do to talk about
// rubrics left out of the fit. `--write` puts the weights into likelihood.json.
import { writeFileSync } from "node:fs";
import { compiledRubric } from "../../src/mark.ts";
import { likelihoodOf, type Curve } from "../../src/matching/curve.ts";
import { HELD_LIKELY, HELD_SIGNS, saidIn, signsOfHeld } from "../../src/matching/held-likelihood.ts";
import { standsAlone } from "../../src/matching/held-passages.ts";
import shipped from "../../src/matching/likelihood.json" with { type: "json" };
import { lookedFor, withLikelihood } from "../../src/matching/likelihood.ts";
import { WRONG_ACCEPTED, type Passage } from "../../src/matching/passages.ts";
import { postingsOf } from "../../src/matching/postings.ts";
import { streamOf, type Stream } from "../../src/matching/stream.ts";
import { toldStation, type ToldTurn } from "../../src/station/told.ts";
import { curveOf, fitLogistic } from "./logistic.ts";
import { readPassages, rubricNamed } from "./match/passages.ts";
import { readTalk } from "./match/talk.ts";

type Kind = "statement" | "number";
interface Case {
  kind: Kind;
  /** The element of a text. */
  key: string;
  /** Left out of the fit together: a rubric's talk, or an eighth of the passages. */
  fold: string;
  collection: "talk" | "passages";
  signs: number[];
  truth: boolean;
  /** What would be held against the speaker by the fit alone. */
  before: boolean;
}

const PASSAGE_FOLDS = 8;
const RIDGE = 1;
const cases: Case[] = [];

for (const talk of readTalk()) {
  take(talk.rubric, talk.turns, talk.name, talk.rubric, "talk", (passage, stream) => {
    const key = keyOf(passage);
    const words = passage.window.aligned.map(({ hit }) => stream.tokens[hit.first]!.word);
    return talk.sentences.some(({ first, end, wrong }) => wrong.includes(key) && words.some((word) => word >= first && word < end));
  });
}
readPassages().filter(({ side }) => side === "tuning").forEach(({ rubric, turns, id, item, element, label }, place) => {
  take(rubric, turns, id, `passages ${(place >> 1) % PASSAGE_FOLDS}`, "passages", (passage) => (keyOf(passage) === `${item}/${element}` && label !== "unclear" ? label === "wrong" : null));
});

const curves = { statement: fitted(cases, "statement"), number: fitted(cases, "number") };
console.log("# Likelihood that a passage states its element wrongly\n\nTexts invented; each fold (a rubric's talk, an eighth of the passages) judged by curves fitted without it. Elements, not passages, are counted.\n");
const chances = crossFitted();
for (const kind of ["statement", "number"] as const) {
  const reachable = keysOf((each) => each.kind === kind && each.truth);
  console.log(`\n| ${kind === "statement" ? "wrong statements" : "wrong numbers"} of talk | told, of ${reachable.size} that some passage reaches | told without being so |\n|---|---|---|`);
  line("by fit alone", kind, (each) => each.before);
  for (const least of [0.3, 0.4, 0.5, 0.6, 0.7]) line(`likelihood from ${least}${least === HELD_LIKELY ? " (as shipped)" : ""}`, kind, (_, place) => chances[place]! >= least);
}
console.log("\n| likelihood | passages of talk | true |\n|---|---|---|");
for (let from = 0; from < 1; from += 0.1) {
  const inside = cases.filter(({ collection }, place) => collection === "talk" && chances[place]! >= from && chances[place]! < from + 0.1);
  if (inside.length > 0) console.log(`| ${from.toFixed(1)} to ${(from + 0.1).toFixed(1)} | ${inside.length} | ${(inside.filter(({ truth }) => truth).length / inside.length).toFixed(3)} |`);
}
console.log(`\n| sign | statement | number |\n|---|---|---|\n| intercept | ${curves.statement.intercept} | ${curves.number.intercept} |\n${HELD_SIGNS.map((name, place) => `| ${name} | ${curves.statement.signs[place]} | ${curves.number.signs[place]} |`).join("\n")}`);
if (process.argv.includes("--write")) writeFileSync("src/matching/likelihood.json", `${JSON.stringify({ ...shipped, ...curves })}\n`);

function take(rubricName: string, turns: readonly ToldTurn[], name: string, fold: string, collection: Case["collection"], truthOf: (passage: Passage, stream: Stream) => boolean | null): void {
  const rubric = compiledRubric(rubricNamed(rubricName));
  const { elements } = rubric;
  const stream = streamOf(toldStation(turns, name), ["candidate"]);
  const { saying, held } = lookedFor(rubric, postingsOf(stream, rubric), stream);
  const weighed = withLikelihood(saying, stream, elements);
  const said = saidIn(weighed, stream, elements);
  for (const passage of held) {
    const truth = truthOf(passage, stream);
    if (truth === null) continue;
    const before = standsAlone(passage) && passage.coverage >= WRONG_ACCEPTED;
    cases.push({ kind: passage.quantity === undefined ? "statement" : "number", key: `${name} ${keyOf(passage)}`, fold, collection, signs: signsOfHeld(passage, said), truth, before });
  }
}

function keyOf({ element }: Passage): string {
  return `${element.item}/${element.element}`;
}

function fitted(chosen: readonly Case[], kind: Kind): Curve {
  const of = chosen.filter((each) => each.kind === kind);
  return curveOf(fitLogistic(of.map(({ signs }) => signs), of.map(({ truth }) => truth), RIDGE));
}

function crossFitted(): number[] {
  const given = new Array<number>(cases.length).fill(0);
  for (const fold of new Set(cases.map((each) => each.fold))) {
    const rest = cases.filter((each) => each.fold !== fold);
    const without = { statement: fitted(rest, "statement"), number: fitted(rest, "number") };
    cases.forEach((each, place) => {
      if (each.fold === fold) given[place] = likelihoodOf(without[each.kind], each.signs);
    });
  }
  return given;
}

function keysOf(which: (each: Case, place: number) => boolean): Set<string> {
  return new Set(cases.flatMap((each, place) => (each.collection === "talk" && which(each, place) ? [each.key] : [])));
}

function line(name: string, kind: Kind, counts: (each: Case, place: number) => boolean): void {
  const told = keysOf((each, place) => each.kind === kind && each.truth && counts(each, place));
  const falsely = keysOf((each, place) => each.kind === kind && !each.truth && counts(each, place));
  console.log(`| ${name} | ${told.size} | ${[...falsely].filter((key) => !told.has(key)).length} |`);
}
