import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import { z } from "zod";
import type { ToldTurn } from "../../../src/station/told.ts";

const FOLDER = "fixtures/talk";
const said = z.object({ candidate: z.string(), says: z.array(z.string()).optional(), wrong: z.array(z.string()).optional(), unsafe: z.array(z.string()).optional() }).strict();
const form = z.object({
  invented: z.literal(true),
  writer: z.string(),
  rubric: z.string(),
  quality: z.string(),
  style: z.enum(["spoken", "recogniser"]),
  turns: z.array(said.or(z.object({ patient: z.string() }).strict())),
});

/** A sentence of the candidate, with what it says. */
export interface TalkSentence {
  text: string;
  /** Words of the whole talk, end exclusive. */
  first: number;
  end: number;
  /** Elements, as item/element, said rightly and wrongly; unsafe statements. */
  says: readonly string[];
  wrong: readonly string[];
  unsafe: readonly string[];
}

/** A whole invented station, annotated. */
export interface Talk {
  name: string;
  /** The hand who wrote it. */
  writer: string;
  rubric: string;
  quality: string;
  style: "spoken" | "recogniser";
  turns: ToldTurn[];
  sentences: TalkSentence[];
  /** Elements that some sentence says: rightly, wrongly or both. All others are not said. */
  elements: Map<string, { said: boolean; wrong: boolean }>;
}

/** All talk, by file name. It has no unseen side: everything here is tuned on. */
export function readTalk(folder = FOLDER): Talk[] {
  return readdirSync(folder).filter((file) => file.endsWith(".yaml")).sort().map((name) => {
    const { writer, rubric, quality, style, turns: entries } = form.parse(parse(readFileSync(join(folder, name), "utf8")), { error: () => `${name} is not a file of talk` });
    const turns: ToldTurn[] = [];
    const sentences: TalkSentence[] = [];
    const elements: Talk["elements"] = new Map();
    let words = 0;
    for (const entry of entries) {
      const text = "patient" in entry ? entry.patient : entry.candidate;
      const first = words;
      words += text.split(/\s+/).filter((word) => word !== "").length;
      const role = "patient" in entry ? "patient" : "candidate";
      const last = turns.at(-1);
      if (last?.role === role && role === "candidate") last.says += ` ${text}`;
      else turns.push({ role, says: text });
      if ("patient" in entry) continue;
      const { says = [], wrong = [], unsafe = [] } = entry;
      sentences.push({ text, first, end: words, says, wrong, unsafe });
      for (const [keys, what] of [[says, "said"], [wrong, "wrong"]] as const) for (const key of keys) elements.set(key, { ...(elements.get(key) ?? { said: false, wrong: false }), [what]: true });
    }
    return { name: name.replace(/\.yaml$/, ""), writer, rubric, quality, style, turns, sentences, elements };
  });
}
