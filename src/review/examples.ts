import type { CompiledRubric } from "../matching/compile.ts";
import { matchUtterance } from "../matching/utterance.ts";
import type { Finding } from "../problem/problem.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import type { Place } from "../rubric/places.ts";
import { itemsOf } from "./facts.ts";
import { findingAt } from "./finding.ts";

interface Examples {
  earns: readonly string[];
  misses: readonly string[];
}

/** Runs the rubric's own examples, each as a station in which nothing else is said. */
export function checkExamples({ rubric, places }: PlacedRubric, compiled: CompiledRubric): Finding[] {
  const findings: Finding[] = [];
  const run = (examples: Examples | undefined, target: string, hit: (text: string) => boolean, place: (path: PropertyKey[]) => Place) => {
    examples?.earns.forEach((text, index) => {
      if (!hit(text)) findings.push(findingAt(place(["examples", "earns", index]), "SW-C07", "error", `the example '${text}' must earn ${target}, and does not`, "Add a response in words like these, or move the example to 'misses'."));
    });
    examples?.misses.forEach((text, index) => {
      if (hit(text)) findings.push(findingAt(place(["examples", "misses", index]), "SW-C07", "error", `the example '${text}' must not earn ${target}, and does`, "Add a must-word or not_with that keeps it out, or move the example to 'earns'."));
    });
  };
  for (const item of itemsOf(rubric)) {
    item.elements.forEach((element, place) => {
      const earned = (text: string) => matchUtterance(text, compiled).elements.some((match) => match.item === item.id && match.element === element.id && match.verdict === "right");
      run(element.examples, `'${element.id}' of '${item.id}'`, earned, (path) => places.element(item.id, place, path));
    });
  }
  rubric.unsafe.forEach((statement, index) => {
    const stated = (text: string) => matchUtterance(text, compiled).unsafe.some((match) => match.statement === statement.id && match.verdict === "unsafe");
    run(statement.examples, `the unsafe statement '${statement.id}'`, stated, (path) => places.unsafe(index, path));
  });
  return findings;
}
