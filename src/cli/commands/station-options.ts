import type { StationOptions } from "../../station/types.ts";
import { problem } from "../problems.ts";
import type { StationFlags } from "./options.ts";

/** @throws ProblemError SW-U03 when nothing can lie between the two times. */
export function stationOptions({ from, to, candidate }: StationFlags): StationOptions {
  if (from !== undefined && to !== undefined && to <= from) {
    throw problem("SW-U03", "--from, --to", `the station would end (${to} s) before it starts (${from} s)`, "Give --to a later time than --from.");
  }
  return { ...(from !== undefined && { from }), ...(to !== undefined && { to }), ...(candidate !== undefined && { candidate }) };
}
