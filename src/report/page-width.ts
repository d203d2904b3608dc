/** The narrowest and the widest text: narrower breaks the columns, wider is tiring to read across. */
export const NARROWEST = 60;
export const WIDEST = 120;
export const DEFAULT_WIDTH = 80;

/** A width that pages can have, next to the one wished for. */
export function pageWidth(wished: number): number {
  return Math.min(WIDEST, Math.max(NARROWEST, Math.floor(wished)));
}
