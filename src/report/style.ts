import { Chalk } from "chalk";
import type { Content } from "../scoring/types.ts";

/** What a stretch of text means; colour only repeats what a word or a symbol already says. */
export type Style = "plain" | "strong" | "faint" | "good" | "fair" | "poor" | "bad" | "doubt" | "title";

export type Paint = (text: string, style: Style) => string;

/** @param colour the sixteen standard colours, so that the person's own terminal theme decides how they look. */
export function painter(colour: boolean): Paint {
  if (!colour) return (text) => text;
  const chalk = new Chalk({ level: 1 });
  const styles: Record<Exclude<Style, "plain">, (text: string) => string> = {
    strong: chalk.bold,
    faint: chalk.dim,
    good: chalk.green,
    fair: chalk.yellow,
    poor: chalk.red,
    bad: chalk.red.bold,
    doubt: chalk.magenta,
    title: chalk.cyan.bold,
  };
  return (text, style) => (style === "plain" || text.trim() === "" ? text : styles[style](text));
}

export interface Symbols {
  mark: Record<Content, string>;
  bullet: string;
  rule: string;
  /** Between facts on one line. */
  dot: string;
  /** Where words of a quote are left out. */
  gap: string;
  /** From lowest to highest. */
  bars: string[];
  /** A window without a word of the candidate. */
  noBar: string;
}

const UNICODE: Symbols = {
  mark: { complete: "✓", partial: "◐", incorrect: "✗", absent: "○", "cannot-tell": "?", "not-offered": "–", "not-applicable": "–" },
  bullet: "•",
  rule: "─",
  dot: "·",
  gap: "…",
  bars: ["▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"],
  noBar: "\u00a0",
};

const ASCII: Symbols = {
  mark: { complete: "+", partial: "~", incorrect: "x", absent: "o", "cannot-tell": "?", "not-offered": "-", "not-applicable": "-" },
  bullet: "*",
  rule: "-",
  dot: "-",
  gap: "...",
  bars: ["1", "2", "3", "4", "5", "6", "7", "8"],
  noBar: ".",
};

export function symbols(ascii: boolean): Symbols {
  return ascii ? ASCII : UNICODE;
}

/** The mark in a word: what carries the meaning when symbol and colour are gone. */
export const MARK_WORD: Record<Content, string> = {
  complete: "complete",
  partial: "partial",
  incorrect: "incorrect",
  absent: "absent",
  "cannot-tell": "cannot tell",
  "not-offered": "not offered",
  "not-applicable": "n/a",
};

export const MARK_STYLE: Record<Content, Style> = {
  complete: "good",
  partial: "fair",
  incorrect: "bad",
  absent: "poor",
  "cannot-tell": "doubt",
  "not-offered": "faint",
  "not-applicable": "faint",
};
