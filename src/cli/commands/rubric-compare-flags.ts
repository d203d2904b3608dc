import type { ColourWish } from "../terminal.ts";

export const COMPARE_FORMATS = ["text", "json", "markdown"] as const;

export interface CompareFlags {
  on?: string;
  format: (typeof COMPARE_FORMATS)[number];
  failOnChange?: boolean;
  out?: string;
  force?: boolean;
  width?: number;
  colour?: ColourWish;
}
