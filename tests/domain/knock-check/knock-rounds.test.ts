import { describe, expect, it } from 'vitest';
import { newestSoftRound } from '../../../src/domain/knock-check/knock-rounds';
import { knockSigns } from '../../../src/domain/knock-check/round-signs';
import {
  type KnockCheck,
  type RackRecord,
  roundId,
} from '../../../src/domain/records/rack-records';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { instant } from '../../../src/domain/tuning/units';
import { panWith, type RoundSketch } from '../../browser/seeded-pans';
import { damagedLead } from '../../browser/sheet-rack';
import { sampleErasure, sampleKnockCheck, sampleVisit } from '../../storage/rack/rack-sample';
import { day, firstDay } from '../rounds/round-sample';
import { panRecordsOf, readingsByRound } from '../sheet/sheet-sample';

const on = (days: number) => instant(firstDay + days * day);

/** As the app keeps it: with the round of that day begun a moment before. */
const checkOn = (days: number, more: Partial<KnockCheck> = {}): KnockCheck => ({
  ...sampleKnockCheck(`check-${days}`),
  at: instant(on(days) + 5),
  round: roundId(`round-${days}`),
  ...more,
});

const softRoundOf = (rounds: readonly RoundSketch[], more: readonly RackRecord[]) => {
  const found = newestSoftRound(panRecordsOf([...panWith({}, rounds), ...more]));
  return found && [found.check.id, found.round.id, found.before?.id ?? null];
};

describe('the newest soft round', () => {
  const rounds: readonly RoundSketch[] = [
    { day: 1 },
    { day: 3, way: 'quick' },
    { day: 5 },
    { day: 6 },
  ];

  it('is compared with the newest full round before the pan was knocked', () => {
    expect(softRoundOf(rounds, [checkOn(5)])).toEqual(['check-5', 'round-5', 'round-1']);
  });

  it('is compared with a quick round where there is no other, and with nothing where nothing was kept', () => {
    expect(softRoundOf(rounds.slice(1), [checkOn(5)])).toEqual(['check-5', 'round-5', 'round-3']);
    expect(softRoundOf(rounds.slice(2), [checkOn(5)])).toEqual(['check-5', 'round-5', null]);
  });

  it('is that of an earlier check where the newest has none, or has one that was not finished', () => {
    const earlier = ['check-5', 'round-5', 'round-1'];
    expect(softRoundOf(rounds, [checkOn(5), checkOn(8, { round: null })])).toEqual(earlier);
    const open: RoundSketch = { day: 8, isOpen: true };
    expect(softRoundOf([...rounds, open], [checkOn(5), checkOn(8)])).toEqual(earlier);
  });

  it('is none without a check, once the check is taken out, and once a professional has put the pan right', () => {
    expect(softRoundOf(rounds, [])).toBeNull();
    expect(softRoundOf(rounds, [checkOn(5), sampleErasure('none', 'check-5')])).toBeNull();
    const looked = sampleVisit('looked', { visitedAt: on(5.5), startsBaseline: false });
    expect(softRoundOf(rounds, [checkOn(5), looked])).not.toBeNull();
    const tuned = sampleVisit('tuned', { visitedAt: on(5.5) });
    expect(softRoundOf(rounds, [checkOn(5), tuned])).toBeNull();
  });
});

describe('the signs of damage of the newest soft round', () => {
  const records = panRecordsOf(damagedLead);
  const { highestWithPartials } = usualTolerances;

  it('are those that were planted, also of a note that gave no sound', () => {
    const found = knockSigns(records, readingsByRound(damagedLead), highestWithPartials);
    expect(found?.check.id).toBe('check-2');
    expect(
      [...(found?.signs ?? [])].map(([note, signs]) => [note, signs.map(({ kind }) => kind)]),
    ).toEqual([
      [60, ['choked']],
      [62, ['no-octave']],
      [64, ['buzzing']],
      [66, ['no-third']],
      [69, ['choked']],
      [71, ['walking']],
      [73, ['new-doublet']],
      [74, ['choked', 'buzzing']],
      [76, ['choked']],
    ]);
  });

  it('are unknown while the readings of one of its two rounds are not there', () => {
    const readings = readingsByRound(damagedLead);
    for (const missing of ['round-200', 'round-210']) {
      const some = new Map([...readings].filter(([round]) => round !== missing));
      expect(some.size, missing).toBe(readings.size - 1);
      expect(knockSigns(records, some, highestWithPartials), missing).toBeNull();
    }
  });
});
