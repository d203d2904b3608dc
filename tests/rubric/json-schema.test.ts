import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { Ajv, type ValidateFunction } from "ajv";
import formats from "ajv-formats";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { jsonSchema, jsonSchemaText, SCHEMA_FILES } from "../../src/rubric/json-schema.ts";
import { SOUND, BLOCK } from "../review/card.ts";

/* Checked by ajv, an independent implementation of JSON Schema (draft 7, 2018), in its strict mode. */

const compile = (form: keyof typeof SCHEMA_FILES): ValidateFunction => {
  const ajv = new Ajv({ allErrors: true, strict: true, strictTuples: false, strictRequired: false, allowUnionTypes: true });
  formats.default(ajv);
  return ajv.compile(jsonSchema(form));
};
const rubric = compile("rubric");
const block = compile("block");

const yamls = (folder: string) => readdirSync(folder).filter((name) => name.endsWith(".yaml")).map((name) => join(folder, name));
const read = (path: string) => readFileSync(path, "utf8");

test.each(["rubric", "block", "responses"] as const)("the committed schema of %s is what the zod schema gives ('npm run schema' writes it)", (form) => {
  expect(read(join("rubrics", SCHEMA_FILES[form]))).toBe(jsonSchemaText(form));
});

describe.each([...yamls("rubrics").map((path) => ["rubric", path] as const), ...yamls("rubrics/blocks").map((path) => ["block", path] as const)])("the shipped %s %s", (form, path) => {
  test("is accepted", () => {
    const validate = form === "rubric" ? rubric : block;
    validate(parse(read(path)));
    expect(validate.errors ?? []).toEqual([]);
  });

  test("names the schema in its first line, where the file is", () => {
    const named = /^# yaml-language-server: \$schema=(\S+)\n/.exec(read(path))?.[1];
    expect(resolve(dirname(path), named!)).toBe(resolve("rubrics", SCHEMA_FILES[form]));
  });
});

test("the tests' own sound rubric and block are accepted", () => {
  expect(rubric(parse(SOUND))).toBe(true);
  expect(block(parse(BLOCK))).toBe(true);
});

describe("a broken rubric is refused", () => {
  const refused = (from: string, to: string) => {
    expect(SOUND).toContain(from);
    return !rubric(parse(SOUND.replace(from, to)));
  };
  test.each([
    ["a field that there is not", "title: Card", "title: Card\ncolour: red"],
    ["another form", "saidwell: rubric@1", "saidwell: rubric@2"],
    ["a missing field", "pass: { minimum: 60 }", ""],
    ["a per cent above 100", "minimum: 60", "minimum: 160"],
    ["an id with capitals", "- id: shake", "- id: Shake"],
    ["a unit that the number grammar does not know", "unit: second", "unit: fortnight"],
    ["a date that is none", "review_by: 2028-01-31", "review_by: soon"],
    ["a severity that there is not", "severity: major", "severity: dreadful"],
    ["an item without responses", "        say:\n          - rinse your mouth with water afterwards\n          - gargle with water and spit it out\n          - rinse and spit afterwards\n", ""],
    ["both forms of an item at once", "        quantity: { value: 10, unit: second }\n", "        elements: [{ id: a, label: A, say: [one two] }]\n"],
  ])("%s", (_what, from, to) => expect(refused(from, to)).toBe(true));

  test("a rubric is no block and a block no rubric", () => {
    expect([block(parse(SOUND)), rubric(parse(BLOCK))]).toEqual([false, false]);
  });
});

test("every field of an item says what it is for, or its name says all", () => {
  const text = jsonSchemaText("rubric");
  for (const described of ["Acceptable responses, in several people's words.", "Per cent of the weighted total.", "Items whose content answers it."]) expect(text).toContain(described);
});
