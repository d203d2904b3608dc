import { COMMUNICATION_PROMPTS, COMMUNICATION_SCALE, GLOBAL_SCALE } from "../../cohort/marking-sheet.ts";
import type { Rubric } from "../../rubric/schema.ts";
import type { Evidence, MarkSheet } from "../../scoring/types.ts";
import { clock, measured, number, percent, plural } from "../figures.ts";
import { faint, strong, type Page } from "../page.ts";
import { harmless } from "../harmless.ts";
import { inContext, place } from "../text/evidence.ts";
import { readablePage, type Look } from "../page-of.ts";
import { rowsOf } from "./rows.ts";

/** A box to write into. */
const BOX = "[  ]";
const CONTENT = "complete, partial, incorrect, absent, cannot tell, not offered, n/a";
const MOST_QUOTES = 6;
const rapportRow = rowsOf(22);

/**
 * A blank marking sheet for people, to be printed. With a mark sheet beside it, the evidence for rapport stands below
 * the rating: words and times, never a mark, and none of the tool's marks.
 */
export function markingSheetText(rubric: Rubric, evidence: MarkSheet | null, look: Look): string {
  const page = readablePage(look);
  const { title, version, id, scenario, sections, unsafe, time } = harmless(rubric, look.ascii);
  page.entry({ body: [strong("Marking sheet: "), strong(title)] });
  page.entry({ body: faint(`${id}, version ${version}; limit ${clock(time.limit)}`) });
  page.entry({ body: `Task: ${scenario.task}` });
  page.blank();
  // Two lines: no width of a page breaks a blank.
  for (const blanks of ["Candidate ____________________  Attempt ______", "Marker ____________________"]) page.entry({ body: blanks.replaceAll(" ", "\u00a0") });
  page.entry({ body: faint(`For each item write one of: ${CONTENT}. Tick what was said; "asked" when it came only after the patient asked.`) });
  for (const section of sections) {
    page.heading(section.title);
    for (const { label, critical, elements, needs } of section.items) {
      page.entry({ indent: 2, body: [strong(label), critical ? " CRITICAL" : ""], right: "____________ asked [ ]".replaceAll(" ", "\u00a0") });
      if (elements.length > 1) {
        if (needs !== "all") page.entry({ indent: 6, body: faint(`complete with ${needs} of ${elements.length}:`) });
        for (const element of elements) page.entry({ indent: 4, lead: BOX.replaceAll(" ", "\u00a0"), hang: 5, body: element.label });
      }
    }
  }
  if (unsafe.length > 0) {
    page.heading("Unsafe statements");
    page.entry({ body: faint("For each write one of: said, put right, absent, cannot tell; where it was said, when.") });
    for (const { label } of unsafe) page.entry({ indent: 2, body: label, right: "____________ at ______".replaceAll(" ", "\u00a0") });
  }
  page.heading("Ratings, by people only");
  page.entry({ indent: 2, body: [strong("Global rating"), `: ${GLOBAL_SCALE.join(", ")}`], right: "______" });
  page.entry({ indent: 2, body: [strong("Communication"), `: ${COMMUNICATION_SCALE.join(", ")}`], right: "______" });
  for (const prompt of COMMUNICATION_PROMPTS) page.entry({ indent: 4, lead: page.symbols.bullet, hang: 2, body: prompt });
  page.entry({ indent: 2, body: faint("saidwell marks neither: it shows what was said and when, and a person rates.") });
  if (evidence !== null) rapport(page, harmless(evidence, look.ascii));
  page.blank();
  page.entry({ body: "Notes:" });
  return page.toString();
}

function rapport(page: Page, sheet: MarkSheet): void {
  page.heading("Evidence for rapport", sheet.transcript.file);
  const { time, questions, teachBack } = sheet;
  rapportRow(page, "patient's share", time.patientShare === null ? "not measurable" : `${percent(100 * time.patientShare)} of the words of the two`);
  rapportRow(page, "pace", measured(time.wordsPerMinute, (value) => `${number(value, 0)} words a minute`));
  const asked = questions.filter((question) => question.asked !== null).sort((a, b) => a.asked!.first - b.asked!.first);
  rapportRow(page, "patient's questions", asked.length === 0 ? "none found" : plural(asked.length, "question"));
  for (const { label, asked: at, evidence } of asked.slice(0, MOST_QUOTES)) rapportRow(page, "", `${at === null ? label : quoted(at)}${evidence === null ? "" : `; reply ${quoted(evidence)}`}`);
  rapportRow(page, "asked to tell back", teachBack.asked === null ? "not found" : quoted(teachBack.asked));
  const words = time.technicalWords.slice(0, MOST_QUOTES);
  rapportRow(page, "technical words", words.length === 0 ? "none found" : words.map(({ word, evidence }) => `${word} (${place(evidence)})`).join(", "));
  rapportRow(page, "fillers", time.fillers.perHundredWords === null ? "not measurable" : `${number(time.fillers.perHundredWords)} in a hundred words`);
}

function quoted(evidence: Evidence): string {
  return `${place(evidence)} "${inContext(evidence)}"`;
}
