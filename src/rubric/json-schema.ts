import { z } from "zod";
import { responsesSchema } from "./responses.ts";
import { blockSchema, rubricSchema, SHORT_FORM } from "./schema.ts";

/** The files beside the rubrics that their first line names, by the form they describe. */
export const SCHEMA_FILES = { rubric: "rubric.schema.json", block: "block.schema.json", responses: "responses.schema.json" } as const;

const FORMS = { rubric: rubricSchema, block: blockSchema, responses: responsesSchema } as const;

type JsonSchema = z.core.JSONSchema.BaseSchema;

/**
 * The form of rubrics, blocks or responses files as JSON Schema, for editors and other programs. Draft 7, because that is what editors'
 * YAML support reads best. What a schema cannot say (ids that lead nowhere, counts of elements) the loader says.
 */
export function jsonSchema(form: keyof typeof SCHEMA_FILES): JsonSchema {
  const { $schema, ...rest } = z.toJSONSchema(FORMS[form], {
    target: "draft-7",
    io: "input",
    override: ({ jsonSchema: part }) => {
      if (isItem(part)) part.oneOf = [{ required: ["say"], not: { required: ["elements"] } }, { required: ["elements"], not: { anyOf: SHORT_FORM.map((key) => ({ required: [key] })) } }];
    },
  });
  return { $schema: $schema!, title: `saidwell ${form}@1`, ...rest };
}

/** As it is written to the file. */
export function jsonSchemaText(form: keyof typeof SCHEMA_FILES): string {
  return `${JSON.stringify(jsonSchema(form), null, 2)}\n`;
}

/** The one object that has both the long and the short form; its choice is a refinement that zod cannot write down. */
function isItem(part: JsonSchema): boolean {
  return part.type === "object" && part.properties !== undefined && "elements" in part.properties && "say" in part.properties;
}
