import type { ColourWish } from "../terminal.ts";

/** What every command that prints takes. */
export interface OutputFlags {
  format: "text" | "json";
  out?: string;
  force?: boolean;
  width?: number;
  colour?: ColourWish;
}

export interface StationFlags {
  from?: number;
  to?: number;
  candidate?: string;
}
