// `npm run fit:sureness [-- --write]`: fits the curves of src/scoring/sureness.ts on annotated talk (invented) that no rubric
// was widened by, and prints how well they sort right marks from wrong ones with the talk of each rubric left out in turn,
// beside the confidence of the passages alone. `--write` puts the weights into sureness.json.
import { writeFileSync } from "node:fs";
import { compiledRubric } from "../../src/mark.ts";
import type { Curve } from "../../src/matching/curve.ts";
import { matchStation } from "../../src/matching/match.ts";
import { itemsOf } from "../../src/rubric/items.ts";
import { contextOf } from "../../src/scoring/context.ts";
import { judgeElement } from "../../src/scoring/elements.ts";
import { ABSENT_SIGNS, absentSigns, COMPLETE_SIGNS, completeSigns, nearOf } from "../../src/scoring/sureness.ts";
import { toldStation } from "../../src/station/told.ts";
import { linesWithoutHands } from "./learnt/folds.ts";
import { handOfTalk } from "./learnt/marked-sayings.ts";
import { chanceOf, curveOf, fitLogistic } from "./logistic.ts";
import { rubricNamed } from "./match/passages.ts";
import { readTalk } from "./match/talk.ts";

/** The hands of these files wrote after the rubrics were last widened; the second reader reads them with lines learnt without them. */
const FRESH = /-w1[1-4]$/;
const RIDGE = 2;

interface Case {
  kind: "complete" | "absent";
  /** Whether the second reader knows the element. */
  known: boolean;
  fold: string;
  signs: number[];
  right: boolean;
  before: number;
}

const cases: Case[] = [];
const { linesFor } = linesWithoutHands();
for (const talk of readTalk().filter(({ name }) => FRESH.test(name))) {
  const rubric = rubricNamed(talk.rubric);
  const station = toldStation(talk.turns, talk.name);
  const learnt = linesFor(handOfTalk(talk.name))!.get(rubric.id)!;
  const matches = matchStation(station, { ...compiledRubric(rubric), learnt });
  const context = contextOf(station, rubric, matches, rubric.time.limit, rubric.time.target);
  const judged = itemsOf(rubric).map((item) => ({ item, elements: item.elements.map((element) => judgeElement(context, item.id, element)) }));
  const all = judged.flatMap(({ elements }) => elements);
  const found = all.filter(({ content }) => content === "complete").length / all.length;
  for (const { item, elements } of judged) {
    for (const element of elements) {
      const truth = talk.elements.get(`${item.id}/${element.id}`);
      // What is said both ways may be given either way.
      if ((truth?.wrong === true && truth.said) || (element.content !== "complete" && element.content !== "absent")) continue;
      const near = nearOf(matches, item.id, element.id);
      const signs = element.content === "complete" ? completeSigns(element, near, found) : absentSigns(near, item, elements.filter((other) => other !== element));
      cases.push({ kind: element.content, known: near.judged !== undefined, fold: talk.rubric, signs, right: truth?.wrong !== true && (truth?.said === true) === (element.content === "complete"), before: element.confidence });
    }
  }
}

console.log("# How sure a mark is, seen beside the whole sheet\n\nArea under the curve: the chance that a right mark is surer than a wrong one (0.5 is guessing).\n\n| marks | of them right | by the passages alone | beside the whole sheet |\n|---|---|---|---|");
const curves: Record<string, Curve> = {};
/** What stands for the last two signs of an element that the second reader does not know. */
const unknown: Record<string, number[]> = {};
for (const kind of ["complete", "absent"] as const) {
  const all = cases.filter((each) => each.kind === kind);
  const knowing = all.filter(({ known }) => known);
  unknown[kind] = [-2, -1].map((sign) => Math.round((100 * knowing.reduce((sum, { signs }) => sum + signs.at(sign)!, 0)) / knowing.length) / 100);
  const of = all.map((each) => (each.known ? each : { ...each, signs: [...each.signs.slice(0, -2), ...unknown[kind]!] }));
  const given = new Map<Case, number>();
  for (const fold of new Set(of.map((each) => each.fold))) {
    const model = fit(of.filter((each) => each.fold !== fold));
    for (const each of of.filter((one) => one.fold === fold)) given.set(each, chanceOf(model, each.signs));
  }
  console.log(`| ${of.length} ${kind} | ${of.filter(({ right }) => right).length} | ${area(of, ({ before }) => before).toFixed(3)} | ${area(of, (each) => given.get(each)!).toFixed(3)} |`);
  curves[kind] = curveOf(fit(of));
}
for (const [kind, names] of [["complete", COMPLETE_SIGNS], ["absent", ABSENT_SIGNS]] as const) {
  console.log(`\n| ${kind} | weight |\n|---|---|\n| intercept | ${curves[kind]!.intercept} |\n${names.map((name, place) => `| ${name} | ${curves[kind]!.signs[place]} |`).join("\n")}`);
}
if (process.argv.includes("--write")) writeFileSync("src/scoring/sureness.json", `${JSON.stringify({ ...curves, unknown })}\n`);

function fit(chosen: readonly Case[]) {
  return fitLogistic(chosen.map(({ signs }) => signs), chosen.map(({ right }) => right), RIDGE);
}

function area(of: readonly Case[], sureness: (each: Case) => number): number {
  const [right, wrong] = [of.filter((each) => each.right), of.filter((each) => !each.right)];
  let wins = 0;
  for (const one of right) for (const other of wrong) wins += sureness(one) > sureness(other) ? 1 : sureness(one) === sureness(other) ? 0.5 : 0;
  return wins / (right.length * wrong.length);
}
