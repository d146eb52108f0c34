// How one note went over months: a point for each reading, with what was known about the day.

import { keptReading } from '../reading/kept-reading';
import {
  type ReadingRecord,
  type RoundId,
  type RoundStart,
  roundOf,
} from '../records/rack-records';
import { newestPer, olderFirst } from '../records/record-order';
import type { ThirdKind } from '../tuning/third-kind';
import type { Cents, Hertz, Instant } from '../tuning/units';
import { isUnsettled } from './round-result';

export interface HistoryValue {
  readonly cents: Cents;
  readonly sigmaCents: Cents;
}

export interface HistoryPoint {
  readonly at: Instant;
  readonly round: RoundId | null;
  /** Against the note's target. */
  readonly fundamental: HistoryValue;
  /** Against the own fundamental; null where it was not heard, or nobody knows which of two lines it is. */
  readonly octave: HistoryValue | null;
  readonly third: (HistoryValue & { readonly kind: ThirdKind }) | null;
  /** Degrees Celsius. */
  readonly temperature: number | null;
  /** The pan had not settled, or the strikes had not: one strike, or strikes that scatter or walk. */
  readonly isProvisional: boolean;
}

/**
 * The points of one note, oldest first, all against the same A4 and offset. Of several readings of a round the
 * newest counts. `readings` and `rounds` are without erased ones.
 */
export function noteHistory(
  readings: readonly ReadingRecord[],
  rounds: readonly RoundStart[],
  aim: { readonly a4: Hertz; readonly offset: Cents },
): readonly HistoryPoint[] {
  const starts = new Map(rounds.map((start) => [roundOf(start), start]));
  const newest = newestPer(readings, ({ round, id }) => round ?? id);
  return [...newest.values()].sort(olderFirst).map((record) => {
    const reading = keptReading(record, aim);
    const { fundamental, octave, octaveRival, third } = reading;
    const start = record.round === null ? undefined : starts.get(record.round);
    return {
      at: record.at,
      round: record.round,
      fundamental,
      octave: octaveRival || !octave ? null : ownValue(octave),
      third: third && { ...ownValue(third), kind: third.kind },
      temperature: start?.conditions.temperature ?? null,
      isProvisional: !reading.settled || (start !== undefined && isUnsettled(start.conditions)),
    };
  });
}

const ownValue = (line: { readonly centsFromOwn: Cents; readonly sigmaCents: Cents }) => ({
  cents: line.centsFromOwn,
  sigmaCents: line.sigmaCents,
});
