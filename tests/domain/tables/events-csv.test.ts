import { describe, expect, it } from 'vitest';
import { type PanRecords, roundId } from '../../../src/domain/records/rack-records';
import { eventsCsv } from '../../../src/domain/tables/events-csv';
import { cents, midiNote } from '../../../src/domain/tuning/units';
import {
  sampleBlows,
  sampleErasure,
  sampleKnockCheck,
  sampleMark,
  samplePanRecords,
  sampleStopgap,
  sampleVisit,
} from '../../storage/rack/rack-sample';

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

  it('has a row for each sign of damage, with the knock check it was heard in and no other', () => {
    const check = sampleKnockCheck('check-2');
    const text = eventsCsv(
      samplePanRecords({ knockChecks: [sampleKnockCheck('check-1'), check] }),
      { name: 'Heron', serial: '7' },
      {
        check,
        round: roundId('round-1'),
        signs: new Map([
          [
            midiNote(74),
            [
              { kind: 'choked', againstNeighbours: 0.3, againstBefore: null, knocks: 0 },
              { kind: 'walking', centsPerStrike: cents(-6), strikes: 4 },
            ],
          ],
          [
            midiNote(60),
            [{ kind: 'choked', againstNeighbours: null, againstBefore: null, knocks: 4 }],
          ],
        ]),
      },
    );
    const rows = text.trimEnd().split('\r\n');
    const signs = rows.map((row) => row.split(',')).filter((row) => row[3] === 'sign of damage');
    expect(signs.map((row) => [...row.slice(4, 6), row.at(-2)].join('|'))).toEqual([
      'C4|choked|check-2',
      'D5|choked|check-2',
      'D5|walking|check-2',
    ]);
    expect(signs.map((row) => row.length)).toEqual(signs.map(() => rows[0]?.split(',').length));
  });

  it('has marks, blows and visits, too, and nothing that was taken out', () => {
    const [, ...rows] = rowsOf({
      marks: [sampleMark('mark-1')],
      blows: [sampleBlows('blows-1')],
      visits: [sampleVisit('visit-1'), sampleVisit('visit-2')],
      erasures: [sampleErasure('erasure-1', 'visit-2')],
    });
    expect(rows.map((row) => row[3])).toEqual(['mark', 'blows', 'visit: tuned']);
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
