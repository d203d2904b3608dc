import { existsSync } from "node:fs";
import type { Rubric } from "../rubric/schema.ts";
import { rememberCompiled } from "../mark.ts";
import { problem } from "./problems.ts";
import { shippedCompiled, shippedRubric, shippedRubrics } from "./shipped.ts";
import { didYouMean } from "../problem/nearest.ts";

/**
 * A shipped rubric by its name, or a rubric file by its path. A name goes before a file of that name: `./name` is the file.
 * @param asked how the command names it in messages; absent, by the option --rubric.
 * @param reads takes the path of every file that is read: the rubric, its blocks, its responses.
 * @throws ProblemError SW-R01 with the names there are.
 */
export async function findRubric(nameOrFile: string, reads: string[] = [], asked = `--rubric ${nameOrFile}`): Promise<Rubric> {
  const names = shippedRubrics().map(({ name }) => name);
  if (names.includes(nameOrFile)) {
    const rubric = shippedRubric(nameOrFile);
    rememberCompiled(rubric, shippedCompiled(nameOrFile));
    return rubric;
  }
  if (looksLikePath(nameOrFile) || existsSync(nameOrFile)) return (await import("./rubric-file.ts")).rubricFromFile(nameOrFile, reads);
  throw problem(
    "SW-R01",
    asked,
    "there is no shipped rubric of this name, and no such file",
    `${didYouMean(nameOrFile, names)}Shipped rubrics: ${names.join(", ")}. A rubric file is named by its path, such as ./${nameOrFile}.yaml.`,
  );
}

function looksLikePath(text: string): boolean {
  return /[/\\]|\.(ya?ml|json)$/i.test(text);
}
