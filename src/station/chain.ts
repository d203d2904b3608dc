/**
 * A linear chain of two states (0 candidate, 1 patient) with scores that differ at every place:
 * conditional random field of Lafferty, McCallum and Pereira (2001), forward-backward and Viterbi
 * as in Rabiner (1989).
 */
export interface ChainScores {
  /** Score of "candidate says token i" over "patient says it". */
  emission: Float64Array;
  /** Score of a change from candidate to patient before token i, over no change. Place 0 is not used. */
  toPatient: Float64Array;
  toCandidate: Float64Array;
}

export interface ChainMarginals {
  /** Probability that the candidate says token i. */
  candidate: Float64Array;
  /** Probability of a change of voice before token i, by direction. */
  toPatient: Float64Array;
  toCandidate: Float64Array;
  /** Natural logarithm of the sum over all label sequences. */
  logTotal: number;
}

function logSum(a: number, b: number): number {
  return a > b ? a + Math.log1p(Math.exp(b - a)) : b + Math.log1p(Math.exp(a - b));
}

export function marginals(scores: ChainScores): ChainMarginals {
  const { emission, toPatient, toCandidate } = scores;
  const count = emission.length;
  const forward0 = new Float64Array(count);
  const forward1 = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const before0 = i === 0 ? 0 : logSum(forward0[i - 1]!, forward1[i - 1]! + toCandidate[i]!);
    const before1 = i === 0 ? 0 : logSum(forward1[i - 1]!, forward0[i - 1]! + toPatient[i]!);
    forward0[i] = before0 + emission[i]!;
    forward1[i] = before1;
  }
  const logTotal = count === 0 ? 0 : logSum(forward0[count - 1]!, forward1[count - 1]!);
  const candidate = new Float64Array(count);
  const changes0 = new Float64Array(count);
  const changes1 = new Float64Array(count);
  let backward0 = 0;
  let backward1 = 0;
  for (let i = count - 1; i >= 0; i--) {
    candidate[i] = Math.exp(forward0[i]! + backward0 - logTotal);
    if (i === 0) break;
    const here0 = backward0 + emission[i]!;
    const here1 = backward1;
    changes0[i] = Math.exp(forward0[i - 1]! + toPatient[i]! + here1 - logTotal);
    changes1[i] = Math.exp(forward1[i - 1]! + toCandidate[i]! + here0 - logTotal);
    backward0 = logSum(here0, here1 + toPatient[i]!);
    backward1 = logSum(here1, here0 + toCandidate[i]!);
  }
  return { candidate, toPatient: changes0, toCandidate: changes1, logTotal };
}

/** The best label sequence: 0 candidate, 1 patient. */
export function viterbi(scores: ChainScores): Uint8Array {
  const { emission, toPatient, toCandidate } = scores;
  const count = emission.length;
  const from0 = new Uint8Array(count);
  const from1 = new Uint8Array(count);
  let best0 = emission[0] ?? 0;
  let best1 = 0;
  for (let i = 1; i < count; i++) {
    const change0 = best1 + toCandidate[i]!;
    const change1 = best0 + toPatient[i]!;
    from0[i] = change0 > best0 ? 1 : 0;
    from1[i] = change1 > best1 ? 0 : 1;
    [best0, best1] = [Math.max(best0, change0) + emission[i]!, Math.max(best1, change1)];
  }
  const labels = new Uint8Array(count);
  let state = best0 >= best1 ? 0 : 1;
  for (let i = count - 1; i >= 0; i--) {
    labels[i] = state;
    state = state === 0 ? from0[i]! : from1[i]!;
  }
  return labels;
}
