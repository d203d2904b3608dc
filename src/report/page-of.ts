import { pageWidth } from "./page-width.ts";
import { Page } from "./page.ts";
import { painter } from "./style.ts";

/** How a text may look where it is going. */
export interface Look {
  /** Columns. */
  width: number;
  colour: boolean;
  /** Only ASCII characters. */
  ascii: boolean;
}

/** A page of just the width that was asked for. */
export function pageOf({ width, colour, ascii }: Look): Page {
  return new Page({ width, ascii, paint: painter(colour) });
}

/** A page as wide as was asked for, as far as a person can read across it. */
export function readablePage(look: Look): Page {
  return pageOf({ ...look, width: pageWidth(look.width) });
}
