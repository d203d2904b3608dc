import type { Evidence, MarkSheet, QuestionResult } from "../../scoring/types.ts";
import { faint, strong, styled, type Page, type Text } from "../page.ts";
import type { Style } from "../style.ts";
import { padEnd } from "../width.ts";
import { place, quote, spoken } from "./evidence.ts";

const ANSWER: Record<QuestionResult["answer"], { word: string; mark: "complete" | "partial" | "incorrect" | "absent" | "cannot-tell" | "not-offered"; style: Style }> = {
  answered: { word: "answered", mark: "complete", style: "good" },
  incorrect: { word: "incorrect", mark: "incorrect", style: "bad" },
  deferred: { word: "will check", mark: "partial", style: "fair" },
  ignored: { word: "no answer", mark: "absent", style: "bad" },
  "cannot-tell": { word: "cannot tell", mark: "cannot-tell", style: "doubt" },
  "not-asked": { word: "not asked", mark: "not-offered", style: "faint" },
};

/** The patient's questions and how each was answered; teach-back as asked, answered, noticed, corrected. */
export function dialogue(page: Page, sheet: MarkSheet): void {
  page.heading(`The ${sheet.scenario.counselled}'s questions`);
  if (sheet.questions.length === 0) page.entry({ body: "none in the rubric, none heard" });
  for (const question of sheet.questions) {
    const { word, mark, style } = ANSWER[question.answer];
    const indent = page.width >= 76 ? 17 : 6;
    // The patient's own words lead: a coach looks for what was said, not for how the script has it.
    const body: Text = question.asked === null ? [question.label] : [spoken(question.asked, page.symbols), question.scripted ? "" : faint(" (not in the script)")];
    page.entry({ indent: 2, lead: styled(`${page.symbols.mark[mark]} ${padEnd(word, 12)}`, style), hang: 15, body });
    if (question.asked !== null && question.label !== question.asked.quote) page.entry({ indent, body: [faint(question.scripted ? "in the script " : "meaning "), question.label] });
    if (question.evidence !== null) page.entry({ indent, body: ["answer ", spoken(question.evidence, page.symbols)] });
  }
  teachBack(page, sheet);
}

function teachBack(page: Page, { teachBack: { asked, answered, errors } }: MarkSheet): void {
  page.heading("Teach-back");
  const line = (name: string, value: Parameters<typeof spoken>[0] | null, none: string) =>
    page.entry({ indent: 2, lead: strong(name), hang: 11, body: value === null ? styled(none, "fair") : spoken(value, page.symbols) });
  line("asked", asked, "not asked: the patient was never invited to say it in their own words");
  if (asked === null && answered === null && errors.length === 0) return;
  line("answered", answered, "no answer found");
  if (errors.length === 0 && answered !== null) page.entry({ indent: 2, lead: strong("errors"), hang: 11, body: "none found in the answer" });
  for (const { evidence, label, noticed, corrected } of errors) {
    const at = (piece: Evidence) => `at ${place(piece)} ${quote(piece.quote, page.symbols)}`;
    const seen = noticed === null || noticed.first === corrected?.first ? "" : `noticed ${at(noticed)}, `;
    const outcome =
      corrected !== null
        ? styled(`${seen}corrected ${at(corrected)}`, "good")
        : noticed !== null
          ? styled(`${seen}not corrected`, "fair")
          : styled("not noticed", "bad");
    page.entry({ indent: 2, lead: strong("error"), hang: 11, body: [label, ": ", spoken(evidence, page.symbols)] });
    page.entry({ indent: 13, body: outcome });
  }
}
