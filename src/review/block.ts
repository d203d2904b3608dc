import { CATALOGUE } from "../problem/catalogue.ts";
import type { Finding } from "../problem/problem.ts";
import { again } from "../rubric/duplicates.ts";
import { findingsOf } from "../rubric/form-faults.ts";
import { readYaml } from "../rubric/positions.ts";
import { blockSchema } from "../rubric/schema.ts";

/** The form of a block alone, and the line of its id. Its phrases and references are checked through the rubrics that include it. */
export function reviewBlock(text: string, file: string): { id: string | null; line: number; findings: Finding[] } {
  const yaml = readYaml(text, file);
  if (yaml.findings.length > 0) return { id: null, line: 1, findings: yaml.findings };
  const parsed = blockSchema.safeParse(yaml.data);
  if (!parsed.success) return { id: null, line: 1, findings: findingsOf(parsed.error, yaml, blockSchema) };
  const { id, items } = parsed.data;
  const findings = again(items).map((item): Finding => ({ code: "SW-R06", severity: "error", file, ...yaml.positionOf(["items", item.index, "id"]), message: `the item '${item.id}' stands twice`, mend: CATALOGUE["SW-R06"].mend }));
  return { id, line: yaml.positionOf(["id"]).line, findings };
}
