import { describe, expect, it } from 'vitest';
import {
  type PanRecords,
  type RoundStart,
  recordId,
  type TunerVisit,
} from '../../../src/domain/records/rack-records';
import { lastTuning, tunerBaseline, tunerVisits } from '../../../src/domain/rounds/tuner-baseline';
import { instant } from '../../../src/domain/tuning/units';
import { sampleErasure, samplePanRecords, sampleVisit } from '../../storage/rack/rack-sample';
import { day, endSample, firstDay, startSample } from './round-sample';

const visitOn = (days: number, more: Partial<TunerVisit> = {}): TunerVisit =>
  sampleVisit(`visit-${days}`, { visitedAt: instant(firstDay + days * day), ...more });

const recordsOf = (
  rounds: readonly RoundStart[],
  visits: readonly TunerVisit[],
  more: Partial<PanRecords> = {},
): PanRecords =>
  samplePanRecords({ rounds, ends: rounds.map((start) => endSample(start)), visits, ...more });

const on = (days: number, more: Parameters<typeof startSample>[0] = {}) =>
  startSample({ day: days, ...more });

describe('what a pan’s changes are counted from', () => {
  it('is the first round after the last professional tuning', () => {
    const records = recordsOf([on(0), on(40), on(50), on(90)], [visitOn(10), visitOn(45)]);
    expect(tunerBaseline(records)).toEqual({
      kind: 'tuning',
      visit: visitOn(45),
      round: on(50),
    });
  });

  it('is no round yet where none was taken since the tuner left', () => {
    const records = recordsOf([on(0), on(40)], [visitOn(45)]);
    expect(tunerBaseline(records)).toEqual({ kind: 'tuning', visit: visitOn(45), round: null });
  });

  it('passes by a visit at which the pan was not tuned', () => {
    const looked = visitOn(45, { startsBaseline: false });
    const records = recordsOf([on(0), on(50)], [visitOn(-5), looked]);
    expect(lastTuning(records)).toEqual(visitOn(-5));
    expect(tunerBaseline(records)).toMatchObject({ kind: 'tuning', round: on(0) });
    expect(tunerVisits(records)).toEqual([looked, visitOn(-5)]);
  });

  it('passes by a visit that was taken out again', () => {
    const records = recordsOf([on(0), on(50)], [visitOn(-5), visitOn(45)], {
      erasures: [sampleErasure('no-visit', 'visit-45')],
    });
    expect(lastTuning(records)).toEqual(visitOn(-5));
  });

  it('is a full round on a settled pan before a quick one or one in the sun', () => {
    const rounds = [on(46, { way: 'quick' }), on(47, { conditions: { standing: 'sun' } }), on(48)];
    expect(tunerBaseline(recordsOf(rounds, [visitOn(45)]))).toMatchObject({ round: on(48) });
    expect(tunerBaseline(recordsOf(rounds.slice(0, 2), [visitOn(45)]))).toMatchObject({
      round: { id: recordId('round-46') },
    });
  });

  it('is the oldest round where no tuning is known, and nothing without a round', () => {
    expect(tunerBaseline(recordsOf([on(3), on(9)], []))).toEqual({
      kind: 'first-round',
      round: on(3),
    });
    expect(tunerBaseline(recordsOf([], []))).toEqual({ kind: 'none' });
  });
});
