import { describe, expect, it } from 'vitest';
import { roundOf } from '../../../src/domain/records/rack-records';
import { waysToOffer } from '../../../src/domain/rounds/ways-to-offer';
import { sampleKnockCheck, samplePanRecords } from '../../storage/rack/rack-sample';
import { startSample } from './round-sample';

describe('the kinds of round', () => {
  const guided = startSample({ day: 0, way: 'guided' });
  const quick = startSample({ day: 3, way: 'quick' });

  it('are offered with the guided one first on a pan that was never heard', () => {
    expect(waysToOffer(samplePanRecords())).toEqual(['guided', 'quick', 'free']);
  });

  it('are offered with the one used last first', () => {
    expect(waysToOffer(samplePanRecords({ rounds: [quick, guided] }))).toEqual([
      'quick',
      'guided',
      'free',
    ]);
  });

  it('do not count the soft round after a fall', () => {
    const check = { ...sampleKnockCheck('check'), round: roundOf(quick) };
    const records = samplePanRecords({ rounds: [guided, quick], knockChecks: [check] });
    expect(waysToOffer(records)[0]).toBe('guided');
  });
});
