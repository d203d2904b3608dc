import { z } from "zod";

/* What the form of a file has at a place: which fields, which values. For messages that tell what was meant. */

/** The form at a place with unions and what wraps a form taken apart; several where several may stand there. */
export function formsAt(schema: z.ZodType, path: readonly PropertyKey[]): z.ZodType[] {
  return path.reduce<z.ZodType[]>((forms, key) => forms.flatMap((form) => inside(form, key)), plainForms(schema));
}

/** The fields that may stand at a place, and which of them must; of several forms that with most in common with what stands there. */
export function fieldsAt(schema: z.ZodType, path: readonly PropertyKey[], value: unknown): { names: string[]; needed: string[] } | null {
  const written = value !== null && typeof value === "object" ? Object.keys(value) : [];
  const shapes = formsAt(schema, path).flatMap((form) => (form instanceof z.ZodObject ? [form.shape as Record<string, z.ZodType>] : []));
  const common = (shape: Record<string, z.ZodType>) => written.filter((name) => name in shape).length;
  const shape = shapes.sort((a, b) => common(b) - common(a))[0];
  if (shape === undefined) return null;
  const names = Object.keys(shape);
  return { names, needed: names.filter((name) => !shape[name]!.safeParse(undefined).success) };
}

/** What a field is for, as its form says it. */
export function describedAt(schema: z.ZodType, path: readonly PropertyKey[]): string | undefined {
  const name = path.at(-1);
  const owners = formsAt(schema, path.slice(0, -1)).flatMap((form) => (form instanceof z.ZodObject ? [(form.shape as Record<PropertyKey, z.ZodType>)[name!]] : []));
  return owners.find((field) => field?.description !== undefined)?.description;
}

/** Every object of a form, once, with the way to it: lists and names of one's own choice are left out of the way. */
export function objectsOf(schema: z.ZodType): { way: string[]; names: string[] }[] {
  const found: { way: string[]; names: string[] }[] = [];
  const visit = (form: z.ZodType, way: string[]): void => {
    for (const plain of plainForms(form)) {
      if (plain instanceof z.ZodObject) {
        const shape = plain.shape as Record<string, z.ZodType>;
        found.push({ way, names: Object.keys(shape) });
        for (const [name, field] of Object.entries(shape)) visit(field, [...way, name]);
      } else if (plain instanceof z.ZodArray) visit(plain.element as z.ZodType, way);
      else if (plain instanceof z.ZodRecord) visit(plain.valueType as z.ZodType, way);
    }
  };
  visit(schema, []);
  return found;
}

function inside(form: z.ZodType, key: PropertyKey): z.ZodType[] {
  if (form instanceof z.ZodObject) {
    const field = (form.shape as Record<PropertyKey, z.ZodType>)[key];
    return field === undefined ? [] : plainForms(field);
  }
  if (form instanceof z.ZodArray) return plainForms(form.element as z.ZodType);
  if (form instanceof z.ZodRecord) return plainForms(form.valueType as z.ZodType);
  if (form instanceof z.ZodTuple) return (form.def.items as readonly z.ZodType[]).slice(Number(key), Number(key) + 1).flatMap(plainForms);
  return [];
}

function plainForms(form: z.ZodType): z.ZodType[] {
  if (form instanceof z.ZodUnion) return (form.options as readonly z.ZodType[]).flatMap(plainForms);
  if (form instanceof z.ZodPipe) return plainForms(form.in as z.ZodType);
  if (form instanceof z.ZodOptional || form instanceof z.ZodDefault || form instanceof z.ZodPrefault || form instanceof z.ZodNullable) return plainForms(form.unwrap() as z.ZodType);
  return [form];
}
