import data from "./label-names.yaml";
import type { Role } from "./types.ts";

type NameGroup = "candidate" | "professional" | "patient" | "examiner" | "announcer" | "unknown";
const GROUPS: readonly NameGroup[] = ["candidate", "professional", "patient", "examiner", "announcer", "unknown"];

/** Checks label-names.yaml. Throws an `Error` naming the group at fault. */
export function compileNames(source: unknown): Map<string, NameGroup> {
  if (typeof source !== "object" || source === null) throw new Error("label-names.yaml: must be groups of names");
  const names = new Map<string, NameGroup>();
  for (const group of GROUPS) {
    const list = (source as Record<string, unknown>)[group];
    if (!Array.isArray(list) || list.length === 0) throw new Error(`label-names.yaml: the group "${group}" must be a list of names`);
    for (const name of list) {
      if (typeof name !== "string" || name !== name.toLowerCase()) throw new Error(`label-names.yaml, ${group}: ${JSON.stringify(name)} is not a name in lower case`);
      if (names.has(name)) throw new Error(`label-names.yaml: "${name}" stands twice`);
      names.set(name, group);
    }
  }
  return names;
}

const NAMES = compileNames(data);

function groupOf(label: string): NameGroup | null {
  const words = label
    .toLowerCase()
    .replace(/[^\p{L}\s]+/gu, " ")
    .split(/\s+/)
    .filter((word) => word !== "");
  for (let length = words.length; length > 0; length--) {
    for (let from = 0; from + length <= words.length; from++) {
      const group = NAMES.get(words.slice(from, from + length).join(" "));
      if (group !== undefined) return group;
    }
  }
  return null;
}

/** The role that each label's name tells; labels whose names tell nothing ("Speaker 1", "Ana") are left out. */
export function rolesByName(labels: readonly string[]): Map<string, Role> {
  const groups = labels.map((label) => [label, groupOf(label)] as const);
  const namesCandidate = groups.some(([, group]) => group === "candidate");
  const roles = new Map<string, Role>();
  for (const [label, group] of groups) {
    if (group === "professional") {
      // Beside a named candidate a doctor or a pharmacist may be anyone: a prescriber on the telephone, the examiner.
      if (!namesCandidate) roles.set(label, "candidate");
    } else if (group !== null) roles.set(label, group);
  }
  return roles;
}
