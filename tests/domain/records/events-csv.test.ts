import { describe, expect, it } from 'vitest';
import { eventsCsv } from '../../../src/domain/records/events-csv';
import type { PanRecords } from '../../../src/domain/records/rack-records';
import {
  sampleBlows,
  sampleErasure,
  sampleKnockCheck,
  sampleMark,
  samplePanRecords,
  sampleStopgap,
  sampleVisit,
} from '../../storage/rack-sample';

const rowsOf = (more: Partial<PanRecords>, name = 'Heron'): readonly (readonly string[])[] =>
  eventsCsv(samplePanRecords(more), { name, serial: '7' })
    .trimEnd()
    .split('\r\n')
    .map((row) => row.split(','));

describe('the table of what happened to a pan', () => {
  it('names the unit of each number in its header, and has as many cells in every row', () => {
    const [header, ...rows] = rowsOf({
      knockChecks: [sampleKnockCheck('check-1')],
      stopgaps: [sampleStopgap('stopgap-1')],
      visits: [sampleVisit('visit-1')],
    });
    expect(header).toContain('Clock (hours)');
    expect(header).toContain('Written down at (UTC)');
    expect(rows.map((row) => row.length)).toEqual(rows.map(() => header?.length));
  });

  it('has a row for the place that was hit, one for each look, and one for each stopgap', () => {
    const [, ...rows] = rowsOf({
      knockChecks: [
        {
          ...sampleKnockCheck('check-1'),
          looks: [
            { look: 'rim', answer: 'yes', photo: null },
            { look: 'heat', answer: 'no', photo: null },
          ],
        },
      ],
      stopgaps: [sampleStopgap('stopgap-1'), { ...sampleStopgap('stopgap-2'), stopgap: 'none' }],
    });
    expect(rows.map((row) => row.slice(3, 7).join('|'))).toEqual([
      'knock check||place that was hit|',
      'look||rim|yes',
      'look||heat|no',
      'stopgap|C5|magnet|',
      'stopgap|C5|taken off|',
    ]);
    // Drum 1, 3 o'clock, 0.9 of the radius.
    expect(rows[0]?.slice(8, 11)).toEqual(['1', '3', '0.9']);
  });

  it('has marks, blows and visits, too, and nothing that was taken out', () => {
    const [, ...rows] = rowsOf({
      marks: [sampleMark('mark-1')],
      blows: [sampleBlows('blows-1')],
      visits: [sampleVisit('visit-1'), sampleVisit('visit-2')],
      erasures: [sampleErasure('erasure-1', 'visit-2')],
    });
    expect(rows.map((row) => row[3])).toEqual(['mark', 'blows', 'tuning']);
  });

  it('holds no formula, whatever was written', () => {
    const remarks = '=HYPERLINK("http://x")';
    const text = eventsCsv(
      samplePanRecords({ knockChecks: [{ ...sampleKnockCheck('check-1'), remarks }] }),
      { name: '+1', serial: '@a' },
    );
    expect(text).toContain("'+1,'@a,");
    expect(text).toContain(`"'=HYPERLINK(""http://x"")"`);
  });
});
