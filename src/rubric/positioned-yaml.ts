import type { Finding } from "../problem/problem.ts";

/** A YAML text read once, able to say on which line a value of it stands. */
export interface PositionedYaml {
  file: string;
  data: unknown;
  positionOf(path: readonly PropertyKey[]): { line: number; column: number };
  /** Faults of the YAML itself. */
  findings: Finding[];
}
