import type { MarkSheet } from "../../../src/scoring/types.ts";
import type { ReaderMarks, Rehearsal } from "../rehearsals.ts";

/** So many seconds beside the reader's an edge of the station is the reader's: one short sentence. */
const NEAR = 5;

/** How what a sheet says beside its items agrees with the reader: parts of wholes, by the name of the row. */
export type Tally = Record<string, { alike: number; all: number }>;

/** What a coach reads beside the marks: edges, questions, teach-back, repeats, wrong statements, elicitation. */
export function beyondItems(sheet: MarkSheet, marks: ReaderMarks, tally: Tally): void {
  const count = (name: string, alike: boolean) => {
    const row = (tally[name] ??= { alike: 0, all: 0 });
    row.all += 1;
    if (alike) row.alike += 1;
  };
  for (const edge of ["start", "end"] as const) {
    const [told, found] = [marks.station?.[edge], sheet.station[edge].time];
    if (typeof told === "number" && found !== null) count(`station ${edge} within ${NEAR} s`, Math.abs(told - found) <= NEAR);
  }
  const asked = sheet.teachBack.asked !== null;
  if (marks.teach_back) count("teach-back asked or not", asked === (marks.teach_back === "asked"));
  for (const [id, told] of Object.entries(marks.questions ?? {})) {
    const question = sheet.questions.find((one) => one.scripted && one.id === id);
    if (question === undefined) continue;
    count("scripted question asked or not", (question.answer === "not-asked") === (told === "not-asked"));
    if (told !== "not-asked") count("asked question: how it was answered", question.answer === told);
  }
  const standing = new Set(sheet.incorrect.filter(({ corrected }) => !corrected).map(({ item, element }) => `${item}/${element}`));
  const wrong = new Set(marks.incorrect ?? []);
  for (const id of wrong) count("wrong statements of the reader found", standing.has(id));
  for (const id of standing) count("wrong statements told that are the reader's", wrong.has(id));
  if (typeof marks.needless_repeats === "number") {
    const [told, found] = [marks.needless_repeats, sheet.repeats.length];
    count("needless repeats: right number, or one off", Math.abs(found - told) <= 1);
    // Most stations have none, and a tool that finds none would look good above. The marks hold numbers, not places.
    for (let one = 0; one < told; one += 1) count("needless repeats of the reader found, by number", one < found);
    for (let one = 0; one < found; one += 1) count("needless repeats told that are the reader's, by number", one < told);
  }
  if (marks.order !== undefined) {
    const broken = new Set(sheet.order.broken.map(({ first, then }) => `${first}/${then}`));
    for (const pair of marks.order) count("order faults of the reader found", broken.has(pair));
    for (const pair of broken) count("order faults told that are the reader's", marks.order.includes(pair));
  }
  for (const item of sheet.items) {
    const told = marks.items[item.id];
    if (told?.content === "complete" && item.content === "complete" && told.elicitation) count("elicitation of items complete for both", item.elicitation === told.elicitation);
  }
}

export function tallyTable(tallies: Readonly<Record<Rehearsal["side"], Tally>>): string {
  const names = [...new Set(Object.values(tallies).flatMap((tally) => Object.keys(tally)))];
  const cell = (row: Tally[string] | undefined) => (row === undefined ? "-" : `${row.alike} of ${row.all} (${((100 * row.alike) / row.all).toFixed(0)}%)`);
  return [`| what the sheet says beside its items | ${Object.keys(tallies).join(" | ")} |`, `|---|${Object.keys(tallies).map(() => "---|").join("")}`, ...names.map((name) => `| ${name} | ${Object.values(tallies).map((tally) => cell(tally[name])).join(" | ")} |`)].join("\n");
}
