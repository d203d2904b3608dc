import { counts as decided, type SheetRecord } from "../record.ts";
import { limitsOfAgreement, type LimitsOfAgreement } from "../statistics/bland-altman.ts";
import { correlation } from "../statistics/correlation.ts";
import type { Estimate, NotMeasurable } from "../statistics/estimate.ts";
import { intraclassCorrelations, INTRACLASS_MODEL, type IntraclassForm } from "../statistics/intraclass.ts";
import type { JoinedRecord, PersonSheet } from "./join.ts";

/** A person's "partial" carries no number: it counts as half the item's marks, for the tool alike when totals are compared. */
const PARTIAL = 0.5;

export interface TotalsReport {
  /** Where the per cent figures come from. */
  basis: "given" | "from marks";
  markers: string[];
  /** Rehearsals with a total of every marker. */
  n: number;
  intraclass: { form: IntraclassForm; model: string; figure: Estimate }[];
  /** First minus second, in points of the per cent total. */
  limits: { first: string; second: string; limits: LimitsOfAgreement | NotMeasurable; correlation: Estimate }[];
}

/**
 * Agreement of per cent totals. Where every marker gave `overall:total` these are compared with the tool's own total;
 * otherwise all totals, the tool's too, are worked out in one way from the items that all of them decided.
 * @param tool its name among the markers
 */
export function totalsReport(records: readonly JoinedRecord[], people: readonly string[], tool: string): TotalsReport {
  const given = records.length > 0 && records.some(({ people: sheets }) => people.every((name) => sheets.get(name)?.whole.total !== undefined));
  const markers = [tool, ...people];
  const rows = records.flatMap(({ record, people: sheets }) => {
    const own = people.map((name) => sheets.get(name));
    const totals = given ? givenTotals(record, own) : totalsFromMarks(record, own);
    return totals === null ? [] : [totals];
  });
  const icc = intraclassCorrelations(rows);
  return {
    basis: given ? "given" : "from marks",
    markers,
    n: rows.length,
    intraclass: (Object.keys(INTRACLASS_MODEL) as IntraclassForm[]).map((form) => ({ form, model: INTRACLASS_MODEL[form], figure: icc[form] })),
    limits: pairsOf(markers).map(([a, b]) => ({
      first: markers[a]!,
      second: markers[b]!,
      limits: limitsOfAgreement(rows.map((row) => [row[a]!, row[b]!] as const)),
      correlation: correlation(rows.map((row) => row[a]!), rows.map((row) => row[b]!)),
    })),
  };
}

function givenTotals({ percent }: SheetRecord, own: readonly (PersonSheet | undefined)[]): number[] | null {
  const totals = [percent, ...own.map((sheet) => sheet?.whole.total ?? null)];
  return totals.every((total) => total !== null) ? totals : null;
}

function totalsFromMarks({ items }: SheetRecord, own: readonly (PersonSheet | undefined)[]): number[] | null {
  const usable = items.filter(({ id, content }) => decided(content) && own.every((sheet) => {
    const mark = sheet?.items.get(id);
    return mark !== undefined && decided(mark);
  }));
  const available = usable.reduce((sum, { weight }) => sum + weight, 0);
  if (available === 0) return null;
  const worth = (content: string) => (content === "complete" ? 1 : content === "partial" ? PARTIAL : 0);
  const total = (of: (item: SheetRecord["items"][number]) => string) => (100 * usable.reduce((sum, item) => sum + item.weight * worth(of(item)), 0)) / available;
  return [total(({ content }) => content), ...own.map((sheet) => total(({ id }) => sheet!.items.get(id)!))];
}

/** Every two of them, by place. */
export function pairsOf(markers: readonly string[]): [number, number][] {
  return markers.flatMap((_, a) => markers.slice(a + 1).map((_, step): [number, number] => [a, a + 1 + step]));
}
