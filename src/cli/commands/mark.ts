import { mark, type MarkOptions } from "../../mark.ts";
import { EXIT } from "../../problem/catalogue.ts";
import { clock } from "../../report/figures.ts";
import { render } from "../../report/render.ts";
import type { Rubric } from "../../rubric/schema.ts";
import { readTranscript } from "../../transcript/read.ts";
import { readInput } from "../input.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { problem } from "../problems.ts";
import { parseRequirements, unmet } from "../requirements.ts";
import { findRubric } from "../rubric-source.ts";
import { shippedRubrics } from "../shipped.ts";
import { tell } from "../tell.ts";
import { outputLook } from "../terminal.ts";
import type { OutputFlags, StationFlags } from "./options.ts";
import { stationOptions } from "./station-options.ts";

export interface MarkFlags extends OutputFlags, StationFlags {
  rubric?: string;
  limit?: number;
  target?: number;
  require?: string[];
  corrections?: string;
}

/** Marks one transcript. What is wrong with the command line is said before anything is read. */
export async function runMark(path: string, flags: MarkFlags): Promise<void> {
  const requirements = parseRequirements(flags.require ?? []);
  const station = stationOptions(flags);
  if (flags.rubric === undefined) throw noRubric();
  const output = { out: flags.out, force: flags.force, inputs: [path, flags.rubric, ...(flags.corrections === undefined ? [] : [flags.corrections])] };
  checkOutput(output);
  const rubric = await findRubric(flags.rubric, output.inputs);
  // Blocks and responses files are known only now.
  checkOutput(output);
  const times = timeOptions(flags, rubric);
  // A module of its own: hardly any sheet is corrected.
  const corrections = flags.corrections === undefined ? undefined : (await import("../corrections.ts")).correctionsFromFile(flags.corrections);
  const { bytes, file } = await readInput(path);
  const sheet = mark(readTranscript(bytes, { file }), rubric, { ...station, ...times, ...(corrections !== undefined && { corrections }) });
  const look = outputLook(flags);
  const text = render(sheet, { format: flags.format, ...look });
  const missing = unmet(sheet, requirements);
  if (missing.length > 0) process.exitCode = EXIT.requirementNotMet;
  await writeOutput(text, output);
  for (const { requirement, why } of missing) {
    tell([{ code: "SW-U06", severity: "error", file, message: `required, but does not hold: ${requirement}: ${why}` }]);
  }
}

export function noRubric(command = "saidwell mark") {
  const names = shippedRubrics().map(({ name }) => name);
  return problem("SW-U02", command, "no rubric was named", `Add --rubric with a name or the path of a rubric file. Shipped rubrics: ${names.join(", ")}.`);
}

/** @throws ProblemError SW-U03 when the target would be later than the limit. */
export function timeOptions({ limit, target }: Pick<MarkFlags, "limit" | "target">, rubric: Rubric): Pick<MarkOptions, "limit" | "target"> {
  const [limitMeant, targetMeant] = [limit ?? rubric.time.limit, target ?? rubric.time.target];
  if ((limit !== undefined || target !== undefined) && targetMeant > limitMeant) {
    const own = (given: number | undefined) => (given === undefined ? "the rubric's" : "your");
    throw problem(
      "SW-U03",
      "--limit, --target",
      `${own(target)} target (${clock(targetMeant)}) is later than ${own(limit)} limit (${clock(limitMeant)})`,
      target === undefined ? `Add a --target of ${clock(limitMeant)} or less.` : `Give a --target of ${clock(limitMeant)} or less, or a later --limit.`,
    );
  }
  return { ...(limit !== undefined && { limit }), ...(target !== undefined && { target }) };
}
