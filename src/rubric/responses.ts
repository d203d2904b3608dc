import { z } from "zod";
import { nearOrAll } from "../problem/nearest.ts";
import type { Finding } from "../problem/problem.ts";
import { keyOf, unsafeKeyOf, type AddedPhrases, type Additions } from "./additions.ts";
import type { PositionedYaml } from "./positioned-yaml.ts";
import { id, phraseSchema } from "./fields.ts";
import type { Item, UnsafeStatement } from "./schema.ts";

/*
 * A rubric is read by people, and thirty ways to say one thing make it hard to read. What many people were found to say
 * may stand in a file of its own, named by `responses`; its phrases count just as those of the rubric do.
 */

const phrases = z.array(phraseSchema).min(1, "give at least one phrase");

const elementResponses = z.strictObject({
  say: phrases.optional().describe("More acceptable responses, in other people's words."),
  incorrect: phrases.optional().describe("More that is wrong to say here."),
});

export const responsesSchema = z.strictObject({
  saidwell: z.literal("responses@1"),
  id: id.describe("The id of the rubric or block that these responses belong to."),
  items: z.record(id, z.record(id, elementResponses)).default({}).describe("By item and element."),
  unsafe: z.record(id, z.strictObject({ say: phrases })).default({}).describe("By unsafe statement."),
  history: z.array(z.string()).default([]).describe("Who wrote them and from what, newest first."),
});

export type ResponsesFile = z.output<typeof responsesSchema>;

/** The item with the responses that the file has for it, and where they stand. */
export function withResponses(item: Item, file: ResponsesFile, yaml: PositionedYaml, additions: Additions): Item {
  const more = file.items[item.id];
  if (more === undefined) return item;
  const elements = item.elements.map((element) => {
    const { say = [], incorrect = [] } = more[element.id] ?? {};
    const add = (list: "say" | "incorrect", phrases: readonly string[]) => {
      if (phrases.length === 0) return element[list];
      const own = element[list] ?? [];
      note(additions, keyOf(item.id, element.id, list), { path: ["items", item.id, element.id, list], from: own.length, count: phrases.length, yaml });
      return [...own, ...phrases];
    };
    const wrong = add("incorrect", incorrect);
    return { ...element, say: add("say", say) ?? [], ...(wrong !== undefined && { incorrect: wrong }) };
  });
  return { ...item, elements };
}

/** The same for an unsafe statement. */
export function withStatements(statement: UnsafeStatement, file: ResponsesFile, yaml: PositionedYaml, additions: Additions): UnsafeStatement {
  const more = file.unsafe[statement.id];
  if (more === undefined) return statement;
  note(additions, unsafeKeyOf(statement.id), { path: ["unsafe", statement.id, "say"], from: statement.say.length, count: more.say.length, yaml });
  return { ...statement, say: [...statement.say, ...more.say] };
}

/** An item read twice (an override) is noted once: the later place counts. */
function note(additions: Additions, key: string, added: AddedPhrases): void {
  const others = (additions.get(key) ?? []).filter(({ yaml }) => yaml !== added.yaml);
  additions.set(key, [...others, added]);
}

/** Ids in the file that lead nowhere. */
export function danglingResponses(file: ResponsesFile, yaml: PositionedYaml, owner: string, items: readonly Item[], unsafe: readonly UnsafeStatement[]): Finding[] {
  const findings: Finding[] = [];
  const report = (path: string[], message: string, mend: string) => findings.push({ code: "SW-R05", severity: "error", file: yaml.file, ...yaml.positionOf(path), message, mend });
  if (file.id !== owner) report(["id"], `these responses are for '${file.id}', but '${owner}' names them`, `Name the responses of this rubric or block, or write 'id: ${owner}' here.`);
  for (const [item, elements] of Object.entries(file.items)) {
    const known = items.find((candidate) => candidate.id === item);
    if (known === undefined) {
      report(["items", item], `'${owner}' has no item '${item}'`, nearOrAll(item, items.map((candidate) => candidate.id), "Its items are"));
      continue;
    }
    for (const element of Object.keys(elements)) {
      if (!known.elements.some((candidate) => candidate.id === element)) report(["items", item, element], `'${item}' has no element '${element}'`, nearOrAll(element, known.elements.map((candidate) => candidate.id), "Its elements are"));
    }
  }
  for (const statement of Object.keys(file.unsafe)) {
    if (!unsafe.some((candidate) => candidate.id === statement)) report(["unsafe", statement], `'${owner}' has no unsafe statement '${statement}'`, nearOrAll(statement, unsafe.map((candidate) => candidate.id), "They are") || "It has none: take this out.");
  }
  return findings;
}
