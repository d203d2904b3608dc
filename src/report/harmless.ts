import { cleanDeep, toAscii } from "./clean.ts";

/**
 * A copy of a report's data whose texts can do nothing to a terminal.
 * @param ascii spelt in ASCII as well: before layout, because such a spelling may be longer.
 */
export function harmless<T>(data: T, ascii: boolean): T {
  const clean = cleanDeep(data);
  return ascii ? asciiDeep(clean) : clean;
}

function asciiDeep<T>(data: T): T {
  if (typeof data === "string") return toAscii(data) as T;
  if (Array.isArray(data)) return data.map(asciiDeep) as T;
  if (data === null || typeof data !== "object") return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, asciiDeep(value)])) as T;
}
