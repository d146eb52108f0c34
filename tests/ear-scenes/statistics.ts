// Small summaries of lists of numbers.

/** The value below which a part `share` (0…1) of `values` lies, interpolated; NaN for none. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((low, high) => low - high);
  const place = share * (sorted.length - 1);
  const low = sorted[Math.floor(place)] ?? Number.NaN;
  const high = sorted[Math.ceil(place)] ?? Number.NaN;
  return low + (high - low) * (place - Math.floor(place));
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Root mean square. */
export const rms = (values: readonly number[]): number =>
  Math.sqrt(mean(values.map((value) => value * value)));

/** The largest absolute value; 0 for none. */
export const worst = (values: readonly number[]): number =>
  values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);

/** How many percent of `values` fulfil `holds`; NaN for none. */
export const percentOf = <T>(values: readonly T[], holds: (value: T) => boolean): number =>
  (100 * values.filter(holds).length) / values.length;
