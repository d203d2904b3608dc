import type { Finding } from "../problem/problem.ts";
import { findingsOf } from "../rubric/form-faults.ts";
import { readYaml } from "../rubric/positions.ts";
import { responsesSchema } from "../rubric/responses.ts";

/** The form of a responses file alone. Its ids and phrases are checked through the rubric or block that names it. */
export function reviewResponses(text: string, file: string): { id: string | null; line: number; findings: Finding[] } {
  const yaml = readYaml(text, file);
  if (yaml.findings.length > 0) return { id: null, line: 1, findings: yaml.findings };
  const parsed = responsesSchema.safeParse(yaml.data);
  if (!parsed.success) return { id: null, line: 1, findings: findingsOf(parsed.error, yaml, responsesSchema) };
  return { id: parsed.data.id, line: yaml.positionOf(["id"]).line, findings: [] };
}
