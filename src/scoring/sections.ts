import { meets } from "../station/span.ts";
import { isDecided } from "./content.ts";
import type { Context } from "./context.ts";
import type { JudgedItem } from "./items.ts";
import { hundredths, tenths } from "./rounding.ts";
import type { MarkSheet, SectionResult } from "./types.ts";

const percent = (earned: number, available: number) => (available === 0 ? null : Math.round((1000 * earned) / available) / 10);

export function sectionResults(context: Context, items: readonly JudgedItem[]): SectionResult[] {
  const seconds = secondsBySection(context, items);
  return context.rubric.sections.map((section) => {
    const own = items.filter(({ result }) => result.section === section.id && isDecided(result.content)).map(({ result }) => result);
    const earned = own.reduce((sum, item) => sum + item.earned, 0);
    const available = own.reduce((sum, item) => sum + item.weight, 0);
    return { id: section.id, title: section.title, earned: hundredths(earned), available: hundredths(available), coverage: percent(earned, available), seconds: seconds?.get(section.id) ?? (seconds === null ? null : 0) };
  });
}

export function totalOf(items: readonly JudgedItem[]): MarkSheet["total"] {
  const own = items.map(({ result }) => result).filter(({ content }) => isDecided(content));
  const earned = own.reduce((sum, item) => sum + item.earned, 0);
  const available = own.reduce((sum, item) => sum + item.weight, 0);
  return { earned: hundredths(earned), available: hundredths(available), percent: percent(earned, available), provisional: items.some(({ result }) => result.content === "cannot-tell") };
}

/** The candidate's talking time on each section: a sentence belongs to the section it says something of, else to the one before it. */
function secondsBySection(context: Context, items: readonly JudgedItem[]): Map<string, number> | null {
  const { station } = context;
  const { words, timing } = station.transcript;
  if (timing === "none") return null;
  const sectionOf = new Map(items.map(({ item, result }) => [item.id, result.section]));
  const seconds = new Map<string, number>();
  let current: string | null = null;
  for (const sentence of station.sentences) {
    if (!sentence.inStation || sentence.role !== "candidate") continue;
    const match = context.matches.elements.find(({ span }) => meets(span, sentence));
    current = match === undefined ? current : (sectionOf.get(match.item) ?? current);
    const [start, end] = [words[sentence.first]?.start, words[sentence.end - 1]?.end];
    if (current === null || start === null || start === undefined || end === null || end === undefined) continue;
    seconds.set(current, (seconds.get(current) ?? 0) + Math.max(0, end - start));
  }
  for (const [section, value] of seconds) seconds.set(section, tenths(value));
  return seconds;
}
