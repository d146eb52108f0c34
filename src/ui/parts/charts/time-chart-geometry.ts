// Where the values of a small chart over time lie, in hundredths of its width and height.

export interface ChartValue {
  /** Milliseconds. */
  readonly at: number;
  readonly cents: number;
  /** One standard error. */
  readonly sigmaCents: number;
  /** Not to be trusted like the others: drawn hollow. */
  readonly isProvisional: boolean;
}

export interface ChartScale {
  readonly low: number;
  readonly high: number;
  /** Cents that get a line, lowest first; 0 is one of them if it is in the range. */
  readonly ticks: readonly number[];
}

/** How far an error bar reaches: as far as the value surely lies. */
export const barSigmas = 3;
const steps = [1, 2, 5, 10, 20, 50, 100, 200, 500] as const;
const mostSteps = 4;
/** Room for half a marker at both ends, hundredths. */
const inset = 4;

/** A range of round numbers that holds 0, all values with their bars, and at least ±`least` (or 0…`least`). */
export function chartScale(
  values: readonly Pick<ChartValue, 'cents' | 'sigmaCents'>[],
  { least, isOneSided = false }: { readonly least: number; readonly isOneSided?: boolean },
): ChartScale {
  const ends = values.flatMap(({ cents, sigmaCents }) => [
    cents - barSigmas * sigmaCents,
    cents + barSigmas * sigmaCents,
  ]);
  const lowest = Math.min(isOneSided ? 0 : -least, ...(isOneSided ? [] : ends));
  const highest = Math.max(least, ...ends);
  const step =
    steps.find((each) => Math.ceil(highest / each) - Math.floor(lowest / each) <= mostSteps) ??
    Math.ceil((highest - lowest) / mostSteps);
  const [first, last] = [Math.floor(lowest / step), Math.ceil(highest / step)];
  return {
    low: first * step,
    high: last * step,
    ticks: Array.from({ length: last - first + 1 }, (_, k) => (first + k) * step),
  };
}

/** Hundredths from the top; what lies outside stays at the edge. */
export const heightOf = (cents: number, { low, high }: ChartScale): number =>
  100 - (100 * (Math.min(high, Math.max(low, cents)) - low)) / (high - low);

/** Hundredths from the left; the middle where all is one moment. */
export const placeInTime = (at: number, from: number, to: number): number =>
  to > from ? inset + ((100 - 2 * inset) * (at - from)) / (to - from) : 50;
