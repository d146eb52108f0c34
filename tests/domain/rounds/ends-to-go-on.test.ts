import { describe, expect, it } from 'vitest';
import { roundOf } from '../../../src/domain/records/rack-records';
import { openRounds } from '../../../src/domain/records/standing/open-rounds';
import { endsToGoOn } from '../../../src/domain/rounds/ends-to-go-on';
import { instant } from '../../../src/domain/tuning/units';
import {
  sampleEnd,
  sampleErasure,
  samplePanRecords,
  sampleRound,
} from '../../storage/rack/rack-sample';

describe('a round that was finished too early', () => {
  const round = sampleRound('round');
  const end = sampleEnd('end', round);
  const records = samplePanRecords({ rounds: [round], ends: [end] });
  const dayLater = end.at + 24 * 3600 * 1000;

  it('can be gone on with for a day', () => {
    expect(endsToGoOn(records, roundOf(round), instant(dayLater))).toEqual([end]);
    expect(endsToGoOn(records, roundOf(round), instant(dayLater + 1))).toEqual([]);
  });

  it('is under way again once its end is erased, and has no end to erase then', () => {
    const again = { ...records, erasures: [sampleErasure('erasure', 'end')] };
    expect(openRounds(again)).toEqual([round]);
    expect(endsToGoOn(again, roundOf(round), instant(dayLater))).toEqual([]);
  });
});
