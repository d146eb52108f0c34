import { describe, expect, it } from 'vitest';
import type { PanRecords } from '../../../../src/domain/records/rack-records';
import { standingStopgaps } from '../../../../src/domain/records/standing/standing-stopgaps';
import { instant } from '../../../../src/domain/tuning/units';
import { sampleErasure, samplePanRecords, sampleStopgap } from '../../../storage/rack/rack-sample';

const put = { ...sampleStopgap('a', 72), at: instant(10) };
const off = { ...sampleStopgap('b', 72), at: instant(20), stopgap: 'none' as const };
const other = { ...sampleStopgap('c', 60), at: instant(5) };
const notes = (parts: Partial<PanRecords>, until: number | null = null) => [
  ...standingStopgaps(
    samplePanRecords(parts),
    until === null ? null : { at: instant(until) },
  ).keys(),
];

describe('the stopgaps on a pan', () => {
  it('stay until a later record takes them off, whatever order the records come in', () => {
    expect(notes({ stopgaps: [put, other] }).sort()).toEqual([60, 72]);
    expect(notes({ stopgaps: [off, other, put] })).toEqual([60]);
  });

  it('do not count if they were put on later than asked for', () => {
    expect(notes({ stopgaps: [put, off, other] }, 15).sort()).toEqual([60, 72]);
  });

  it('do not count if they were erased', () => {
    expect(notes({ stopgaps: [put], erasures: [sampleErasure('e', 'a')] })).toEqual([]);
  });
});
