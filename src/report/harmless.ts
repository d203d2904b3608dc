import { cleanDeep, toAscii, withStrings } from "./clean.ts";

/**
 * A copy of a report's data whose texts can do nothing to a terminal.
 * @param ascii spelt in ASCII as well: before layout, because such a spelling may be longer.
 */
export function harmless<T>(data: T, ascii: boolean): T {
  const clean = cleanDeep(data);
  return ascii ? withStrings(clean, toAscii) : clean;
}
