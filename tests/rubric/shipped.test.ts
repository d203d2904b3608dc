import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { loadRubric } from "../../src/rubric/load.ts";
import { NO_SOURCE } from "../../src/rubric/fields.ts";

const FOLDER = "rubrics";
const files = readdirSync(FOLDER).filter((name) => name.endsWith(".yaml"));
const read = (name: string) => loadRubric(readFileSync(join(FOLDER, name), "utf8"), { file: name, readBlock: (include) => readFileSync(join(FOLDER, include), "utf8") });

test("the four stations of the first issue are shipped", () => {
  expect(files).toEqual(expect.arrayContaining(["pressurised-inhaler.yaml", "nasal-spray.yaml", "insulin-pen.yaml", "eye-drops.yaml"]));
});

describe.each(files)("%s", (name) => {
  const rubric = read(name);
  const items = rubric.sections.flatMap((section) => section.items);

  test("has 15 to 25 items, at most six of them critical", () => {
    expect(items.length).toBeGreaterThanOrEqual(15);
    expect(items.length).toBeLessThanOrEqual(25);
    expect(items.filter(({ critical }) => critical).length).toBeLessThanOrEqual(6);
  });

  test("gives at least three acceptable responses an element", () => {
    expect(items.flatMap((item) => item.elements.filter(({ say }) => say.length < 3).map(({ id }) => `${item.id}/${id}`))).toEqual([]);
  });

  test("says of every critical item and every number where it comes from, and when to look again", () => {
    const bare = items.flatMap((item) => item.elements.filter((element) => (item.critical || (element.quantity && "value" in element.quantity)) && (element.fact ?? item.fact) === undefined).map(({ id }) => `${item.id}/${id}`));
    expect(bare).toEqual([]);
    for (const fact of items.flatMap((item) => [item.fact, ...item.elements.map(({ fact: own }) => own)])) {
      if (fact === undefined) continue;
      expect(fact.source === NO_SOURCE || fact.source in rubric.sources).toBe(true);
      expect(fact.review_by).toMatch(/^20\d\d-\d\d-\d\d$/);
    }
  });

  test("says of every unsafe statement what it rests on", () => {
    expect(rubric.unsafe.filter(({ fact }) => fact === undefined).map(({ id }) => id)).toEqual([]);
  });

  test("lists unsafe statements and the patient's questions", () => {
    expect(rubric.unsafe.length).toBeGreaterThanOrEqual(4);
    expect(rubric.scenario.questions.length).toBeGreaterThanOrEqual(2);
  });
});
