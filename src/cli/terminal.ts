import { InvalidArgumentError } from "commander";
import type { Look } from "../report/page-of.ts";
import { DEFAULT_WIDTH, NARROWEST } from "../report/page-width.ts";

export type ColourWish = "auto" | "always" | "never";

export interface Stream {
  isTTY?: boolean | undefined;
  columns?: number | undefined;
}

type Environment = Readonly<Record<string, string | undefined>>;

/** What the person asked for. */
interface Wish {
  width?: number | undefined;
  colour?: ColourWish | undefined;
  /** The file that the text goes to: no colour unless asked for, and always UTF-8. */
  out?: string | undefined;
}

/** How the output of a command may look. */
export function outputLook(wish: Wish): Look {
  return appearance({ width: wish.width, colour: wish.colour, toFile: wish.out !== undefined }, process.stdout, process.env);
}

/** How a text may look where it is going. */
export function appearance({ toFile = false, ...wish }: Omit<Wish, "out"> & { toFile?: boolean }, stream: Stream, environment: Environment): Look {
  return {
    width: wish.width ?? columns(environment) ?? (toFile ? undefined : stream.columns) ?? DEFAULT_WIDTH,
    colour: colour(wish.colour ?? "auto", toFile ? {} : stream, environment, toFile),
    ascii: !toFile && !speaksUtf8(environment),
  };
}

function columns({ COLUMNS }: Environment): number | undefined {
  return COLUMNS !== undefined && /^[1-9]\d{0,4}$/.test(COLUMNS) ? Number(COLUMNS) : undefined;
}

/** NO_COLOR (no-color.org: set and not empty) goes before FORCE_COLOR, as in commander's own help; the option before both. */
function colour(wish: ColourWish, stream: Stream, { NO_COLOR, FORCE_COLOR, TERM }: Environment, toFile: boolean): boolean {
  if (wish !== "auto") return wish === "always";
  if (toFile) return false;
  if (NO_COLOR !== undefined && NO_COLOR !== "") return false;
  if (FORCE_COLOR !== undefined) return FORCE_COLOR !== "0" && FORCE_COLOR !== "false";
  return stream.isTTY === true && TERM !== "dumb";
}

/** By POSIX the first of these that is set and not empty names the character set; where none is, UTF-8 is the usual one today. */
function speaksUtf8({ LC_ALL, LC_CTYPE, LANG }: Environment): boolean {
  const locale = [LC_ALL, LC_CTYPE, LANG].find((value) => value !== undefined && value !== "");
  return locale === undefined || /utf-?8/i.test(locale);
}

export function parseWidth(typed: string): number {
  const width = Number(typed);
  if (!/^\d+$/.test(typed) || width < NARROWEST || width > 200) throw new InvalidArgumentError(`Write a number from ${NARROWEST} to 200.`);
  return width;
}
