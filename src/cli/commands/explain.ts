import { explain } from "../../mark.ts";
import { renderExplanation } from "../../report/explanation.ts";
import { itemsOf } from "../../rubric/items.ts";
import { readTranscript } from "../../transcript/read.ts";
import { readInput } from "../input.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { problem } from "../problems.ts";
import { findRubric } from "../rubric-source.ts";
import { didYouMean } from "../../problem/nearest.ts";
import { outputLook } from "../terminal.ts";
import { noRubric } from "./mark.ts";
import type { OutputFlags, StationFlags } from "./options.ts";
import { stationOptions } from "./station-options.ts";

export interface ExplainFlags extends OutputFlags, StationFlags {
  rubric?: string;
  item?: string;
}

/** Prints how one item of the rubric was decided. */
export async function runExplain(path: string, flags: ExplainFlags): Promise<void> {
  const station = stationOptions(flags);
  if (flags.rubric === undefined) throw noRubric("saidwell explain");
  const output = { out: flags.out, force: flags.force, inputs: [path, flags.rubric] };
  checkOutput(output);
  const rubric = await findRubric(flags.rubric, output.inputs);
  // Blocks and responses files are known only now.
  checkOutput(output);
  const ids = itemsOf(rubric).map(({ id }) => id);
  if (flags.item === undefined || !ids.includes(flags.item)) throw noItem(flags.item, rubric.id, ids);
  const { bytes, file } = await readInput(path);
  const explanation = explain(readTranscript(bytes, { file }), rubric, flags.item, station);
  if (explanation === null) throw noItem(flags.item, rubric.id, ids);
  const look = outputLook(flags);
  await writeOutput(renderExplanation(explanation, { format: flags.format, ...look }), output);
}

function noItem(item: string | undefined, rubric: string, ids: readonly string[]) {
  if (item === undefined) return problem("SW-U07", "saidwell explain", "no item was named", `Add --item with one of: ${ids.join(", ")}.`);
  return problem("SW-U07", "--item", `the rubric '${rubric}' has no item '${item}'`, `${didYouMean(item, ids)}Its items: ${ids.join(", ")}.`);
}
