import type { RecordItem, SheetRecord } from "../../src/cohort/record.ts";
import type { Content } from "../../src/scoring/types.ts";

export interface Given {
  candidate: string;
  station?: string;
  attempt?: string;
  /** Content by item; earned follows: complete all of weight 1, partial half. */
  items: Record<string, Content>;
  critical?: string[];
  columns?: Record<string, string>;
  rubric?: Partial<SheetRecord["rubric"]>;
  more?: Partial<SheetRecord>;
}

/** An invented rehearsal as the analysis sees it. */
export function record({ candidate, station = "pen", attempt = "1", items, critical = [], columns = {}, rubric = {}, more = {} }: Given): SheetRecord {
  const list = Object.entries(items).map(([id, content]): RecordItem => ({
    id, label: `Item ${id}`, section: "s", critical: critical.includes(id), weight: 1, content,
    earned: content === "complete" ? 1 : content === "partial" ? 0.5 : 0, met: content === "complete",
    confidence: 0.9, listen: false, at: content === "absent" ? [] : [{ time: 65, line: 7, estimated: true }],
    elements: [{ id: `${id}-1`, label: `Element of ${id}`, content }],
  }));
  const counted = list.filter(({ content }) => ["complete", "partial", "incorrect", "absent"].includes(content));
  return {
    key: { candidate, station, attempt }, file: `${candidate}-${station}-${attempt}.txt`, columns,
    rubric: { id: station, title: `Station ${station}`, version: 1, hash: `hash-${station}`, ...rubric },
    outcome: "not-decided", percent: counted.length === 0 ? null : (100 * counted.reduce((sum, { earned }) => sum + earned, 0)) / counted.length, provisional: false,
    items: list, criticalMissed: list.filter((item) => item.critical && !item.met).map(({ id }) => id), criticalDoubted: [], incorrect: [], unsafe: [], unsafeByTool: [], unsafeListed: null,
    sections: [{ id: "s", title: "Section", seconds: 60 }], used: 300, overLimit: -120, limit: 420, wordsPerMinute: 140,
    costs: [{ what: "repeats", seconds: 10, words: 20 }], changes: [],
    ...more,
  };
}
