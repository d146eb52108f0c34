/** The median of `values`; null for none. */
export function middleOf(values: readonly number[]): number | null {
  const sorted = [...values].sort((low, high) => low - high);
  const upper = sorted[sorted.length >> 1];
  const lower = sorted[(sorted.length - 1) >> 1];
  if (upper === undefined || lower === undefined) return null;
  return lower === upper ? lower : (lower + upper) / 2;
}
