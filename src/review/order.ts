import type { Finding } from "../problem/problem.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { findingAt } from "./finding.ts";

/** Pairs that no talk could keep: followed from one to the next they lead back to where they began. One finding a circle. */
export function checkOrder({ rubric, places }: PlacedRubric): Finding[] {
  const findings: Finding[] = [];
  const told = new Set<string>();
  for (const [index, { first, then }] of rubric.order.entries()) {
    const back = pathBetween(then, first, rubric.order);
    if (back === null) continue;
    const circle = [first, ...back];
    const key = [...new Set(circle)].sort().join(" ");
    if (told.has(key)) continue;
    told.add(key);
    findings.push(findingAt(places.top(["order", index]), "SW-C12", "error", `the pairs of 'order' contradict each other: ${circle.join(" before ")}`, "Take out one of these pairs, or turn it round."));
  }
  return findings;
}

/** The shortest chain of pairs from one item to another, both included; null when there is none. */
function pathBetween(from: string, to: string, pairs: readonly { first: string; then: string }[]): string[] | null {
  const paths: string[][] = [[from]];
  const seen = new Set([from]);
  for (let path = paths.shift(); path !== undefined; path = paths.shift()) {
    const last = path.at(-1)!;
    if (last === to) return path;
    for (const { first, then } of pairs) {
      if (first !== last || seen.has(then)) continue;
      seen.add(then);
      paths.push([...path, then]);
    }
  }
  return null;
}
