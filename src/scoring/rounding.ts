/** For seconds and rates. */
export function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}

/** For marks and confidences. */
export function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
