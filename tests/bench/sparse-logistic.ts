/** A case of a logistic regression over a few figures and over words that are there or not. */
export interface SparseRow {
  figures: readonly number[];
  words: readonly string[];
  truth: boolean;
  /** It stands for so many. */
  weight: number;
}

export interface SparseModel {
  intercept: number;
  figures: number[];
  words: Map<string, number>;
}

/** Penalties on the squares of the weights. */
const RIDGE = { figure: 0.1, word: 5 } as const;
/** Full steps by Adam (Kingma and Ba 2015), with its authors' decay rates. */
const STEPS = 250;
const RATE = 0.05;
const DECAY = { mean: 0.9, spread: 0.999 } as const;

/** @param least words that fewer rows have are left out. */
export function fitSparse(rows: readonly SparseRow[], least: number): SparseModel {
  const seen = new Map<string, number>();
  for (const { words } of rows) for (const word of words) seen.set(word, (seen.get(word) ?? 0) + 1);
  const known = [...seen].filter(([, count]) => count >= least).map(([word]) => word).sort();
  const placeOf = new Map(known.map((word, place) => [word, place]));
  const figures = rows[0]!.figures.length;
  const first = 1 + figures;
  const size = first + known.length;
  const inWords = rows.map(({ words }) => words.flatMap((word) => (placeOf.has(word) ? [first + placeOf.get(word)!] : [])));
  const [weights, mean, spread] = [new Float64Array(size), new Float64Array(size), new Float64Array(size)];
  for (let step = 1; step <= STEPS; step += 1) {
    const gradient = new Float64Array(size);
    for (let place = 1; place < size; place += 1) gradient[place] = weights[place]! * (place < first ? RIDGE.figure : RIDGE.word);
    rows.forEach((row, at) => {
      let sum = weights[0]!;
      for (let place = 0; place < figures; place += 1) sum += weights[1 + place]! * row.figures[place]!;
      for (const place of inWords[at]!) sum += weights[place]!;
      const miss = row.weight * (1 / (1 + Math.exp(-sum)) - (row.truth ? 1 : 0));
      gradient[0]! += miss;
      for (let place = 0; place < figures; place += 1) gradient[1 + place]! += miss * row.figures[place]!;
      for (const place of inWords[at]!) gradient[place]! += miss;
    });
    for (let place = 0; place < size; place += 1) {
      mean[place] = DECAY.mean * mean[place]! + (1 - DECAY.mean) * gradient[place]!;
      spread[place] = DECAY.spread * spread[place]! + (1 - DECAY.spread) * gradient[place]! ** 2;
      weights[place]! -= (RATE * (mean[place]! / (1 - DECAY.mean ** step))) / (Math.sqrt(spread[place]! / (1 - DECAY.spread ** step)) + 1e-8);
    }
  }
  return { intercept: weights[0]!, figures: [...weights.slice(1, first)], words: new Map(known.map((word, place) => [word, weights[first + place]!])) };
}

/** 0 to 1. */
export function scoreOf({ intercept, figures, words }: SparseModel, row: Pick<SparseRow, "figures" | "words">): number {
  let sum = intercept;
  for (let place = 0; place < figures.length; place += 1) sum += figures[place]! * row.figures[place]!;
  for (const word of row.words) sum += words.get(word) ?? 0;
  return 1 / (1 + Math.exp(-sum));
}
