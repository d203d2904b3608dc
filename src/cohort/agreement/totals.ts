import { isDecided } from "../../scoring/content.ts";
import { type SheetRecord } from "../record.ts";
import { limitsOfAgreement, type LimitsOfAgreement } from "../statistics/bland-altman.ts";
import { correlation } from "../statistics/correlation.ts";
import { notMeasurable, type Estimate, type NotMeasurable } from "../statistics/estimate.ts";
import { intraclassCorrelations, INTRACLASS_MODEL, type IntraclassForm } from "../statistics/intraclass.ts";
import type { JoinedRecord } from "./join.ts";

/** A person's "partial" carries no number: it counts as half the item's marks, for the tool alike when totals are compared. */
const PARTIAL = 0.5;

/** With fewer rehearsals the limits may lie beyond what two totals can differ by; common practice, no source. */
export const FEWEST_TOTALS = 5;
/** Below this correlations and limits are a hint only; common practice, no source. */
export const FEW_TOTALS = 30;

/** Where the per cent figures come from: people's `overall:total` beside the tool's own, or worked out from marks. */
export type TotalsBasis = "given" | "from marks";

type Intraclass = { form: IntraclassForm; model: string; figure: Estimate }[];

/** Two markers, on the rehearsals and items that these two marked. First minus second, in points of the per cent total. */
export interface PairTotals {
  first: string;
  second: string;
  basis: TotalsBasis;
  /** Rehearsals with a total of both. */
  n: number;
  limits: LimitsOfAgreement | NotMeasurable;
  correlation: Estimate;
  intraclass: Intraclass;
}

export interface TotalsReport {
  /** Of the intraclass correlations of all markers together: whichever more rehearsals have. */
  basis: TotalsBasis;
  markers: string[];
  /** Rehearsals with a total of every marker. */
  n: number;
  intraclass: Intraclass;
  /** Each two markers; twice where totals were given and can be worked out from marks as well. */
  limits: PairTotals[];
}

/** Totals of one rehearsal by place of the markers (the tool first); null where there is none. */
type TotalsOf = (joined: JoinedRecord, markers: readonly number[]) => (number | null)[];

/**
 * Agreement of per cent totals. Two markers are compared wherever both have a total, whatever the others marked: people
 * who share the work overlap in part only. Totals that people gave are compared with the tool's own total; totals from
 * marks are worked out in one way for all from the items that those compared decided.
 * @param tool its name among the markers
 */
export function totalsReport(records: readonly JoinedRecord[], people: readonly string[], tool: string): TotalsReport {
  const markers = [tool, ...people];
  const of: Record<TotalsBasis, TotalsOf> = { given: (joined, places) => givenTotals(joined, people, places), "from marks": (joined, places) => totalsFromMarks(joined, people, places) };
  const table = (basis: TotalsBasis, places: readonly number[]) => records.flatMap((joined) => {
    const totals = of[basis](joined, places);
    return totals.every((total) => total !== null) ? [totals] : [];
  });
  const all = markers.map((_, place) => place);
  const [given, worked] = [table("given", all), table("from marks", all)];
  const basis = given.length > 0 && given.length >= worked.length ? "given" : "from marks";
  const rows = basis === "given" ? given : worked;
  return {
    basis,
    markers,
    n: rows.length,
    intraclass: intraclassOf(rows, "rehearsals have a total of every marker"),
    limits: pairsOf(markers).flatMap(([a, b]) => {
      const both = (["given", "from marks"] as const).map((own) => ({ basis: own, rows: table(own, [a, b]) }));
      const used = both.filter(({ rows: pairs }) => pairs.length > 0);
      return (used.length > 0 ? used : both.slice(1)).map((own) => pairTotals(markers[a]!, markers[b]!, own.basis, own.rows));
    }),
  };
}

function pairTotals(first: string, second: string, basis: TotalsBasis, rows: readonly number[][]): PairTotals {
  const pairs = rows.map(([a, b]) => [a!, b!] as const);
  const few = tooFew(rows.length, "rehearsals have a total of both");
  return {
    first,
    second,
    basis,
    n: rows.length,
    limits: few ?? limitsOfAgreement(pairs),
    correlation: few ?? correlation(pairs.map(([a]) => a), pairs.map(([, b]) => b)),
    intraclass: intraclassOf(rows, "rehearsals have a total of both"),
  };
}

function tooFew(n: number, what: string): NotMeasurable | null {
  return n >= FEWEST_TOTALS ? null : notMeasurable(n, `${n === 0 ? "no" : `only ${n}`} ${n === 1 ? what.replace("rehearsals have", "rehearsal has") : what}, and below ${FEWEST_TOTALS} the figures say nothing`);
}

function intraclassOf(rows: readonly number[][], what: string): Intraclass {
  const few = tooFew(rows.length, what);
  const icc = intraclassCorrelations(rows);
  return (Object.keys(INTRACLASS_MODEL) as IntraclassForm[]).map((form) => ({ form, model: INTRACLASS_MODEL[form], figure: few ?? icc[form] }));
}

function givenTotals({ record, people: sheets }: JoinedRecord, people: readonly string[], places: readonly number[]): (number | null)[] {
  return places.map((place) => (place === 0 ? record.percent : (sheets.get(people[place - 1]!)?.whole.total ?? null)));
}

function totalsFromMarks({ record: { items }, people: sheets }: JoinedRecord, people: readonly string[], places: readonly number[]): (number | null)[] {
  const mark = ({ id, content }: SheetRecord["items"][number], place: number) => (place === 0 ? content : sheets.get(people[place - 1]!)?.items.get(id));
  const usable = items.filter((item) => places.every((place) => {
    const own = mark(item, place);
    return own !== undefined && isDecided(own);
  }));
  const available = usable.reduce((sum, { weight }) => sum + weight, 0);
  if (available === 0) return places.map(() => null);
  const worth = (content: string | undefined) => (content === "complete" ? 1 : content === "partial" ? PARTIAL : 0);
  return places.map((place) => (100 * usable.reduce((sum, item) => sum + item.weight * worth(mark(item, place)), 0)) / available);
}

/** Every two of them, by place. */
export function pairsOf(markers: readonly string[]): [number, number][] {
  return markers.flatMap((_, a) => markers.slice(a + 1).map((_, step): [number, number] => [a, a + 1 + step]));
}
