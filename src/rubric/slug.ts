/** A text as ids are written: "Missed dose" as "missed-dose"; null where nothing of it can stay. */
export function slugOf(text: string): string | null {
  const slug = text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^[^a-z]+|-+$/g, "");
  return slug === "" ? null : slug;
}
