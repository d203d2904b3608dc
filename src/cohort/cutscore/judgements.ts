import type { FindingCode } from "../../problem/catalogue.ts";
import { ProblemError, type Finding } from "../../problem/problem.ts";
import { csvFinding, figure, readTable } from "../csv.ts";
import { LeftOut } from "../left-out.ts";

const CODE: FindingCode = "SW-A08";

/** What each judge expects of borderline candidates, item by item. */
export interface Judgement {
  judge: string;
  /** Empty where the line names none. */
  station: string;
  item: string;
  /** 0 to 1. */
  share: number;
  weight: number | null;
  /** Of the table, 1-based. */
  line: number;
}

/**
 * Modified Angoff judgements: CSV with the columns judge, item, percent (of borderline candidates who would earn it,
 * 0 to 100) and, where there are any, station and weight. Every judge must judge every item of a station.
 * @throws ProblemError SW-A08 with every fault
 */
export function readJudgements(text: string, file: string): Judgement[] {
  const faults: Finding[] = [];
  const found = readTable(text, file, CODE, "the table of judgements", ["judge", "item", "percent"]).flatMap(({ cells, line }): Judgement[] => {
    const value = (name: string) => cells.get(name) ?? "";
    const percent = figure(value("percent"));
    const weight = figure(value("weight"));
    const fault = (message: string, mend: string) => faults.push(csvFinding(CODE, file, line, message, mend));
    if (value("judge") === "" || value("item") === "") fault("the line names no judge or no item", "Fill in both.");
    if (percent === null || !(percent >= 0 && percent <= 100)) fault(`the judgement '${value("percent")}' is no per cent figure`, "Write a number from 0 to 100.");
    if (weight !== null && !(weight > 0)) fault(`the weight '${value("weight")}' is no positive number`, "Write the item's marks, or leave it empty.");
    return [{ judge: value("judge"), station: value("station"), item: value("item"), share: (percent ?? 0) / 100, weight, line }];
  });
  faults.push(...faultsBetween(found, file));
  if (faults.length > 0) throw new ProblemError(faults);
  return found;
}

/** What can only be seen by holding lines beside each other. */
function faultsBetween(judgements: readonly Judgement[], file: string): Finding[] {
  const faults: Finding[] = [];
  for (const station of new Set(judgements.map((one) => one.station))) {
    const own = judgements.filter((one) => one.station === station);
    const items = [...new Set(own.map(({ item }) => item))];
    const where = station === "" ? "" : ` of ${station}`;
    for (const judge of new Set(own.map((one) => one.judge))) {
      const judged = new Map<string, number>();
      for (const { item, line } of own.filter((one) => one.judge === judge)) {
        if (judged.has(item)) faults.push(csvFinding(CODE, file, line, `the judge '${judge}' has judged '${item}'${where} in line ${judged.get(item)!} already`, "Keep one of the two lines."));
        else judged.set(item, line);
      }
      const missing = items.filter((item) => !judged.has(item));
      if (missing.length > 0) faults.push(csvFinding(CODE, file, 1, `the judge '${judge}' has not judged ${missing.join(", ")}${where}`, "Every judge must judge every item: their cuts are compared."));
    }
    for (const item of items) {
      const [first, ...others] = own.filter((one) => one.item === item && one.weight !== null);
      const other = others.find(({ weight }) => weight !== first!.weight);
      if (other !== undefined) faults.push(csvFinding(CODE, file, other.line, `the weight of '${item}'${where} is ${other.weight!} here and ${first!.weight!} in line ${first!.line}`, "An item has one weight, whoever judges it."));
    }
  }
  return faults;
}

/** Items by station, in the results' own names; null where only scores are known. Empty when there are no candidates. */
export type KnownItems = ReadonlyMap<string, ReadonlySet<string> | null>;

/**
 * Brings judgements to the stations of the candidates. A line that names no station is of the only one there is. What is
 * of no station or item that is known is told, with its lines, and left out: a cut from it would be of something else.
 * @throws ProblemError SW-A08 where lines do not go together once their station is known
 */
export function placeJudgements(judgements: readonly Judgement[], known: KnownItems, file: string): { judgements: Judgement[]; findings: Finding[] } {
  if (known.size === 0) return { judgements: [...judgements], findings: [] };
  const lost = new LeftOut();
  const named = new Set(judgements.map(({ station }) => station));
  const [only] = known.size === 1 ? known.keys() : [];
  const placed = judgements.flatMap((judgement): Judgement[] => {
    const { station, item, line } = judgement;
    // A table of scores without stations is of one, and so are judgements that all name the same one.
    const own = known.has(station) ? station : only !== undefined && (station === "" || (only === "" && named.size === 1)) ? only : null;
    if (own === null) {
      lost.add(station === "" ? "it is not said of which station the judgement is" : `there are no scores of the station '${station}'`, `Fill in the column station with one of ${[...known.keys()].map((name) => `'${name}'`).join(", ")}.`, line);
      return [];
    }
    const items = known.get(own);
    if (items != null && !items.has(item)) {
      lost.add(`the station '${own}' has no item '${item}'`, "'saidwell rubric show' lists the items as they are called.", line);
      return [];
    }
    return [{ ...judgement, station: own }];
  });
  const faults = faultsBetween(placed, file);
  if (faults.length > 0) throw new ProblemError(faults);
  return { judgements: placed, findings: lost.findings("SW-A09", file, "judgement") };
}
