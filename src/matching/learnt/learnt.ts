import { isStatementKey } from "../../rubric/learnt-keys.ts";
import type { Learnt } from "../../rubric/schema.ts";
import type { StretchWords } from "./stretch-words.ts";

/*
 * What was learnt from sayings that people marked: by element two straight lines over the words of a stretch. `about`
 * tells whether the stretch is about the element at all, `turned` whether it says it wrongly. In log-odds. They know the
 * ways of speaking that no list of responses foresaw, and are asked where the responses leave a doubt.
 */

/** What a stretch seems to say of an element, in log-odds. */
export interface Reading {
  /** That it is about the element. */
  about: number;
  /** If so, that it says it wrongly. */
  turned: number;
  /** What of that is for how it sounds whatever it is said of: the same for all elements. */
  anyhow: number;
}

/** Reads all elements of a rubric at once: a word is looked up once, whatever number of elements know it. */
export class LearntReader {
  /** By place: item/element. */
  readonly elements: readonly string[];
  /** The place behind the elements' is that of whatever element. */
  readonly numbers: readonly boolean[];
  /** Whether an unsafe statement has the place. */
  readonly isStatement: readonly boolean[];
  /** The item of the element in each place. */
  readonly itemAt: readonly string[];
  private readonly starts: { about: Float64Array; turned: Float64Array };
  private readonly words: ReadonlyMap<string, readonly number[]>;

  constructor({ elements, anyhow, words }: Learnt) {
    const all = Object.entries(elements).sort(([, a], [, b]) => a.place - b.place);
    this.elements = all.map(([key]) => key);
    this.numbers = [...all.map(([, { numbers }]) => numbers), false];
    this.isStatement = this.elements.map(isStatementKey);
    this.itemAt = this.elements.map((key) => key.split("/", 1)[0]!);
    this.starts = { about: Float64Array.from([...all.map(([, { about }]) => about), 0]), turned: Float64Array.from([...all.map(([, { turned }]) => turned), anyhow]) };
    this.words = new Map(Object.entries(words));
  }

  /** @param wording the stretch with numbers as words, and with all numbers as one. */
  read(wording: Readonly<Record<"numbers" | "numberless", StretchWords>>): Reading[] {
    const about = this.starts.about.slice();
    const turned = this.starts.turned.slice();
    const add = (words: StretchWords, numbers: boolean) => {
      for (const [word, share] of words) {
        const row = this.words.get(word);
        if (row === undefined) continue;
        for (let at = 0; at < row.length; at += 3) {
          const place = row[at]!;
          if (this.numbers[place] !== numbers) continue;
          about[place]! += share * row[at + 1]!;
          turned[place]! += share * row[at + 2]!;
        }
      }
    };
    add(wording.numbers, true);
    add(wording.numberless, false);
    const anyhow = turned[this.elements.length]!;
    return this.elements.map((_, place) => ({ about: about[place]!, turned: turned[place]! + anyhow, anyhow }));
  }
}
