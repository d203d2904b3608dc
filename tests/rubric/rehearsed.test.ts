import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { mark } from "../../src/mark.ts";
import { loadRubric } from "../../src/rubric/load.ts";
import { readTranscript } from "../../src/transcript/read.ts";

const FOLDER = "fixtures/rehearsals";
const names = readdirSync("rubrics").filter((file) => file.endsWith(".yaml")).map((file) => file.replace(/\.yaml$/, ""));
const marks = readdirSync(FOLDER)
  .filter((file) => file.endsWith(".marks.yaml"))
  .map((file) => ({ base: file.replace(/\.marks\.yaml$/, ""), ...(parse(readFileSync(join(FOLDER, file), "utf8")) as { rubric: string; items: Record<string, { content: string }> }) }));
/** Invented rehearsals of the rubric with a reader's marks. */
const rehearsals = (rubric: string) => marks.filter((each) => each.rubric === rubric);

/** How far a strong rehearsal's sheet may lie from its reader's; `npm run bench:stations` gives the figures. */
const ALIKE = 0.6;

describe("every shipped rubric is rehearsed: invented, with a reader's mark for each item", () => {
  test.each(names)("%s has two rehearsals or more, one of them flawed", (name) => {
    const own = rehearsals(name);
    expect(own.length).toBeGreaterThanOrEqual(2);
    const weak = own.filter(({ items }) => Object.values(items).some(({ content }) => content === "absent" || content === "incorrect"));
    expect(weak.length).toBeGreaterThanOrEqual(1);
  });

  test.each(names)("%s: the reader marked every item, and most of the tool's marks of the strong one agree", (name) => {
    const rubric = loadRubric(readFileSync(`rubrics/${name}.yaml`, "utf8"), { file: name, readBlock: (include) => readFileSync(join("rubrics", include), "utf8") });
    const strong = rehearsals(name).sort((a, b) => complete(b.items) - complete(a.items))[0]!;
    const file = readdirSync(FOLDER).find((other) => other.startsWith(`${strong.base}.`) && !other.endsWith(".yaml"))!;
    expect(existsSync(join(FOLDER, file))).toBe(true);
    const sheet = mark(readTranscript(readFileSync(join(FOLDER, file)), { file }), rubric);
    expect(sheet.items.map(({ id }) => id).filter((id) => strong.items[id] === undefined)).toEqual([]);
    const alike = sheet.items.filter(({ id, content }) => strong.items[id]!.content === content);
    expect(alike.length / sheet.items.length).toBeGreaterThanOrEqual(ALIKE);
  });
});

function complete(items: Record<string, { content: string }>): number {
  return Object.values(items).filter(({ content }) => content === "complete").length;
}
