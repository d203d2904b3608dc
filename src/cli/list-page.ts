import { Page } from "../report/page.ts";
import { painter } from "../report/style.ts";
import type { OutputFlags } from "./commands/options.ts";
import { outputLook } from "./terminal.ts";

/** A list on a wider line is tiring to read across. */
const WIDEST_LIST = 100;

/** A page for a list of the program's own: rubrics, codes. */
export function listPage(flags: Pick<OutputFlags, "width" | "colour">): Page {
  const { width, colour, ascii } = outputLook({ width: flags.width, colour: flags.colour });
  return new Page({ width: Math.min(width, WIDEST_LIST), ascii, paint: painter(colour) });
}
