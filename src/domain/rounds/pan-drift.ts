// How a pan drifts as a whole: its pitch and its unevenness from round to round, and per year.
import { sumOf } from '../numbers/averages';
import { fitScatteredLine } from '../numbers/line-fit';
import { type Cents, cents, centsBetween, type Hertz, type Instant } from '../tuning/units';
import type { RoundResult } from './round-result';

export interface DriftPoint {
  readonly at: Instant;
  /** Pan pitch against `a4`, one standard error beside it. */
  readonly cents: Cents;
  readonly sigmaCents: Cents;
  /** Mean distance of the notes from the pan pitch. */
  readonly unevenness: Cents;
  readonly temperature: number | null;
  readonly isProvisional: boolean;
}

export interface Trend {
  readonly centsPerYear: Cents;
  /** One standard error. */
  readonly sigmaCents: Cents;
}

export interface PanDrift {
  /** Oldest first; rounds with too few notes for a pan pitch are left out. */
  readonly points: readonly DriftPoint[];
  /** Null with fewer than two rounds, or all at one moment. Rounds on an unsettled pan do not count. */
  readonly pitch: Trend | null;
  readonly unevenness: Trend | null;
}

const millisecondsPerYear = 365.25 * 24 * 3600 * 1000;
/** Day-to-day change of pitch with temperature, which no standard error shows, cents (own guess). */
const usualDayScatter = 1;
/** How many rounds that guess counts as, against the scatter that is seen (own choice). */
const priorRounds = 2;

/** The drift over the given rounds, in any order, all against `a4`. */
export function panDrift(rounds: readonly RoundResult[], a4: Hertz): PanDrift {
  const points = rounds
    .flatMap((round): DriftPoint[] => {
      const { panPitch } = round;
      if (!panPitch) return [];
      const away = sumOf(panPitch.notes, (note) => Math.abs(note.cents));
      return [
        {
          at: round.at,
          cents: cents(panPitch.cents + centsBetween(a4, round.a4)),
          sigmaCents: panPitch.sigmaCents,
          unevenness: cents(away / panPitch.notes.length),
          temperature: round.conditions.temperature,
          isProvisional: round.isProvisional,
        },
      ];
    })
    .sort((one, other) => one.at - other.at);
  const sure = points.filter((point) => !point.isProvisional);
  return {
    points,
    pitch: pitchTrend(points),
    unevenness: trendOf(sure, (point) => ({ value: point.unevenness, sigma: 0 })),
  };
}

/** Of settled rounds only. */
export const pitchTrend = (points: readonly DriftPoint[]): Trend | null =>
  trendOf(
    points.filter((point) => !point.isProvisional),
    (point) => ({ value: point.cents, sigma: point.sigmaCents }),
  );

/**
 * Least-squares line against time, weighted with the stated errors and a scatter from day to day that is
 * estimated from the line's own residuals.
 */
function trendOf(
  points: readonly DriftPoint[],
  of: (point: DriftPoint) => { readonly value: number; readonly sigma: number },
): Trend | null {
  const first = points[0]?.at ?? 0;
  const line = fitScatteredLine(
    points.map((point) => {
      const { value, sigma } = of(point);
      return { x: (point.at - first) / millisecondsPerYear, y: value, sigma };
    }),
    { usual: usualDayScatter, weighs: priorRounds, least: 0 },
  );
  return line && { centsPerYear: cents(line.slope), sigmaCents: cents(line.sigma) };
}
