import { stands } from "../scoring/standing.ts";
import type { Measured } from "../scoring/types.ts";
import { doubtedOf } from "./record.ts";
import { isMarked, type CohortResult } from "./result.ts";

/** A cell of a table: null where a figure is not measurable or there is no sheet. */
export type Cell = string | number | boolean | null;

export interface Column {
  name: string;
  type: "STRING" | "DOUBLE" | "INT32" | "BOOLEAN";
  value: (result: CohortResult) => Cell;
}

/** Keeps a column of the plan apart from the table's own. */
const PLAN_PREFIX = "plan_";

/**
 * The gradebook's columns: one row a rehearsal. Times in seconds, shares in per cent.
 * @param extra names of the plan's other columns.
 */
export function gradebookColumns(extra: readonly string[]): Column[] {
  const own = ownColumns();
  const planned = planNames(extra).map(([name, title]): Column => ({ name: title, type: "STRING", value: ({ columns }) => columns[name] ?? null }));
  return [...own.slice(0, 3), ...planned, ...own.slice(3)];
}

/**
 * Each of the plan's names with the title of its column: no two columns of a table have one name, or one of them is lost
 * to who reads it. And the same title in both tables: they are joined by their columns.
 */
function planNames(extra: readonly string[]): [name: string, title: string][] {
  const own = new Set([...ownColumns(), ...ownItemColumns()].map(({ name }) => name));
  const taken = new Set([...own, ...extra.filter((name) => !own.has(name))]);
  return extra.map((name) => {
    let title = name;
    if (own.has(name)) {
      do title = `${PLAN_PREFIX}${title}`;
      while (taken.has(title));
      taken.add(title);
    }
    return [name, title];
  });
}

function ownColumns(): Column[] {
  const column = (name: string, type: Column["type"], value: Column["value"]): Column => ({ name, type, value });
  const marked = (name: string, type: Column["type"], value: (sheet: NonNullable<CohortResult["sheet"]>) => Cell) =>
    column(name, type, (result) => (isMarked(result) ? value(result.sheet) : null));
  return [
    column("candidate", "STRING", ({ key }) => key.candidate),
    column("station", "STRING", ({ key }) => key.station),
    column("attempt", "STRING", ({ key }) => key.attempt),
    marked("result", "STRING", ({ result }) => result.outcome),
    marked("earned", "DOUBLE", ({ total }) => total.earned),
    marked("available", "DOUBLE", ({ total }) => total.available),
    marked("coverage_percent", "DOUBLE", ({ total }) => total.percent),
    // The result's own "provisional" stands in its column: this one is of the figure before it.
    marked("total_provisional", "BOOLEAN", ({ total }) => total.provisional),
    marked("critical_met", "INT32", ({ critical }) => critical.met),
    marked("critical_total", "INT32", ({ critical }) => critical.total),
    marked("critical_missed", "STRING", ({ critical }) => critical.missed.join("; ")),
    marked("critical_to_confirm", "STRING", (sheet) => [...doubtedOf(sheet), ...sheet.critical.unsure].join("; ")),
    marked("unsafe", "INT32", ({ unsafe }) => standing(unsafe.found).length),
    marked("unsafe_found", "STRING", ({ unsafe }) => standing(unsafe.found).join("; ")),
    marked("unsafe_to_confirm", "STRING", ({ unsafe }) => toConfirm(unsafe.found).join("; ")),
    marked("incorrect", "INT32", ({ incorrect }) => incorrect.filter(({ corrected }) => !corrected).length),
    marked("cannot_tell", "INT32", ({ items }) => items.filter(({ content }) => content === "cannot-tell").length),
    marked("to_listen", "INT32", ({ items }) => items.filter(({ listen }) => listen).length),
    // Sheets of earlier versions have no corrections.
    marked("overruled", "INT32", ({ corrections }) => (corrections ?? null)?.applied.length ?? 0),
    marked("time_used", "DOUBLE", ({ time }) => figure(time.used)),
    marked("over_limit", "DOUBLE", ({ time }) => figure(time.overLimit)),
    marked("words_per_minute", "DOUBLE", ({ time }) => figure(time.wordsPerMinute)),
    marked("patient_share", "DOUBLE", ({ time }) => time.patientShare),
    marked("rubric", "STRING", ({ rubric }) => rubric.id),
    marked("rubric_version", "INT32", ({ rubric }) => rubric.version),
    column("file", "STRING", ({ file }) => file),
    column("error", "STRING", (result) => (isMarked(result) ? null : result.errors.map(({ code }) => code).join("; "))),
    column("reason", "STRING", (result) => (isMarked(result) ? null : result.errors.map(({ message }) => message).join("; "))),
  ];
}

type Found = NonNullable<CohortResult["sheet"]>["unsafe"]["found"];

/** Ids of the statements that stand, each once. */
function standing(found: Found): string[] {
  return [...new Set(found.filter(stands).map(({ id }) => id))];
}

/** Ids of those that only somebody who listens can tell, and that do not stand elsewhere in the talk. */
function toConfirm(found: Found): string[] {
  const stand = standing(found);
  return [...new Set(found.filter(({ corrected, listen, id }) => listen && !corrected && !stand.includes(id)).map(({ id }) => id))];
}

function figure({ value }: Measured<number> | { value: null }): number | null {
  return value;
}

/** One item of one rehearsal, for analysis. */
export interface ItemRow {
  result: CohortResult;
  place: number;
}

interface ItemColumn {
  name: string;
  type: Column["type"];
  value: (row: ItemRow) => Cell;
}

/** Columns of the table of items: one row an item of a marked rehearsal. */
export function itemColumns(extra: readonly string[]): ItemColumn[] {
  const own = ownItemColumns();
  const planned = planNames(extra).map(([name, title]): ItemColumn => ({ name: title, type: "STRING", value: ({ result }) => result.columns[name] ?? null }));
  return [...own.slice(0, 3), ...planned, ...own.slice(3)];
}

function ownItemColumns(): ItemColumn[] {
  const key = (name: keyof CohortResult["key"]): ItemColumn => ({ name, type: "STRING", value: ({ result }) => result.key[name] });
  const item = (name: string, type: Column["type"], value: (item: NonNullable<CohortResult["sheet"]>["items"][number]) => Cell): ItemColumn => ({
    name,
    type,
    value: ({ result, place }) => value(result.sheet!.items[place]!),
  });
  return [
    key("candidate"),
    key("station"),
    key("attempt"),
    { name: "rubric", type: "STRING", value: ({ result }) => result.sheet!.rubric.id },
    { name: "rubric_version", type: "INT32", value: ({ result }) => result.sheet!.rubric.version },
    item("item", "STRING", ({ id }) => id),
    item("section", "STRING", ({ section }) => section),
    item("critical", "BOOLEAN", ({ critical }) => critical),
    item("weight", "DOUBLE", ({ weight }) => weight),
    item("content", "STRING", ({ content }) => content),
    item("elicitation", "STRING", ({ elicitation }) => elicitation),
    item("earned", "DOUBLE", ({ earned }) => earned),
    item("met", "BOOLEAN", ({ met }) => met),
    item("confidence", "DOUBLE", ({ confidence }) => confidence),
    item("listen", "BOOLEAN", ({ listen }) => listen),
    item("first_said", "DOUBLE", ({ firstSaid }) => firstSaid?.start ?? null),
  ];
}
