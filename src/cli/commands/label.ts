import { withoutControls } from "../../report/clean.ts";
import { toJson } from "../../report/json.ts";
import { findStation } from "../../station/find.ts";
import { labelDocument, writeLabelText } from "../../station/label-file.ts";
import { withCheck } from "../../transcript/label-check.ts";
import { readTranscript } from "../../transcript/read.ts";
import { readInput } from "../input.ts";
import { checkOutput, writeOutput } from "../output.ts";
import type { OutputFlags, StationFlags } from "./options.ts";
import { stationOptions } from "./station-options.ts";

export type LabelFlags = Pick<OutputFlags, "format" | "out" | "force"> & StationFlags;

/** Writes the transcript with roles and times, to be corrected by hand and marked again. */
export async function runLabel(path: string, flags: LabelFlags): Promise<void> {
  const station = stationOptions(flags);
  const output = { out: flags.out, force: flags.force, inputs: [path] };
  checkOutput(output);
  const { bytes, file } = await readInput(path);
  const found = findStation(readTranscript(bytes, { file }), station);
  await writeOutput(flags.format === "json" ? toJson(labelDocument(found)) : withCheck(withoutControls(writeLabelText(found))), output);
}
