import type { Rubric } from "../rubric/schema.ts";
import { MARK_COLUMNS, UNSAFE, WHOLE } from "./marks.ts";

/** Steps of a rating, lowest first; common practice, no source. */
export const GLOBAL_SCALE = ["1 clear fail", "2 borderline", "3 clear pass", "4 good", "5 excellent"] as const;
export const COMMUNICATION_SCALE = ["1 poor", "2 weak", "3 sound", "4 good", "5 excellent"] as const;
/** What a rating of communication looks at; common practice, no source. */
export const COMMUNICATION_PROMPTS = [
  "Listens: lets the patient finish, takes up what they say",
  "Answers worries, not only questions",
  "Plain words, one thing at a time",
  "Order that the patient can follow",
  "Checks understanding without a test",
] as const;

export interface SheetFor {
  candidate?: string;
  station?: string;
  attempt?: string;
  marker?: string;
}

/**
 * The lines of a blank marking sheet, as `saidwell agree` reads them back: each item, its elements where there are
 * several, the unsafe statements, and the ratings of the whole. Candidate and marker stand in the first line only, those below belong to it.
 */
export function markingSheetRows(rubric: Rubric, { candidate = "", station = "", attempt = "", marker = "" }: SheetFor = {}): string[][] {
  const rows: Record<(typeof MARK_COLUMNS)[number], string>[] = [];
  const add = (item: string, element: string, what: string) => {
    const head = rows.length === 0 ? { candidate, station, attempt, marker } : { candidate: "", station: "", attempt: "", marker: "" };
    rows.push({ ...head, item, element, content: "", elicitation: "", what });
  };
  for (const { items } of rubric.sections) {
    for (const { id, label, critical, elements } of items) {
      add(id, "", `${label}${critical ? " (critical)" : ""}`);
      if (elements.length > 1) for (const element of elements) add(id, element.id, `element: ${element.label}`);
    }
  }
  for (const { id, label } of rubric.unsafe) add(`${UNSAFE}${id}`, "", `unsafe: ${label}; said, put right or absent`);
  add(WHOLE.global, "", `Global rating: ${GLOBAL_SCALE.join(", ")}`);
  add(WHOLE.communication, "", `Communication: ${COMMUNICATION_SCALE.join(", ")}`);
  add(WHOLE.total, "", "Total in per cent, if you give one of your own");
  return [[...MARK_COLUMNS], ...rows.map((row) => MARK_COLUMNS.map((column) => row[column]))];
}
