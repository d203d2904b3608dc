/** Steps of Newton's method; the curves hardly move after them. */
const STEPS = 6;
/** A case that is as good as certain still weighs so much. */
const LEAST_SPREAD = 1e-6;

/**
 * Logistic regression with a ridge penalty in its dual form (Hastie, Tibshirani and Friedman 2009, section 12.3.7): of few
 * cases over many words it solves for one figure a case. The line over the words is the sum of the cases, each so many times.
 * @param gram inner products of the cases, the constant of the intercept among them.
 * @returns how many times each case goes into the line.
 */
export function fitKernel(gram: readonly Float64Array[], truths: readonly boolean[], ridge: number): number[] {
  const size = truths.length;
  let times = new Array<number>(size).fill(0);
  for (let step = 0; step < STEPS; step += 1) {
    const matrix: Float64Array[] = [];
    const right = new Float64Array(size);
    for (let row = 0; row < size; row += 1) {
      const own = gram[row]!;
      let sum = 0;
      for (let k = 0; k < size; k += 1) sum += own[k]! * times[k]!;
      const chance = 1 / (1 + Math.exp(-Math.max(-30, Math.min(30, sum))));
      const spread = chance * (1 - chance) + LEAST_SPREAD;
      right[row] = sum + ((truths[row] ? 1 : 0) - chance) / spread;
      const line = own.slice();
      line[row]! += ridge / spread;
      matrix.push(line);
    }
    times = solved(matrix, right);
  }
  return times;
}

/** Of a symmetric positive definite matrix, by Cholesky's factors in place (Golub and Van Loan 2013, section 4.2). */
function solved(matrix: Float64Array[], right: Float64Array): number[] {
  const size = right.length;
  for (let row = 0; row < size; row += 1) {
    const own = matrix[row]!;
    for (let column = 0; column <= row; column += 1) {
      const other = matrix[column]!;
      let sum = own[column]!;
      for (let k = 0; k < column; k += 1) sum -= own[k]! * other[k]!;
      own[column] = row === column ? Math.sqrt(Math.max(sum, 1e-12)) : sum / other[column]!;
    }
  }
  const result = new Array<number>(size).fill(0);
  for (let row = 0; row < size; row += 1) {
    let sum = right[row]!;
    for (let k = 0; k < row; k += 1) sum -= matrix[row]![k]! * result[k]!;
    result[row] = sum / matrix[row]![row]!;
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    let sum = result[row]!;
    for (let k = row + 1; k < size; k += 1) sum -= matrix[k]![row]! * result[k]!;
    result[row] = sum / matrix[row]![row]!;
  }
  return result;
}
