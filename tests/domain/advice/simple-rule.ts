// What a careful tuner would do who knows the places of the trade and learns nothing of the pan: the measure for the advice.

import type { BenchNote } from '../../../src/domain/advice/advice';
import type { BlowSet } from '../../../src/domain/advice/blow-sets';
import { noteErrors } from '../../../src/domain/advice/note-errors';
import { needsOf, stepsFor } from '../../../src/domain/advice/note-fault';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import type { Suggestion } from '../../../src/practice-pan/patient-tuner';

/** Cents that this tuner expects of one light blow. */
const centsPerBlow = 1.5;
const mostBlows = 6;

/**
 * The first place of the fault, from its other side or at its other place when the last set there went the wrong way;
 * as many light blows as would go half the way, one where the way is found by trying.
 */
export function simpleRule({ judged, sets }: BenchNote): Suggestion {
  const errors = noteErrors(judged, usualTolerances);
  if (Math.abs(errors.values[0]) > 50)
    return { kind: 'professional', why: { kind: 'far-off', cents: judged.fundamental.cents } };
  const [ways] = stepsFor(needsOf(errors));
  const trade = ways?.[0];
  if (!trade) return { kind: 'leave', why: { kind: 'aligned' } };
  const k = trade.must.findIndex((each) => each !== 'stay') as 0 | 1 | 2;
  const way = trade.must[k] === 'up' ? 1 : -1;
  const lastAt = ({ place, side }: { place: string; side: string }): BlowSet | undefined =>
    sets.findLast((set) => set.place === place && set.side === side);
  const where = trade.places.find((each) => way * (lastAt(each)?.change[k] ?? way) > 0);
  if (!where) return { kind: 'leave', why: { kind: 'nothing-helps' } };
  const isFirst = lastAt(where) === undefined;
  const half = Math.round(Math.abs(errors.values[k]) / 2 / centsPerBlow);
  const count = trade.isFoundByTrying && isFirst ? 1 : Math.min(mostBlows, Math.max(1, half));
  return { kind: 'blows', ...where, firmness: 'light', count };
}
