import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { parse } from "yaml";
import { z } from "zod";
import { loadRubric } from "../../../src/rubric/load.ts";
import type { Rubric } from "../../../src/rubric/schema.ts";

/** Issue 3's categories, in its order. */
export const CATEGORIES = ["paraphrase", "spread", "recognition", "disfluency", "polarity", "quantity", "speech-act", "elicitation", "condition", "look-alike"] as const;

/** `right`: a careful coach credits the element. `wrong`: it states the opposite, a wrong number, a listed wrong idea. */
export const LABELS = ["right", "wrong", "absent", "unclear"] as const;
export type Label = (typeof LABELS)[number];

const turn = z.object({ candidate: z.string() }).or(z.object({ patient: z.string() })).or(z.object({ examiner: z.string() }));
const form = z.object({
  invented: z.literal(true),
  writer: z.string(),
  rubric: z.string(),
  category: z.enum(CATEGORIES),
  passages: z.array(
    z.object({ id: z.string(), element: z.string(), says: z.string().optional(), turns: z.array(turn).optional(), label: z.enum(LABELS), note: z.string().optional() }).strict(),
  ),
});
const second = z.object({ reader: z.string(), labels: z.record(z.string(), z.enum(LABELS)) });

export interface Passage {
  id: string;
  rubric: string;
  category: (typeof CATEGORIES)[number];
  writer: string;
  item: string;
  element: string;
  turns: { role: "candidate" | "patient" | "examiner"; says: string }[];
  /** The writer's. */
  label: Label;
  /** A second reader's, given blind. */
  second?: Label;
  side: "tuning" | "unseen";
  /** Passages of one mirrored pair share it: the unit of the bootstrap. */
  pair: string;
}

/** The matcher was tuned on these rubrics and on the opening block; all else was not looked at while tuning. */
const TUNING = { rubrics: ["pressurised-inhaler", "nasal-spray"], block: "blocks/opening.yaml" };

const JUDGED = "fixtures/passages";

/** @param folder what is not the judged one is practice, on whatever side its rubric and block are. */
export function readPassages(folder = JUDGED): Passage[] {
  const seconds = new Map<string, Label>();
  for (const name of readdirSync(folder).filter((file) => file.endsWith(".second.yaml"))) {
    for (const [id, label] of Object.entries(second.parse(parse(readFileSync(join(folder, name), "utf8"))).labels)) seconds.set(id, label);
  }
  return readdirSync(folder)
    .filter((file) => file.endsWith(".yaml") && !file.endsWith(".second.yaml"))
    .sort()
    .flatMap((name) => {
      const { rubric, category, writer, passages } = form.parse(parse(readFileSync(join(folder, name), "utf8")), { error: () => `${name} is not a file of passages` });
      return passages.flatMap((passage, place): Passage[] => {
        const [item, element] = passage.element.split("/") as [string, string];
        const side = TUNING.rubrics.includes(rubric) ? "tuning" : "unseen";
        // A block that the unseen side is judged by is not tuned on, and the other way round.
        if (folder === JUDGED && (side === "tuning" ? SHARED.unseen.has(item) : SHARED.tuning.has(item))) return [];
        const turns = passage.turns?.map((said) => ("candidate" in said ? { role: "candidate" as const, says: said.candidate } : "patient" in said ? { role: "patient" as const, says: said.patient } : { role: "examiner" as const, says: said.examiner }));
        return [{ id: passage.id, rubric, category, writer, item, element, turns: turns ?? [{ role: "candidate", says: passage.says ?? "" }], label: passage.label, ...(seconds.has(passage.id) && { second: seconds.get(passage.id)! }), side, pair: `${name}:${place >> 1}` }];
      });
    });
}

const itemsOfBlock = (path: string): string[] => {
  const block: unknown = parse(readFileSync(join("rubrics", path), "utf8"));
  return z.object({ items: z.array(z.object({ id: z.string() })) }).parse(block).items.map(({ id }) => id);
};
const SHARED = {
  tuning: new Set(itemsOfBlock(TUNING.block)),
  unseen: new Set(readdirSync("rubrics/blocks").filter((file) => `blocks/${file}` !== TUNING.block).flatMap((file) => itemsOfBlock(`blocks/${file}`))),
};

const rubrics = new Map<string, Rubric>();

export function rubricNamed(name: string): Rubric {
  let rubric = rubrics.get(name);
  if (rubric === undefined) {
    const file = `rubrics/${name}.yaml`;
    if (!existsSync(file)) throw new Error(`${file} does not exist`);
    rubric = loadRubric(readFileSync(file, "utf8"), { file, readBlock: (include) => readFileSync(resolve(dirname(file), include), "utf8") });
    rubrics.set(name, rubric);
  }
  return rubric;
}
