import type { z } from "zod";
import type { Fault, Finding } from "../problem/problem.ts";
import { fieldsAt } from "./form.ts";
import { inWords, type Issue } from "./issue-words.ts";
import { placeWords } from "./place-words.ts";
import type { PositionedYaml } from "./positioned-yaml.ts";
import { rubricSchema } from "./schema.ts";
import { unknownField } from "./unknown-field.ts";
import { valueAt } from "./value-at.ts";

/**
 * Turns zod's issues into findings with file, line, column and a way to mend each.
 * @param schema the form that was asked for, of the part that the issues are of.
 * @param at the way to that part.
 */
export function findingsOf(error: z.ZodError, yaml: PositionedYaml, schema: z.ZodType, at: readonly PropertyKey[] = []): Finding[] {
  if (yaml.data === null || yaml.data === undefined) {
    return [{ code: "SW-R03", severity: "error", file: yaml.file, line: 1, column: 1, message: "the file is empty", mend: emptyMend(schema) }];
  }
  const finding = (path: readonly PropertyKey[], place: readonly PropertyKey[], { message, mend }: Fault): Finding => ({ code: "SW-R03", severity: "error", file: yaml.file, ...yaml.positionOf([...at, ...place]), message: `${placeWords([...at, ...path], yaml.data)}: ${lowerFirst(message)}`, mend });
  const issues = error.issues.flatMap((issue) => flatten(issue, valueAt(yaml.data, [...at, ...issue.path])));
  const other = at.length > 0 ? null : otherForm(issues, String(valueAt(yaml.data, ["saidwell"])));
  if (other !== null) return [finding(["saidwell"], ["saidwell"], other)];
  const meant = new Set<string>();
  const strange = issues.flatMap((issue) => {
    if (issue.code !== "unrecognized_keys") return [];
    const value = valueAt(yaml.data, [...at, ...issue.path]);
    return issue.keys.map((key) => {
      const { told, name } = unknownField(key, schema, issue.path, value);
      if (name !== undefined) meant.add(JSON.stringify([...issue.path, name]));
      return finding(issue.path, [...issue.path, key], told);
    });
  });
  // A field whose name has a slip in it is not missing besides.
  const others = issues.filter((issue) => issue.code !== "unrecognized_keys" && !meant.has(JSON.stringify(issue.path)));
  return [...strange, ...others.map((issue) => finding(issue.path, issue.path, inWords(issue, valueAt(yaml.data, [...at, ...issue.path]), schema)))].sort((a, b) => a.line! - b.line! || a.column! - b.column!);
}

function emptyMend(schema: z.ZodType): string {
  return schema === rubricSchema ? "'saidwell rubric new' prints a rubric to start from." : `Write fields, 'name: value' one a line: ${fieldsAt(schema, [], undefined)!.needed.join(", ")}.`;
}

/** What the first line of one of our files says. */
const FORM = /^(rubric|block|responses|corrections)@\d+$/;

/** A file of another form than was asked for is that alone: what it has and has not follows from it. @param claim what its first line says. */
function otherForm(issues: readonly Issue[], claim: string): Fault | null {
  const form = issues.find((issue): issue is Extract<Issue, { code: "invalid_value" }> => issue.code === "invalid_value" && issue.path.join() === "saidwell");
  if (form === undefined || !FORM.test(claim)) return null;
  const [asked] = form.values.map(String);
  if (asked!.split("@")[0] === claim.split("@")[0]) return null;
  return { message: `this is '${claim}', and '${asked}' belongs here`, mend: `Name a file that starts with 'saidwell: ${asked}', or write that here if it is one.` };
}

/** A union fails with the issues of every branch; the branch that knows most of what is written, or got furthest, is what the person meant. */
function flatten(issue: Issue, value: unknown): Issue[] {
  if (issue.code !== "invalid_union" || issue.errors.length === 0) return [issue];
  const meant = [...issue.errors].sort((a, b) => strangers(a) - strangers(b) || depth(b) - depth(a))[0]!;
  if (depth(meant) === 0 && meant.every(({ code }) => code === "invalid_type" || code === "invalid_value")) return [issue];
  return meant.flatMap((inner) => flatten({ ...inner, path: [...issue.path, ...inner.path] }, valueAt(value, inner.path)));
}

function strangers(issues: readonly Issue[]): number {
  return issues.reduce((sum, issue) => sum + (issue.code === "unrecognized_keys" && issue.path.length === 0 ? issue.keys.length : 0), 0);
}

function depth(issues: readonly Issue[]): number {
  return Math.max(0, ...issues.map((issue) => issue.path.length + (issue.code === "unrecognized_keys" ? 1 : 0)));
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
