import type { Corrections } from "../scoring/corrections.ts";
import { readCorrections } from "../scoring/corrections-file.ts";
import { problem, systemReason } from "./problems.ts";
import { readText } from "./rubric-file.ts";

/** The corrections of a sheet. @throws ProblemError SW-M01 */
export function correctionsFromFile(path: string): Corrections {
  let text: string;
  try {
    text = readText(path);
  } catch (error) {
    throw problem("SW-M01", path, `the corrections cannot be read: ${systemReason(error)}`, "Give the path of a file that starts with 'saidwell: corrections@1'.");
  }
  return readCorrections(text, path);
}
