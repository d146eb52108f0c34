// How the pitch of a pan follows the temperature of the air, kept apart from how it drifts over the years.
import { median } from '../numbers/averages';
import { medianSlope } from '../numbers/median-slope';
import { cents } from '../tuning/units';
import type { DriftPoint } from './pan-drift';

export interface PitchByWarmth {
  /** Cents per degree Celsius. */
  readonly slope: number;
  /** How far the ends of its 95 % interval lie from it at most. */
  readonly within: number;
  /** The middle of the temperatures: what drift without the weather is counted at, °C. */
  readonly usual: number;
  readonly rounds: number;
}

/** Fewest rounds with a temperature that tell something (chosen, no source). */
const fewestRounds = 3;
/** Least difference between the coldest and the warmest round, °C: less tells nothing (chosen, no source). */
const leastRange = 3;
/**
 * A round this much colder or warmer than usual is pointed out, °C (chosen, no source: about 5 cents at 1 cent a
 * degree).
 */
const farFromUsual = 5;

/** Null for too few rounds, or all at about one temperature. Rounds on an unsettled pan do not count. */
export function pitchByWarmth(points: readonly DriftPoint[]): PitchByWarmth | null {
  const known = points.flatMap(({ temperature, cents: y, isProvisional }) =>
    temperature === null || isProvisional ? [] : [{ x: temperature, y }],
  );
  const usual = usualTemperature(points);
  const temperatures = known.map(({ x }) => x);
  const range = Math.max(...temperatures) - Math.min(...temperatures);
  if (known.length < fewestRounds || range < leastRange || usual === null) return null;
  const line = medianSlope(known);
  if (!line) return null;
  const { slope, low, high } = line;
  return { slope, within: Math.max(high - slope, slope - low), usual, rounds: known.length };
}

/** Whether it is known that the air moves this pan: the interval does not include zero. */
export const isWarmthKnown = ({ slope, within }: PitchByWarmth): boolean =>
  Math.abs(slope) > within;

/** The points as they would lie at the usual temperature; those without a temperature are left out. */
export const withoutWeather = (
  points: readonly DriftPoint[],
  { slope, usual }: PitchByWarmth,
): readonly DriftPoint[] =>
  points.flatMap((point) =>
    point.temperature === null
      ? []
      : [{ ...point, cents: cents(point.cents - slope * (point.temperature - usual)) }],
  );

/** The middle temperature of the rounds that have one; null where fewer than three have. */
export function usualTemperature(
  points: readonly { readonly temperature: number | null }[],
): number | null {
  const known = points.flatMap(({ temperature }) => temperature ?? []);
  return known.length < fewestRounds ? null : median(known);
}

/** How much warmer than usual a round was, where that is much; null otherwise. */
export function farFromUsualBy(temperature: number | null, usual: number | null): number | null {
  if (temperature === null || usual === null) return null;
  const by = temperature - usual;
  return Math.abs(by) < farFromUsual ? null : by;
}
