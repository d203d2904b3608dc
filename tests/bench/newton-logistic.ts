/** Steps of Newton's method, and inner steps for each. */
const STEPS = 20;
const INNER = 60;
/** Of the slope at a step: where that step is as good as exact. */
const INNER_TOLERANCE = 1e-2;
/** Of the first slope: where the fit is. */
const TOLERANCE = 1e-4;
const HALVINGS = 20;

/** A straight line over words, in log-odds. */
export interface Line {
  start: number;
  words: Map<string, number>;
}

/** A case: its words, each with its share, what is known of it beforehand in log-odds, and whether it is so. */
export interface LineCase {
  words: ReadonlyMap<string, number>;
  known: number;
  truth: boolean;
}

/**
 * Logistic regression over many words with a ridge penalty, on the start as well, by Newton's method; each step is solved by
 * conjugate gradients (Lin, Weng and Keerthi 2008, Journal of Machine Learning Research 9:627-650), with halving instead of
 * a trust region.
 */
export function fitLine(cases: readonly LineCase[], ridge: number): Line {
  const places = new Map<string, number>();
  const rows = cases.map(({ words }) => {
    const at = new Int32Array(words.size + 1);
    const share = new Float64Array(words.size + 1).fill(1);
    let next = 1;
    for (const [word, value] of words) {
      if (!places.has(word)) places.set(word, places.size + 1);
      at[next] = places.get(word)!;
      share[next] = value;
      next += 1;
    }
    return { at, share };
  });
  const size = places.size + 1;
  const product = (weights: Float64Array) => Float64Array.from(rows, ({ at, share }) => {
    let sum = 0;
    for (let k = 0; k < at.length; k += 1) sum += share[k]! * weights[at[k]!]!;
    return sum;
  });
  const transposed = (values: Float64Array) => {
    const result = new Float64Array(size);
    rows.forEach(({ at, share }, row) => {
      const value = values[row]!;
      for (let k = 0; k < at.length; k += 1) result[at[k]!]! += share[k]! * value;
    });
    return result;
  };
  const sums = (weights: Float64Array) => product(weights).map((sum, row) => sum + cases[row]!.known);
  const loss = (weights: Float64Array, sum: Float64Array) => cases.reduce((total, { truth }, row) => total + softplus(truth ? -sum[row]! : sum[row]!), 0) + (ridge / 2) * dot(weights, weights);

  let weights = new Float64Array(size);
  let sum = sums(weights);
  let now = loss(weights, sum);
  let first: number | null = null;
  for (let step = 0; step < STEPS; step += 1) {
    const chance = sum.map((value) => 1 / (1 + Math.exp(-value)));
    const slope = transposed(chance.map((value, row) => value - (cases[row]!.truth ? 1 : 0))).map((value, place) => value + ridge * weights[place]!);
    const steepness = Math.sqrt(dot(slope, slope));
    first ??= steepness;
    if (steepness <= TOLERANCE * first) break;
    const spread = chance.map((value) => value * (1 - value));
    const curved = (direction: Float64Array) => transposed(product(direction).map((value, row) => value * spread[row]!)).map((value, place) => value + ridge * direction[place]!);
    const direction = solved(curved, slope.map((value) => -value), INNER_TOLERANCE * steepness);
    let length = 1;
    let better: { weights: Float64Array<ArrayBuffer>; sum: Float64Array<ArrayBuffer>; loss: number } | null = null;
    for (let halving = 0; halving < HALVINGS && better === null; halving += 1, length /= 2) {
      const tried = weights.map((weight, place) => weight + length * direction[place]!);
      const triedSum = sums(tried);
      const triedLoss = loss(tried, triedSum);
      if (triedLoss < now) better = { weights: tried, sum: triedSum, loss: triedLoss };
    }
    if (better === null) break;
    ({ weights, sum, loss: now } = better);
  }
  return { start: weights[0]!, words: new Map([...places].map(([word, place]) => [word, weights[place]!])) };
}

/** In log-odds. */
export function valueOf({ start, words }: Line, wording: ReadonlyMap<string, number>): number {
  let sum = start;
  for (const [word, share] of wording) sum += share * (words.get(word) ?? 0);
  return sum;
}

/** Conjugate gradients for a positive definite matrix that is known by its products (Golub and Van Loan 2013, section 11.3). */
function solved(matrix: (vector: Float64Array) => Float64Array, right: Float64Array, tolerance: number): Float64Array {
  const result = new Float64Array(right.length);
  const rest = right.slice();
  let direction = right.slice();
  let size = dot(rest, rest);
  for (let step = 0; step < INNER && Math.sqrt(size) > tolerance; step += 1) {
    const image = matrix(direction);
    const length = size / dot(direction, image);
    for (let place = 0; place < result.length; place += 1) {
      result[place]! += length * direction[place]!;
      rest[place]! -= length * image[place]!;
    }
    const next = dot(rest, rest);
    const turn = next / size;
    direction = direction.map((value, place) => rest[place]! + turn * value);
    size = next;
  }
  return result;
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let place = 0; place < one.length; place += 1) sum += one[place]! * other[place]!;
  return sum;
}

/** The logarithm of 1 + e to the power of the value. */
function softplus(value: number): number {
  return value > 0 ? value + Math.log1p(Math.exp(-value)) : Math.log1p(Math.exp(value));
}
