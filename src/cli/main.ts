import { fail } from "./fail.ts";
import { buildProgram } from "./program.ts";

// A reader that went away (`saidwell mark ... | head`) is no error; what else happens to the stream reaches the writer.
process.stdout.on("error", () => {});
process.stderr.on("error", () => {});

async function main(): Promise<void> {
  try {
    await buildProgram().parseAsync(process.argv);
  } catch (error) {
    process.exitCode = fail(error, (text) => process.stderr.write(text), process.env);
  }
}

/** Settled when the command is done: the build waits for it before it keeps the compiled code. */
export const finished = main();
