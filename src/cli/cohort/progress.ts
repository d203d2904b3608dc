import { MultiBar, Presets, type SingleBar } from "cli-progress";
import { clock, number } from "../../report/figures.ts";

/** Between two lines where there is no terminal: a log is to be read. */
const LINE_MILLISECONDS = 10_000;

/** The rate is that of the last so many seconds: files differ, and a resumed run starts with a leap. */
const WINDOW_MILLISECONDS = 30_000;

export interface Progress {
  /** One more is finished. @param kept it was marked in an earlier run. */
  step: (outcome: { kept: boolean; failed: boolean }) => void;
  stop: () => void;
}

/** Of the bar; and what a line of it holds beside the bar and the digits of the count. */
const WIDEST_BAR = 40;
const NARROWEST_BAR = 5;
const BESIDE_BAR = " 100% |  of  | 1000.5 a second | 1:02:30 left |  failed ".length;

interface Stream {
  isTTY?: boolean | undefined;
  columns?: number | undefined;
  write: (text: string) => unknown;
}

/** A bar with rate and time left on a terminal, now and then a plain line elsewhere. */
export function showProgress(total: number, stream: Stream & NodeJS.WritableStream, now: () => number = Date.now): Progress {
  const counts = { done: 0, kept: 0, failed: 0 };
  const rate = new Rate(now);
  const figures = () => {
    const perSecond = rate.value();
    const left = perSecond === null ? (stream.isTTY === true ? "- left" : "time left not known yet") : `${clock((total - counts.done) / perSecond)} left`;
    return { rate: perSecond === null ? "-" : number(perSecond), left, failed: counts.failed, kept: counts.kept };
  };
  const count = (outcome: { kept: boolean; failed: boolean }) => {
    counts.done += 1;
    if (outcome.kept) counts.kept += 1;
    else rate.add();
    if (outcome.failed) counts.failed += 1;
  };
  if (stream.isTTY === true) {
    const barsize = Math.min(WIDEST_BAR, Math.max(NARROWEST_BAR, (stream.columns ?? 80) - BESIDE_BAR - 3 * String(total).length));
    const bars = new MultiBar({ stream, barsize, format: "{bar} {percentage}% | {value} of {total} | {rate} a second | {left} | {failed} failed", hideCursor: true, clearOnComplete: false, fps: 5 }, Presets.shades_grey);
    const bar: SingleBar = bars.create(total, 0, figures());
    return {
      step: (outcome) => {
        count(outcome);
        bar.update(counts.done, figures());
      },
      stop: () => bars.stop(),
    };
  }
  let told = now();
  const tell = () => {
    const { rate: perSecond, left, failed } = figures();
    stream.write(`saidwell cohort: ${counts.done} of ${total}, ${perSecond} a second, ${left}, ${failed} failed\n`);
    told = now();
  };
  return {
    step: (outcome) => {
      count(outcome);
      if (now() - told >= LINE_MILLISECONDS) tell();
    },
    stop: () => {},
  };
}

/** Files a second over the window, kept as counts of whole seconds. */
class Rate {
  readonly #start: number;
  readonly #seconds: { at: number; count: number }[] = [];
  readonly #now: () => number;

  constructor(now: () => number) {
    this.#now = now;
    this.#start = now();
  }

  add(): void {
    const at = Math.floor(this.#now() / 1000);
    const last = this.#seconds.at(-1);
    if (last?.at === at) last.count += 1;
    else this.#seconds.push({ at, count: 1 });
    while (this.#seconds[0]!.at * 1000 < this.#now() - WINDOW_MILLISECONDS) this.#seconds.shift();
  }

  /** Null before there is anything to go by. */
  value(): number | null {
    const elapsed = Math.min(this.#now() - this.#start, WINDOW_MILLISECONDS) / 1000;
    const count = this.#seconds.reduce((sum, second) => sum + second.count, 0);
    return count === 0 || elapsed <= 0 ? null : count / elapsed;
  }
}
