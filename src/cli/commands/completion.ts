import type { Command } from "commander";
import { completionModel } from "../completion/model.ts";
import { bashScript } from "../completion/bash.ts";
import { fishScript } from "../completion/fish.ts";
import { zshScript } from "../completion/zsh.ts";
import { writeOutput } from "../output.ts";
import type { Shell } from "../program.ts";
import { REQUIREMENTS } from "../requirements.ts";
import { shippedRubrics } from "../shipped.ts";
import { ENTRIES } from "../exit-codes.ts";

const SCRIPTS = { bash: bashScript, zsh: zshScript, fish: fishScript };

/** Prints the script, made from the very commands and options that commander reads. */
export async function runCompletion(program: Command, shell: Shell): Promise<void> {
  const model = completionModel(program, {
    rubric: shippedRubrics().map(({ name }) => name),
    require: REQUIREMENTS.map(({ form }) => form.replace(/\[.*$/, "").replace(/=.*$/, "=")),
    code: [...ENTRIES.keys()],
  });
  await writeOutput(SCRIPTS[shell](model), { inputs: [] });
}
