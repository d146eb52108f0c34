// Sums and medians of a few numbers. There are two medians, because of two numbers in the middle one may want the mean
// or one that was really measured.

export const sumOf = <T>(values: readonly T[], of: (value: T) => number): number =>
  values.reduce((sum, value) => sum + of(value), 0);

/** Null for no numbers. */
export const meanOf = (values: readonly number[]): number | null =>
  values.length === 0 ? null : sumOf(values, (value) => value) / values.length;

/** The middle number, or the mean of the two in the middle; null for no numbers. */
export function median(values: readonly number[]): number | null {
  const sorted = [...values].sort((low, high) => low - high);
  const upper = sorted[sorted.length >> 1];
  const lower = sorted[(sorted.length - 1) >> 1];
  if (upper === undefined || lower === undefined) return null;
  return lower === upper ? lower : (lower + upper) / 2;
}

/** The middle number, or the lower one of two: always one of `values`; null for no numbers. */
export function lowerMedian<T extends number>(values: readonly T[]): T | null {
  const sorted = [...values].sort((low, high) => low - high);
  return sorted[(sorted.length - 1) >> 1] ?? null;
}

export interface Weighted {
  readonly value: number;
  readonly weight: number;
}

/** The number up to which half of the weight lies, or the mean of two if the half falls between them; null for none. */
export function weightedMedian(values: readonly Weighted[]): number | null {
  const sorted = [...values].sort((low, high) => low.value - high.value);
  const half = sumOf(sorted, ({ weight }) => weight) / 2;
  let below = 0;
  for (const [k, { value, weight }] of sorted.entries()) {
    below += weight;
    if (below > half * (1 + 1e-9)) return value;
    if (below >= half * (1 - 1e-9)) return (value + (sorted[k + 1]?.value ?? value)) / 2;
  }
  return sorted.at(-1)?.value ?? null;
}
