import type { ColourWish } from "../terminal.ts";

export const CHECK_FORMATS = ["text", "json", "junit", "markdown", "sarif"] as const;
export type CheckFormat = (typeof CHECK_FORMATS)[number];

export interface CheckFlags {
  format: CheckFormat;
  out?: string;
  force?: boolean;
  maxWarnings?: number;
  confusion?: boolean;
  /** A day, as 2027-06-30. */
  today?: string;
  /** Uses nothing that an earlier check kept. */
  fresh?: boolean;
  width?: number;
  colour?: ColourWish;
}
