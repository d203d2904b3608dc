import { isDecided } from "../../scoring/content.ts";
import { stands } from "../../scoring/standing.ts";
import type { Content } from "../../scoring/types.ts";
import { firstAttempts } from "../first-attempts.ts";
import type { SheetRecord } from "../record.ts";
import { correctedItemTotal } from "../statistics/correlation.ts";
import { cronbachAlpha, isDichotomous, standardErrorOfMeasurement } from "../statistics/cronbach-alpha.ts";
import { notMeasurable, type Estimate } from "../statistics/estimate.ts";
import { mean } from "../statistics/moments.ts";
import { proportion } from "../statistics/proportion.ts";

/** An item that did not count for more than a fifth of the rehearsals is kept out of alpha: it would cost too many of them. */
const OFTEN_ENOUGH = 0.8;
/** Below this a correlation or alpha says little: its interval is wider than half the scale (common practice, no source). */
export const SMALL_COHORT = 30;

export interface ItemStatistics {
  item: string;
  label: string;
  critical: boolean;
  weight: number;
  /** Candidates for whom it counts, by the first attempt of each. */
  n: number;
  /** Of those, the share that met it. */
  earning: Estimate;
  /** Mean share of its marks that was earned, 0 to 1. */
  difficulty: number | null;
  contents: Partial<Record<Content, number>>;
  /** With the total of the other items. */
  itemTotal: Estimate;
  /** "all" or "none" earn it: it tells nobody apart. */
  everybody: "all" | "none" | null;
}

export interface StationItems {
  station: string;
  rubric: { id: string; title: string; version: number };
  /** All, later attempts too. */
  rehearsals: number;
  /** Everything below rests on the first attempt of each: attempts of one candidate are not independent. */
  candidates: number;
  items: ItemStatistics[];
  reliability: {
    name: "KR-20" | "Cronbach's alpha";
    figure: Estimate;
    /** Rehearsals, one a candidate, and items in the complete table it rests on. */
    rehearsals: number;
    items: number;
    /** Items kept out because they often did not count. */
    leftOut: string[];
    /** In per cent points of the total of those items. */
    errorOfMeasurement: Estimate;
  };
  /** `toConfirm` of the count listening may well find said. */
  criticalMissed: { item: string; label: string; missed: Estimate; count: number; toConfirm: number }[];
  incorrect: { item: string; element: string; label: string; standing: number; corrected: number }[];
  unsafe: { id: string; label: string; standing: number; corrected: number; toListen: number }[];
  time: TimeLost;
}

export interface TimeLost {
  timed: number;
  /** Mean seconds a rehearsal. */
  costs: { what: string; seconds: number }[];
  sections: { section: string; title: string; seconds: number }[];
  overLimit: Estimate;
}

/** Item analysis of the rehearsals of one station by one version of a rubric. @param records not empty, all of one rubric */
export function stationItems(records: readonly SheetRecord[]): StationItems {
  const firsts = firstAttempts(records);
  const [first] = firsts;
  const ids = first!.items.map(({ id }) => id);
  const table = completeTable(firsts, ids);
  const items = ids.map((id) => itemStatistics(firsts, id, table));
  return {
    station: first!.key.station,
    rubric: { id: first!.rubric.id, title: first!.rubric.title, version: first!.rubric.version },
    rehearsals: records.length,
    candidates: firsts.length,
    items,
    reliability: reliabilityOf(table),
    criticalMissed: items.filter(({ critical }) => critical).map(({ item, label }) => {
      const count = firsts.filter(({ criticalMissed }) => criticalMissed.includes(item)).length;
      return { item, label, missed: proportion(count, firsts.length), count, toConfirm: firsts.filter(({ criticalDoubted }) => criticalDoubted.includes(item)).length };
    }).filter(({ count }) => count > 0).sort((a, b) => b.count - a.count),
    incorrect: incorrectOf(firsts),
    unsafe: unsafeOf(firsts),
    time: timeLost(firsts),
  };
}

interface CompleteTable {
  ids: string[];
  weights: number[];
  marks: number[][];
  leftOut: string[];
}

/** Marks of rehearsals in which every item counts; items that often do not are kept out first. */
function completeTable(records: readonly SheetRecord[], ids: readonly string[]): CompleteTable {
  const often = ids.filter((id) => records.filter(({ items }) => items.some((item) => item.id === id && isDecided(item.content))).length >= OFTEN_ENOUGH * records.length);
  const rows = records.flatMap(({ items }) => {
    const row = often.map((id) => items.find((item) => item.id === id));
    return row.every((item) => item !== undefined && isDecided(item.content)) ? [row as NonNullable<(typeof row)[number]>[]] : [];
  });
  const weights = often.map((id) => records[0]!.items.find((item) => item.id === id)!.weight);
  return { ids: often, weights, marks: rows.map((row) => row.map(({ earned }) => earned)), leftOut: ids.filter((id) => !often.includes(id)) };
}

