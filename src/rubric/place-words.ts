import { valueAt } from "./value-at.ts";

/** Lists whose entries have a name of their own. */
const ENTRIES: Readonly<Record<string, string>> = { sections: "section", items: "item", elements: "element", questions: "question", unsafe: "unsafe statement" };

/** The way to a place as a person would say it: "item 'dose', fact.review_by", "order, entry 1, severity". */
export function placeWords(path: readonly PropertyKey[], data: unknown): string {
  const parts: string[] = [];
  let value = data;
  let open = false;
  for (const key of path) {
    value = valueAt(value, [key]);
    if (typeof key === "number") {
      const list = parts.at(-1) ?? "";
      const id = valueAt(value, ["id"]);
      const name = ENTRIES[list.split(".").at(-1)!];
      if (name !== undefined && typeof id === "string") {
        parts.pop();
        // An item's name says where it is: no need to say its section besides.
        if (name !== "element") parts.length = 0;
        parts.push(`${name} '${id}'`);
      } else parts.push(`entry ${key + 1}`);
      open = false;
    } else if (open) {
      parts[parts.length - 1] = `${parts.at(-1)}.${String(key)}`;
    } else {
      parts.push(String(key));
      open = true;
    }
  }
  return parts.length === 0 ? "the file" : parts.join(", ");
}
