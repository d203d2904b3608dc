import { stands } from "../../scoring/standing.ts";
import type { IncorrectResult, MarkSheet, StatementResult } from "../../scoring/types.ts";
import { percent } from "../figures.ts";
import { faint, strong, styled, type Page, type Text } from "../page.ts";
import { heardPlace } from "./corrections.ts";
import { spoken } from "./evidence.ts";
import { unsafeStatements } from "./summary.ts";

/** Critical items missed, unsafe statements, what was stated wrongly, what differs from this station's guidance. */
export function dangers(page: Page, sheet: MarkSheet): void {
  critical(page, sheet);
  page.heading("Unsafe statements");
  page.entry({ body: unsafeStatements(sheet) });
  for (const places of byStatement(sheet.unsafe.found)) unsafeStatement(page, places);
  page.heading("Stated wrongly");
  if (sheet.incorrect.length === 0) page.entry({ body: "nothing found that contradicts an item of the rubric" });
  for (const slip of sheet.incorrect) wrong(page, slip);
  if (sheet.differs.length > 0) {
    page.heading("Differs from this station's guidance");
    page.entry({ body: faint("Right elsewhere: no mark is lost as unsafe; check which guidance the station follows.") });
    for (const slip of sheet.differs) wrong(page, slip);
  }
}

function critical(page: Page, sheet: MarkSheet): void {
  const { total, missed, unsure } = sheet.critical;
  if (total === 0) return;
  page.heading("Critical items missed");
  if (missed.length === 0 && unsure.length === 0) page.entry({ body: total === 1 ? "none: the one there is, is met" : `none: all ${total} are met` });
  else if (missed.length === 0) page.entry({ body: "none for certain" });
  for (const id of missed) {
    const item = sheet.items.find((candidate) => candidate.id === id);
    // What a person found missing is not what the tool did.
    const lacking = item?.overruled !== undefined ? [] : item?.elements.filter(({ content }) => content !== "complete").map(({ label }) => label) ?? [];
    const named = lacking.length > 0 && lacking.length < (item?.elements.length ?? 0) ? faint(` (missing: ${lacking.join("; ")})`) : "";
    const how = item === undefined ? "missed" : item.content === "incorrect" ? "incorrect" : item.content === "partial" ? "partial" : "missed";
    page.entry({ indent: 2, lead: styled(how, "bad"), hang: 13, body: [item?.label ?? id, named] });
  }
  for (const id of unsure) {
    const label = sheet.items.find((item) => item.id === id)?.label ?? id;
    page.entry({ indent: 2, lead: styled("cannot tell", "doubt"), hang: 13, body: [label, ": somebody must listen"] });
  }
}

/** The places where one statement was said, those that stand apart from those that were put right or are to be listened to. */
function byStatement(found: readonly StatementResult[]): StatementResult[][] {
  const alike = (one: StatementResult, other: StatementResult) => one.id === other.id && one.corrected === other.corrected && one.listen === other.listen && (one.overruled === undefined) === (other.overruled === undefined);
  return found.flatMap((statement, place) => (found.findIndex((other) => alike(other, statement)) < place ? [] : [found.filter((other) => alike(other, statement))]));
}

function unsafeStatement(page: Page, places: readonly StatementResult[]): void {
  const { label, severity, corrected, listen, overruled } = places[0]!;
  const confidence = Math.max(...places.map((statement) => statement.confidence));
  const standing = stands(places[0]!);
  const note: Text = listen
    ? styled(": perhaps a sound-alike: listen; not counted", "doubt")
    : corrected
      ? ": put right before the end: listed, not counted"
      : "";
  page.entry({ indent: 2, lead: styled(severity, standing ? "bad" : "plain"), hang: 13, body: [strong(label), note], right: faint(overruled === undefined ? `${percent(confidence * 100)} sure` : "hand") });
  if (overruled !== undefined) page.entry({ indent: 15, body: [`heard by ${overruled.by} at ${heardPlace(overruled.at)}, ${overruled.when}; there the transcript has:`] });
  for (const { evidence } of places) page.entry({ indent: 15, body: spoken(evidence, page.symbols) });
}

function wrong(page: Page, { label, reason, evidence, corrected }: IncorrectResult): void {
  page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: [strong(label), ": ", reason, corrected ? "; put right later, not counted" : ""] });
  page.entry({ indent: 4, body: spoken(evidence, page.symbols) });
}
