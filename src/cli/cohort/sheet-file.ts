import writeFileAtomic from "write-file-atomic";
import { render } from "../../report/render.ts";
import type { MarkSheet } from "../../scoring/types.ts";

/** Sheets are read in editors and printed: the same text everywhere, whatever terminal the run was started from. */
const WIDTH = 80;

export const TEXT_ENDING = ".txt";
export const JSON_ENDING = ".json";

/** Writes a sheet as a whole or not at all. Not flushed to the disk one by one: it can be made again from the results. */
export function writeSheet(path: string, sheet: MarkSheet, json: boolean): void {
  writeFileAtomic.sync(path + TEXT_ENDING, render(sheet, { format: "text", width: WIDTH }), { fsync: false });
  if (json) writeFileAtomic.sync(path + JSON_ENDING, render(sheet, { format: "json" }), { fsync: false });
}
