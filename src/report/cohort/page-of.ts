import { Page } from "../page.ts";
import { pageWidth } from "../page-width.ts";
import { painter } from "../style.ts";

export interface Look {
  width: number;
  colour: boolean;
  ascii: boolean;
}

/** A page of a report. */
export function pageOf({ width, colour, ascii }: Look): Page {
  return new Page({ width: pageWidth(width), ascii, paint: painter(colour) });
}
