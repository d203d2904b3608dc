import { readFileSync } from "node:fs";
import { join } from "node:path";
import { mark, type MarkOptions } from "../../src/mark.ts";
import { loadRubric } from "../../src/rubric/load.ts";
import type { Rubric } from "../../src/rubric/schema.ts";
import type { ItemResult, MarkSheet } from "../../src/scoring/types.ts";
import { readTranscript } from "../../src/transcript/read.ts";

/** A small invented rubric for behaviour tests; proves nothing about real stations. */
export const CARD: Rubric = loadRubric(readFileSync(join(import.meta.dirname, "station-card.yaml"), "utf8"), {
  file: "station-card.yaml",
  readBlock: () => {
    throw new Error("no blocks here");
  },
});

/** Marks an invented talk: `C:` candidate, `P:` patient, `E:` examiner, one line a turn; `@90` at its start sets the second. */
export function markTalk(lines: readonly string[], options: MarkOptions = {}, rubric: Rubric = CARD): MarkSheet {
  const names: Record<string, string> = { C: "Candidate", P: "Patient", E: "Examiner" };
  let second = 0;
  const text = lines.map((line) => {
    const parts = /^(?:@(\d+) )?([CPE]): (.*)$/.exec(line);
    if (parts === null) throw new Error(`not a line of a talk: ${line}`);
    if (parts[1] !== undefined) second = Number(parts[1]);
    const stamp = `[${Math.floor(second / 60)}:${String(second % 60).padStart(2, "0")}]`;
    second += Math.ceil(parts[3]!.split(" ").length / 2.5);
    return `${stamp} ${names[parts[2]!]}: ${parts[3]}`;
  });
  return mark(readTranscript(text.join("\n"), { file: "talk.txt" }), rubric, options);
}

export const OPENING = ["C: Hello, my name is Robin and I'm the pharmacist.", "P: Hello there."];

export function item(sheet: MarkSheet, id: string): ItemResult {
  const found = sheet.items.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`no item '${id}'`);
  return found;
}

/** A small invented rubric of one section. @param items in YAML, each line as deep as an item of a list. @param pass in YAML. @param unsafe in YAML, as deep as a list. */
export function cardWith(items: string, pass = "minimum: 50", unsafe = ""): Rubric {
  const head = ["saidwell: rubric@1", "id: small-card", "title: Invented card", "version: 1", "jurisdiction: [any]", "scenario: { task: Explain it., counselled: patient }", "time: { limit: 60, target: 45 }", "sections:"];
  return loadRubric([...head, "  - id: only", "    title: Only", "    items:", items, ...(unsafe === "" ? [] : ["unsafe:", unsafe]), `pass: { ${pass} }`].join("\n"), {
    file: "small-card.yaml",
    readBlock: () => {
      throw new Error("no blocks here");
    },
  });
}
