import { symbols, type Paint, type Style, type Symbols } from "./style.ts";
import { displayWidth, splitWide } from "./width.ts";

/** A stretch of text in one style. */
export interface Run {
  text: string;
  style: Style;
}
export type Text = string | Run | Text[];

export const styled = (text: string, style: Style): Run => ({ text, style });
export const strong = (text: string) => styled(text, "strong");
export const faint = (text: string) => styled(text, "faint");

export interface Entry {
  /** Stands in a column of its own, left of the body. */
  lead?: Text;
  /** Columns from the left edge to the lead. */
  indent?: number;
  /** Columns from the lead's start to the body's; the body's later lines start there too. */
  hang?: number;
  body: Text;
  /** Stands at the right edge of the first line; the body keeps clear of it. */
  right?: Text;
}

/** Columns kept free between the body and what stands at the right edge. */
const GUTTER = 2;
/** Holds a word together while lines are broken; printed as a plain blank. Text from outside never holds one. */
const NO_BREAK = "\u00a0";
/** The narrowest body that is still worth wrapping; below it the right-hand part goes to a line of its own. */
const NARROWEST_BODY = 16;

/** A text of fixed width, built from top to bottom. Wraps by display width, paints last. */
export class Page {
  readonly width: number;
  readonly symbols: Symbols;
  private readonly paint: Paint;
  private readonly lines: string[] = [];

  constructor(options: { width: number; ascii: boolean; paint: Paint }) {
    this.width = options.width;
    this.symbols = symbols(options.ascii);
    this.paint = options.paint;
  }

  blank(): void {
    if (this.lines.length > 0 && this.lines.at(-1) !== "") this.lines.push("");
  }

  /** A title, a rule to the right edge, and there a short fact. */
  heading(title: string, right = ""): void {
    this.blank();
    const head = wrap([styled(title.toUpperCase(), "title")], this.width);
    const last = head.at(-1)!;
    const tail = right === "" ? "" : ` ${right}`;
    const free = this.width - widthOf(last) - displayWidth(tail) - 1;
    if (free >= 2) {
      last.push(styled(` ${this.symbols.rule.repeat(free)}`, "faint"), styled(tail, "plain"));
      head.forEach((line) => this.push(line));
    } else {
      head.forEach((line) => this.push(line));
      if (right !== "") this.entry({ indent: 2, body: right });
    }
  }

  /** One entry of a list or a table. */
  entry({ lead = "", indent = 0, hang = 0, body, right = "" }: Entry): void {
    const leadRuns = flatten(lead);
    const start = indent + hang;
    const rightRuns = flatten(right);
    const rightWidth = widthOf(rightRuns);
    const reserved = rightWidth === 0 ? 0 : rightWidth + GUTTER;
    const beside = this.width - start - reserved >= NARROWEST_BODY;
    const columns = Math.max(NARROWEST_BODY, this.width - start - (beside ? reserved : 0));
    const wrapped = wrap(flatten(body), columns);
    wrapped.forEach((line, index) => {
      const runs: Run[] = [styled(" ".repeat(indent), "plain")];
      if (index === 0) runs.push(...leadRuns);
      runs.push(styled(" ".repeat(Math.max(index === 0 && leadRuns.length > 0 && hang > 0 ? 1 : 0, start - widthOf(runs))), "plain"), ...line);
      if (index === 0 && beside && rightWidth > 0) {
        runs.push(styled(" ".repeat(Math.max(1, this.width - widthOf(runs) - rightWidth)), "plain"), ...rightRuns);
      }
      this.push(runs);
    });
    if (!beside && rightWidth > 0) this.entry({ indent: start, body: right });
  }

  /** The finished text, ending in a newline. */
  toString(): string {
    return `${this.lines.join("\n").replace(/\n+$/, "")}\n`;
  }

  private push(runs: Run[]): void {
    let end = runs.length;
    while (end > 0 && runs[end - 1]!.text.trim() === "") end -= 1;
    const kept = joined(runs.slice(0, end));
    const line = kept.map(({ text, style }, index) => this.paint(index === kept.length - 1 ? text.trimEnd() : text, style)).join("");
    this.lines.push(line.replaceAll(NO_BREAK, " "));
  }
}

export function flatten(text: Text): Run[] {
  if (typeof text === "string") return text === "" ? [] : [styled(text, "plain")];
  if (Array.isArray(text)) return text.flatMap(flatten);
  return text.text === "" ? [] : [text];
}

/** Neighbours of one style as one run, so that colour codes stand around phrases and not around words. */
function joined(runs: Run[]): Run[] {
  const result: Run[] = [];
  for (const run of runs) {
    const last = result.at(-1);
    if (last?.style === run.style) result[result.length - 1] = styled(last.text + run.text, run.style);
    else result.push(run);
  }
  return result;
}

function widthOf(runs: Run[]): number {
  return runs.reduce((sum, run) => sum + displayWidth(run.text), 0);
}

/** Greedy line breaking at blanks; a word wider than the line is cut. At least one line. */
export function wrap(runs: Run[], columns: number): Run[][] {
  const lines: Run[][] = [[]];
  let used = 0;
  let blankBefore = false;
  for (const word of words(runs)) {
    const wide = widthOf(word);
    if (used > 0 && used + (blankBefore ? 1 : 0) + wide > columns) {
      lines.push([]);
      used = 0;
    }
    const pieces = wide <= columns ? [word] : cut(word, columns);
    pieces.forEach((piece, index) => {
      if (index > 0) lines.push([]);
      if (index > 0) used = 0;
      if (used > 0 && blankBefore) lines.at(-1)!.push(styled(" ", piece[0]!.style));
      used += (used > 0 && blankBefore ? 1 : 0) + widthOf(piece);
      lines.at(-1)!.push(...piece);
    });
    blankBefore = true;
  }
  return lines;
}

/** Words as lists of runs: a word may change its style inside ("said" and a full stop). */
function words(runs: Run[]): Run[][] {
  const result: Run[][] = [];
  let open: Run[] = [];
  const close = () => {
    if (open.length > 0) result.push(open);
    open = [];
  };
  for (const { text, style } of runs) {
    text.split(" ").forEach((part, index) => {
      if (index > 0) close();
      if (part !== "") open.push({ text: part, style });
    });
  }
  close();
  return result;
}

function cut(word: Run[], columns: number): Run[][] {
  return word.flatMap((run) => splitWide(run.text, columns).map((text) => [styled(text, run.style)]));
}
