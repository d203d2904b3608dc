// `npm run calibrate`: fits the curves of src/matching/confidence.ts on the tuning side and prints them, with Brier
// scores and a reliability table for the tuning side (fitted) and for the unseen side (not fitted). All texts invented.
import { compiledRubric } from "../../src/mark.ts";
import { absenceSigns } from "../../src/matching/confidence.ts";
import { matchStation } from "../../src/matching/match.ts";
import { contextOf } from "../../src/scoring/context.ts";
import { judgeElement } from "../../src/scoring/elements.ts";
import { findStation } from "../../src/station/find.ts";
import { chanceOf, fitLogistic } from "./logistic.ts";
import { readPassages, rubricNamed } from "./match/passages.ts";
import { toolReading } from "./match/tool.ts";
import { readRehearsals, type ReaderMarks } from "./rehearsals.ts";

interface Case {
  kind: "said" | "absent";
  /** The signs, and 1 for a passage of the adversarial collection against 0 for a whole rehearsal. */
  signs: number[];
  right: boolean;
  given: number;
}

const passages = readPassages();
const cases = { tuning: [] as Case[], unseen: [] as Case[] };
for (const passage of passages) {
  const { label, matches, confidence } = toolReading(passage);
  if (label !== "right" && label !== "absent") continue;
  const mine = matches.elements.filter(({ item, element, verdict }) => item === passage.item && element === passage.element && verdict === "right").sort((a, b) => b.confidence - a.confidence)[0];
  const nearest = matches.nearest.find(({ item, element }) => item === passage.item && element === passage.element);
  const signs = label === "right" ? mine?.signs : absenceSigns(nearest);
  if (signs === undefined) continue;
  cases[passage.side].push({ kind: label === "right" ? "said" : "absent", signs: [...signs, 1], right: (passage.label === "right") === (label === "right"), given: confidence });
}

const stations = { tuning: [] as Case[], unseen: [] as Case[] };
for (const { side, transcript, marks } of readRehearsals()) {
  const rubric = rubricNamed(marks.rubric);
  const station = findStation(transcript, {});
  const matches = matchStation(station, compiledRubric(rubric));
  const context = contextOf(station, rubric, matches, rubric.time.limit, rubric.time.target);
  for (const item of rubric.sections.flatMap(({ items }) => items)) {
    const mark = marks.items[item.id];
    if (mark === undefined) continue;
    for (const element of item.elements) {
      const truth = truthOf(mark, element.id, item.needs === item.elements.length);
      if (truth === null) continue;
      const judged = judgeElement(context, item.id, element);
      if (judged.content !== "complete" && judged.content !== "absent") continue;
      const said = judged.inTime.filter(({ verdict }) => verdict === "right").sort((a, b) => b.confidence - a.confidence)[0];
      const signs = judged.content === "complete" ? said?.signs : absenceSigns(matches.nearest.find((attempt) => attempt.item === item.id && attempt.element === element.id));
      if (signs === undefined) continue;
      stations[side === "tuned" ? "tuning" : "unseen"].push({ kind: judged.content === "complete" ? "said" : "absent", signs: [...signs, 0], right: truth === (judged.content === "complete"), given: judged.confidence });
    }
  }
}

/** Whether the reader heard the element; null where the item's mark does not tell. */
function truthOf({ content, missing }: ReaderMarks["items"][string], element: string, needsAll: boolean): boolean | null {
  if (content === "absent") return false;
  if (content === "complete") return missing?.includes(element) === true ? false : needsAll || missing != null ? true : null;
  if (content === "partial" && missing != null && missing.length > 0) return !missing.includes(element);
  return null;
}

console.log("# Confidence: curves and reliability\n");
for (const kind of ["said", "absent"] as const) {
  const data = [...cases.tuning, ...stations.tuning].filter((each) => each.kind === kind);
  const model = fitLogistic(data.map(({ signs }) => signs), data.map(({ right }) => right), 2);
  const raw = model.weights.slice(1).map((weight, k) => weight / model.scale[k]!);
  const intercept = model.weights[0]! - raw.reduce((sum, weight, k) => sum + weight * model.mean[k]!, 0);
  console.log(`${kind}: intercept ${intercept.toFixed(2)}, weights [${raw.slice(0, -1).map((weight) => weight.toFixed(2)).join(", ")}] (a passage of the collection: ${raw.at(-1)!.toFixed(2)}); ${data.length} cases, ${data.filter(({ right }) => right).length} right; Brier score of the fit ${brier(data.map((each) => ({ ...each, given: chanceOf(model, each.signs) }))).toFixed(3)}`);
}
for (const [name, data] of [["tuning rehearsals", stations.tuning], ["unseen rehearsals", stations.unseen], ["unseen passages", cases.unseen]] as const) {
  if (data.length === 0) continue;
  console.log(`\n## As shipped: ${name}, elements ${data.length}, Brier score ${brier(data).toFixed(3)}\n\n| confidence | elements | mean | right |\n|---|---|---|---|`);
  for (const [from, to] of [[0, 0.5], [0.5, 0.6], [0.6, 0.7], [0.7, 0.8], [0.8, 0.9], [0.9, 0.95], [0.95, 1.01]] as const) {
    const inside = data.filter(({ given }) => given >= from && given < to);
    if (inside.length > 0) console.log(`| ${from} to ${Math.min(1, to)} | ${inside.length} | ${(inside.reduce((sum, { given }) => sum + given, 0) / inside.length).toFixed(3)} | ${(inside.filter(({ right }) => right).length / inside.length).toFixed(3)} |`);
  }
}

/** Mean squared distance of the confidence from what happened (Brier 1950, Monthly Weather Review 78). */
function brier(data: readonly { given: number; right: boolean }[]): number {
  return data.reduce((sum, { given, right }) => sum + (given - (right ? 1 : 0)) ** 2, 0) / data.length;
}
