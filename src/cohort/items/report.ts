import type { JoinedRecord } from "../agreement/join.ts";
import type { SheetRecord } from "../record.ts";
import { compareNatural } from "../result.ts";
import { examinationReliability, type ExaminationReliability } from "./examination.ts";
import { groupReport, type GroupReport } from "./groups.ts";
import { stationItems, type StationItems } from "./station.ts";

export interface ItemsReport {
  form: "saidwell/items@1";
  version: string;
  rehearsals: number;
  candidates: number;
  /** One for each station and version of its rubric. */
  stations: StationItems[];
  examination: ExaminationReliability;
  groups: GroupReport[];
}

/** @param by columns of the plan @param joined people's marks, for error rates */
export function itemsReport(records: readonly SheetRecord[], version: string, by: readonly string[] = [], joined: readonly JoinedRecord[] | null = null): ItemsReport {
  const stations = new Map<string, SheetRecord[]>();
  for (const record of records) {
    const name = JSON.stringify([record.key.station, record.rubric.id, record.rubric.hash]);
    const own = stations.get(name);
    if (own === undefined) stations.set(name, [record]);
    else own.push(record);
  }
  return {
    form: "saidwell/items@1",
    version,
    rehearsals: records.length,
    candidates: new Set(records.map(({ key }) => key.candidate)).size,
    stations: [...stations.values()].map(stationItems).sort((a, b) => compareNatural(a.station, b.station) || a.rubric.version - b.rubric.version),
    examination: examinationReliability(records),
    groups: by.map((column) => groupReport(records, column, joined)),
  };
}
