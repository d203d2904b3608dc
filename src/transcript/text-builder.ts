import type { Draft, DraftSegment } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import type { Seconds } from "./types.ts";
import { readWords } from "./words.ts";

/** Collects the lines of one stretch after another and turns each into a DraftSegment with its words. */
export class TextBuilder {
  private readonly draft: Draft;
  private readonly log: FindingLog;
  private segment: DraftSegment | null = null;
  private text = "";
  private textLine = 0;
  private lineNow = 0;

  constructor(draft: Draft, log: FindingLog) {
    this.draft = draft;
    this.log = log;
  }

  get isOpen(): boolean {
    return this.segment !== null;
  }

  get hasText(): boolean {
    return /\S/.test(this.text);
  }

  get speaker(): string | null {
    return this.segment?.speaker ?? null;
  }

  /** Starts a stretch. With `shares` it lies in the interval of the one before, as far as that one has a time. */
  open(at: { speaker: string | null; line: number; start?: Seconds | null; end?: Seconds | null; shares?: boolean; inStation?: boolean }): void {
    this.close();
    this.segment = {
      speaker: at.speaker,
      start: at.start ?? null,
      end: at.end ?? null,
      line: at.line,
      words: [],
      ...(at.shares === true && this.draft.segments.length > 0 ? { shares: true } : {}),
      ...(at.inStation === undefined ? {} : { inStation: at.inStation }),
    };
    this.text = "";
    this.textLine = at.line;
    this.lineNow = at.line;
  }

  /** Adds text to the open stretch. As many line ends go in as lie between, so that each word keeps its line. */
  add(text: string, line: number): void {
    if (this.segment === null) this.open({ speaker: null, line });
    this.text += (line > this.lineNow ? "\n".repeat(line - this.lineNow) : this.text === "" ? "" : " ") + text;
    this.lineNow = line;
  }

  close(): void {
    if (this.segment === null) return;
    this.segment.words = readWords(this.text, this.textLine, this.log).map(({ offset: _, ...word }) => word);
    this.draft.segments.push(this.segment);
    this.segment = null;
  }

  heading(text: string, line: number): void {
    this.close();
    this.draft.headings.push({ text, line, before: this.draft.segments.length });
  }
}
