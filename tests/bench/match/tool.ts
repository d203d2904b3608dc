import { compiledRubric } from "../../../src/mark.ts";
import { matchStation } from "../../../src/matching/match.ts";
import type { Matches } from "../../../src/matching/types.ts";
import { contextOf } from "../../../src/scoring/context.ts";
import { judgeElement } from "../../../src/scoring/elements.ts";
import { toldStation } from "../../../src/station/told.ts";
import { rubricNamed, type Label, type Passage } from "./passages.ts";

/** A passage as a whole station with its roles told: the matcher is judged, not the reading of roles. */
const stationOf = ({ id, turns }: Pick<Passage, "id" | "turns">) => toldStation(turns, id);

const LABEL_OF: Record<string, Label> = { complete: "right", incorrect: "wrong", absent: "absent", "cannot-tell": "unclear" };

export interface Reading {
  label: Label;
  confidence: number;
  matches: Matches;
  /** Items of the rubric that the passage earns wholly or in part. */
  earned: string[];
}

/** What the sheet would say of the passage's element. */
export function toolReading(passage: Pick<Passage, "id" | "rubric" | "item" | "element" | "turns">): Reading {
  const rubric = rubricNamed(passage.rubric);
  const station = stationOf(passage);
  const matches = matchStation(station, compiledRubric(rubric));
  const context = contextOf(station, rubric, matches, rubric.time.limit, rubric.time.target);
  const element = rubric.sections.flatMap((section) => section.items).find((item) => item.id === passage.item)?.elements.find((candidate) => candidate.id === passage.element);
  if (element === undefined) throw new Error(`${passage.id}: ${passage.rubric} has no element ${passage.item}/${passage.element}`);
  const judged = judgeElement(context, passage.item, element);
  return { label: LABEL_OF[judged.content]!, confidence: judged.confidence, matches, earned: [...new Set(matches.elements.filter(({ verdict }) => verdict === "right").map(({ item }) => item))] };
}
