import type { ExitCode } from "../../problem/catalogue.ts";
import { toJson } from "../../report/json.ts";
import { strong } from "../../report/page.ts";
import { ENTRIES, EXIT_MEANING } from "../exit-codes.ts";
import { listPage } from "../list-page.ts";
import { writeOutput } from "../output.ts";
import { problem } from "../problems.ts";
import { didYouMean } from "../../problem/nearest.ts";
import type { OutputFlags } from "./options.ts";

const EXITS = Object.entries(EXIT_MEANING).map(([code, meaning]) => ({ exit: Number(code) as ExitCode, meaning }));

/** The catalogue of codes, or one of them. @throws ProblemError SW-U05 */
export async function runCodes(code: string | undefined, flags: Pick<OutputFlags, "format" | "width" | "colour">): Promise<void> {
  const listed = [...ENTRIES].filter(([name]) => code === undefined || name === canonical(code)).map(([name, entry]) => ({ code: name, ...entry }));
  if (code !== undefined && listed.length === 0) {
    throw problem("SW-U05", `saidwell codes ${code}`, "there is no such code", `${didYouMean(canonical(code), [...ENTRIES.keys()])}'saidwell codes' lists them all.`);
  }
  if (flags.format === "json") return writeOutput(toJson(code === undefined ? { exits: EXITS, codes: listed } : listed[0]), { inputs: [] });
  const page = listPage(flags);
  if (code === undefined) {
    page.heading("Exit codes");
    for (const { exit, meaning } of EXITS) page.entry({ indent: 2, lead: strong(String(exit)), hang: 8, body: meaning });
    page.heading("Codes of messages", "exit");
  }
  for (const { code: name, title, exit } of listed) {
    page.entry({ indent: 2, lead: strong(name), hang: 8, body: title, right: exit === undefined ? "warning" : String(exit) });
  }
  if (code !== undefined && listed[0]!.mend !== undefined) page.entry({ indent: 10, body: listed[0]!.mend });
  if (code !== undefined) page.entry({ indent: 10, body: consequence(listed[0]!.code, listed[0]!.exit) });
  await writeOutput(page.toString(), { inputs: [] });
}

function consequence(code: string, exit: ExitCode | undefined): string {
  // A check goes on to the end and tells all that it finds.
  const check = code.startsWith("SW-C");
  if (exit === undefined) return check ? "A warning or a note: the check lists it." : "A warning: the work goes on, and the sheet lists it.";
  return check ? `An error: the check lists it and ends with exit code ${exit}.` : `An error: the work stops with exit code ${exit}, ${EXIT_MEANING[exit]}.`;
}

/** `sw-t03`, `t03` and `SW-T03` are the same code. */
function canonical(typed: string): string {
  const upper = typed.trim().toUpperCase();
  return upper.startsWith("SW-") ? upper : `SW-${upper}`;
}