function itemStatistics(records: readonly SheetRecord[], id: string, table: CompleteTable): ItemStatistics {
  const all = records.flatMap(({ items }) => items.filter((item) => item.id === id));
  const { label, critical, weight } = all[0]!;
  const own = all.filter(({ content }) => isDecided(content));
  const met = own.filter((item) => item.met).length;
  const contents: Partial<Record<Content, number>> = {};
  for (const { content } of all) contents[content] = (contents[content] ?? 0) + 1;
  const place = table.ids.indexOf(id);
  return {
    item: id,
    label,
    critical,
    weight,
    n: own.length,
    earning: proportion(met, own.length),
    difficulty: own.length === 0 ? null : mean(own.map(({ earned }) => earned / weight)),
    contents,
    itemTotal: place < 0 ? notMeasurable(own.length, "it did not count in more than a fifth of the rehearsals") : correctedItemTotal(table.marks, place),
    everybody: own.length < 2 ? null : met === own.length ? "all" : met === 0 ? "none" : null,
  };
}

function reliabilityOf({ ids, weights, marks, leftOut }: CompleteTable): StationItems["reliability"] {
  const figure = cronbachAlpha(marks);
  const available = weights.reduce((sum, weight) => sum + weight, 0);
  const totals = marks.map((row) => (100 * row.reduce((sum, mark) => sum + mark, 0)) / available);
  return {
    name: marks.length > 0 && isDichotomous(marks, weights) ? "KR-20" : "Cronbach's alpha",
    figure,
    rehearsals: marks.length,
    items: ids.length,
    leftOut,
    errorOfMeasurement: standardErrorOfMeasurement(totals, figure),
  };
}

function incorrectOf(records: readonly SheetRecord[]): StationItems["incorrect"] {
  const found = new Map<string, StationItems["incorrect"][number]>();
  for (const { incorrect } of records) {
    for (const { item, element, label, corrected } of incorrect) {
      const key = `${item}/${element}`;
      const known = found.get(key) ?? { item, element, label, standing: 0, corrected: 0 };
      found.set(key, { ...known, standing: known.standing + Number(!corrected), corrected: known.corrected + Number(corrected) });
    }
  }
  return [...found.values()].sort((a, b) => b.standing - a.standing || b.corrected - a.corrected);
}

function unsafeOf(records: readonly SheetRecord[]): StationItems["unsafe"] {
  const found = new Map<string, StationItems["unsafe"][number]>();
  for (const { unsafe } of records) {
    for (const statement of unsafe) {
      const { id, label, corrected, listen } = statement;
      const known = found.get(id) ?? { id, label, standing: 0, corrected: 0, toListen: 0 };
      found.set(id, { ...known, standing: known.standing + Number(stands(statement)), corrected: known.corrected + Number(corrected && !listen), toListen: known.toListen + Number(listen) });
    }
  }
  return [...found.values()].sort((a, b) => b.standing - a.standing || b.corrected - a.corrected);
}

function timeLost(records: readonly SheetRecord[]): TimeLost {
  const timed = records.filter(({ used }) => used !== null);
  const average = (pairs: readonly { name: string; seconds: number | null }[]) => {
    const sums = new Map<string, number>();
    for (const { name, seconds } of pairs) sums.set(name, (sums.get(name) ?? 0) + (seconds ?? 0));
    return [...sums].map(([name, seconds]) => [name, seconds / timed.length] as const).sort((a, b) => b[1] - a[1]);
  };
  const titles = new Map(records.flatMap(({ sections }) => sections.map(({ id, title }) => [id, title] as const)));
  const limited = timed.filter(({ overLimit }) => overLimit !== null);
  return {
    timed: timed.length,
    costs: average(timed.flatMap(({ costs }) => costs.map(({ what, seconds }) => ({ name: what, seconds })))).map(([what, seconds]) => ({ what, seconds })),
    sections: average(timed.flatMap(({ sections }) => sections.map(({ id, seconds }) => ({ name: id, seconds })))).map(([section, seconds]) => ({ section, title: titles.get(section) ?? section, seconds })),
    overLimit: proportion(limited.filter(({ overLimit }) => overLimit! > 0).length, limited.length),
  };
}
